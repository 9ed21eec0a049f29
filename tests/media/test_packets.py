"""What packets tell, against FFmpeg's own filters on the decoded pictures, and against what was filmed."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import chain, repeat
from pathlib import Path

import av
import numpy as np
import pytest
from av.filter import Graph
from av.video.frame import VideoFrame

from procbuilder.media.camera import begun, speed
from procbuilder.media.packets import Packets
from procbuilder.media.probe import probe
from procbuilder.model.footage import PacketFacts
from procbuilder.model.stretch import Stretches
from tests.media import filming
from tests.media.filming import Image, Track, scene

TICK = Fraction(1, 25)


def film_of(path: Path) -> PacketFacts:
    return probe(path, name="strip", shown=path.name, sha256="abc").film


def by_ffmpeg(path: Path, filter_name: str, options: str, key: str) -> list[tuple[float, float]]:
    """Starts and ends that a filter of FFmpeg writes into the metadata of decoded pictures; the end may be missing."""
    starts, ends = [], []
    with av.open(str(path)) as container:
        graph = Graph()
        source = graph.add_buffer(template=container.streams.video[0])
        detect = graph.add(filter_name, options)
        sink = graph.add("buffersink")
        source.link_to(detect)
        detect.link_to(sink)
        graph.configure()
        for frame in container.decode(video=0):
            graph.push(frame)
            shown = graph.pull()
            assert isinstance(shown, VideoFrame)
            told = shown.metadata
            starts += [float(told[name]) for name in (f"{key}_start",) if name in told]
            ends += [float(told[name]) for name in (f"{key}_end",) if name in told]
    return list(zip(starts, chain(ends, repeat(float("inf"))), strict=False))


def rounded(stretches: Stretches, end: float = float("inf")) -> list[tuple[float, float]]:
    return [(float(each.start), float(each.end) if each.end < end else float("inf")) for each in stretches]


def moving(count: int) -> Iterator[Image]:
    return (scene(shift=3 * i) for i in range(count))


def stopped() -> Iterator[Image]:
    """Two seconds of motion, three frozen, two of motion, three black, one of motion, two frozen to the end."""
    black = np.zeros_like(scene())
    yield from moving(50)
    yield from repeat(scene(shift=3 * 49), 75)
    yield from moving(50)
    yield from repeat(black, 75)
    yield from moving(25)
    yield from repeat(scene(shift=3 * 24), 50)


@pytest.fixture(scope="module", params=[(12, 0), (250, 3)], ids=["phone", "export"])
def stops(request: pytest.FixtureRequest, films: Path) -> Path:
    gop, b_frames = request.param
    track = Track(gop=gop, b_frames=b_frames)
    return filming.film(films / f"stops-{gop}.mp4", filming.steady(13), stopped(), track)


def test_frozen_stretches_are_those_that_were_filmed(stops: Path) -> None:
    """From the last moving picture to the next one; an encoder takes some pictures to settle."""
    filmed = [(1.96, 5), (6.96, 10), (10.96, float("inf"))]
    np.testing.assert_allclose(rounded(film_of(stops).frozen, 12.9), filmed, atol=0.3)


def test_frozen_stretches_are_those_of_freezedetect(films: Path) -> None:
    """FFmpeg's freezedetect at a noise of -50 dB, on every decoded picture."""
    path = filming.film(films / "stops-long.mp4", filming.steady(13), stopped(), Track(gop=250, b_frames=3))
    reference = by_ffmpeg(path, "freezedetect", "n=-50dB:d=1", "lavfi.freezedetect.freeze")
    assert len(reference) == 3
    np.testing.assert_allclose(rounded(film_of(path).frozen, 12.9), reference, atol=0.3)


def test_plain_stretches_are_those_of_blackdetect(films: Path) -> None:
    """FFmpeg's blackdetect on every decoded picture; a key frame must lie in the stretch for it to be known."""
    path = filming.film(films / "stops-plain.mp4", filming.steady(13), stopped(), Track(gop=12))
    reference = by_ffmpeg(path, "blackdetect", "d=1", "lavfi.black")
    assert len(reference) == 1
    np.testing.assert_allclose(rounded(film_of(path).plain), reference, atol=0.3)


def test_a_film_that_moves_is_never_frozen(even: Path, films: Path) -> None:
    path = filming.film(films / "moves.mp4", filming.steady(4), moving(100), Track(gop=12))
    assert film_of(path).frozen == ()
    assert film_of(even).key_spacing == 12 * TICK
    assert film_of(even).spacing == TICK


def test_key_frames_out_of_rhythm_and_large_pictures_may_be_cuts(films: Path) -> None:
    """An encoder that looks for cuts writes a key frame at picture 60; one that does not, a large picture."""
    other = [np.rot90(scene(shift=2 * i), 2).copy() for i in range(60)]
    images = [*(scene(shift=i) for i in range(60)), *other]
    plain = filming.film(films / "plain-cut.mp4", filming.steady(5)[:120], images, Track(gop=25))
    assert 60 * TICK in film_of(plain).candidates
    with av.open(str(films / "noticed.mp4"), "w") as container:
        track = container.add_stream("libx264", rate=25, options={"preset": "veryfast", "crf": "20"})
        track.width, track.height, track.pix_fmt = 320, 240, "yuv420p"
        for image in images:
            container.mux(track.encode(VideoFrame.from_ndarray(image, format="bgr24")))
        container.mux(track.encode(None))
    assert 60 * TICK in film_of(films / "noticed.mp4").candidates


@pytest.mark.parametrize(("first", "cut"), [(1000, True), (300, False)])
def test_a_quiet_scene_begins_with_more_than_it_takes(first: int, cut: bool) -> None:
    """Bytes of pictures: much moves, and then either another scene begins where nothing moves, or the motion ends."""
    sizes = np.array([9000, *[5000, 1500] * 10, first, *[250, 300] * 10], dtype=np.float64)
    times, keys = tuple(i * TICK for i in range(len(sizes))), np.arange(len(sizes)) == 0
    assert (21 * TICK in Packets(times, len(sizes) * TICK, sizes, keys, 640 * 360).candidates()) is cut


@pytest.mark.parametrize(
    ("filmed", "rate", "times"),
    [
        ("240.000000", Fraction(30), Fraction(1, 8)),
        ("3", Fraction(30), Fraction(10)),
        ("30.000000", Fraction(2997, 100), Fraction(1)),
        ("", Fraction(30), None),
        ("fast", Fraction(30), None),
        ("0", Fraction(30), None),
        ("30", None, None),
    ],
)
def test_speed_is_told_by_the_tag_of_the_camera_alone(
    filmed: str, rate: Fraction | None, times: Fraction | None
) -> None:
    """The tag is that of Android's media format, in pictures a second (from memory)."""
    assert speed({"com.android.capture.fps": filmed} if filmed else {}, rate) == times


@pytest.mark.parametrize(
    ("tags", "when"),
    [
        ({"creation_time": "2026-03-04T10:00:00.000000Z"}, "2026-03-04T10:00:00+00:00"),
        ({"creation_time": "2026-03-04T10:00:00.000000Z", "com.android.version": "15"}, "2026-03-04T09:58:30+00:00"),
        ({"creation_time": "1904-01-01T00:00:00.000000Z"}, ""),
        ({"creation_time": "yesterday"}, ""),
        ({}, ""),
    ],
)
def test_begun_is_the_clock_of_the_camera(tags: dict[str, str], when: str) -> None:
    """A film of 90 seconds. A file without a date holds zero, which is the year 1904 in its format."""
    assert begun(tags, Fraction(90)) == when


def test_the_clock_of_a_file_is_read(films: Path) -> None:
    tags = (("creation_time", "2026-03-04T10:00:00Z"),)
    path = filming.film(films / "dated.mp4", filming.steady(1), track=Track(tags=tags))
    assert film_of(path).begun == "2026-03-04T10:00:00+00:00"
