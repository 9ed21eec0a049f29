"""The clip of a step."""

import shutil
from fractions import Fraction
from pathlib import Path

import av
import cv2
import numpy as np
import pytest

from procbuilder.media.clips import ClipPart, Held, cut
from procbuilder.model.fault import CannotWrite, Unreadable
from procbuilder.model.marks import Box, HiddenPath
from procbuilder.model.origin import Place
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.colours import PATCHES, film_bt709, stored
from tests.media.filming import SHARED, Image, Track, number_of
from tests.refused import refused


def _span(start: Fraction | int, end: Fraction | int) -> Span:
    return Span("strip", Fraction(start), Fraction(end))


def _images(path: Path) -> list[Image]:
    with av.open(str(path)) as container:
        return [frame.to_ndarray(format="bgr24").astype(np.uint8, copy=False) for frame in container.decode(video=0)]


def _samples(path: Path) -> tuple[np.ndarray[tuple[int], np.dtype[np.float64]], int]:
    with av.open(str(path)) as container:
        frames = list(container.decode(audio=0))
    return np.concatenate([frame.to_ndarray().ravel() for frame in frames]).astype(float), frames[0].sample_rate


def test_cut_keeps_the_times_of_a_variable_rate(uneven: Path, tmp_path: Path) -> None:
    """Each picture of the span appears in the clip when it did on film, counted from the start."""
    times = filming.uneven(80)
    start, end = times[10] + Fraction(1, 200), times[30]
    seconds, width, height, sound = cut([ClipPart(uneven, _span(start, end))], tmp_path / "clip.mp4")
    assert (seconds, width, height, sound) == (end - start, 320, 240, False)
    long_enough = [i for i in range(11, 30) if times[i + 1] - times[i] >= Fraction(1, 40)]
    found = dict((number, time) for time, number in filming.numbers(tmp_path / "clip.mp4"))
    assert found[10] == 0
    assert set(long_enough[1:]) <= set(found) <= set(range(10, 30))
    assert all(abs(found[i] - (times[i] - start)) <= Fraction(1, 90_000) for i in found if i > 10)


def test_cut_of_a_long_gop_begins_exactly(long_gop: Path, tmp_path: Path) -> None:
    """The clip does not begin at a key frame of the source but where it was asked to."""
    assert cut([ClipPart(long_gop, _span(6, 8))], tmp_path / "clip.mp4")[0] == 2
    assert [number for _, number in filming.numbers(tmp_path / "clip.mp4")] == list(range(150, 200))


def test_cut_leaves_skipped_stretches_out(even: Path, tmp_path: Path) -> None:
    """Pictures and sound of a skip are missing, and the rest closes up."""
    part = ClipPart(even, _span(0, 4), (_span(1, 2), _span(3, 9)))
    seconds, _, _, sound = cut([part], tmp_path / "clip.mp4")
    found = filming.numbers(tmp_path / "clip.mp4")
    assert (seconds, sound) == (2, True)
    assert [number for _, number in found] == [*range(25), *range(50, 75)]
    assert found[25][0] == 1
    samples, rate = _samples(tmp_path / "clip.mp4")
    assert len(samples) / rate == pytest.approx(2, abs=0.05)


def test_cut_length_in_the_file_is_the_length_returned(even: Path, tmp_path: Path) -> None:
    """The last picture is shown as long as on film."""
    seconds, _, _, _ = cut([ClipPart(even, _span(Fraction(1, 2), Fraction(7, 3)))], tmp_path / "clip.mp4")
    assert seconds == Fraction(7, 3) - Fraction(1, 2)
    with av.open(str(tmp_path / "clip.mp4")) as container:
        assert container.duration is not None
        assert container.duration / 1e6 == pytest.approx(float(seconds), abs=0.001)
        ends = [(p.pts + (p.duration or 0)) * p.time_base for p in container.demux(video=0) if p.pts is not None]
    assert max(ends) == seconds


def test_cut_joins_recordings_in_the_shape_of_the_first(even: Path, turned: Path, tmp_path: Path) -> None:
    """An upright part stands in the middle of a wide clip with black at both sides; one silent part silences all."""
    parts = [ClipPart(even, _span(1, 2)), ClipPart(turned, _span(0, 1))]
    assert cut(parts, tmp_path / "clip.mp4") == (2, 320, 240, False)
    images = _images(tmp_path / "clip.mp4")
    assert [number_of(image) for image in images[:25]] == list(range(25, 50))
    last = images[-1]
    assert last[:, :68].max() < 20
    assert last[:, 252:].max() < 20
    middle = np.ascontiguousarray(np.rot90(last[:, 70:250], -1))
    assert number_of(middle) == 24


def test_cut_portrait_is_upright_and_small_enough(films: Path, tmp_path: Path) -> None:
    """A recording of 1080 by 1920 becomes 720 by 1280."""
    track = Track(size=(1920, 1080), turned=270)
    path = filming.film(films / "portrait.mp4", filming.steady(1, rate=5), track=track)
    assert cut([ClipPart(path, _span(0, 1))], tmp_path / "clip.mp4")[1:3] == (720, 1280)
    with av.open(str(tmp_path / "clip.mp4")) as container:
        assert next(container.decode(video=0)).rotation == 0
    assert number_of(np.ascontiguousarray(np.rot90(_images(tmp_path / "clip.mp4")[3], 1))) == 3


def test_cut_odd_size_becomes_even(films: Path, tmp_path: Path) -> None:
    """4:2:0 pictures need even sides: 313 by 242 becomes 312 by 240, in proportion."""
    track = Track(size=(318, 242), pixel_shape=Fraction(313, 318))
    path = filming.film(films / "odd_size.mp4", filming.steady(1), track=track)
    _, width, height, _ = cut([ClipPart(path, _span(0, 1))], tmp_path / "clip.mp4")
    assert (width, height) == (312, 240)
    last = _images(tmp_path / "clip.mp4")[-1][60:]
    assert min(last[-1].min(), last[:, 0].min(), last[:, -1].min()) > 40  # no black edge


def test_cut_slow_motion_has_at_most_forty_pictures_a_second(films: Path, tmp_path: Path) -> None:
    """Of 240 pictures a second every sixth is kept, at its own time."""
    path = filming.film(films / "slow.mp4", [Fraction(i, 240) for i in range(240)])
    assert cut([ClipPart(path, _span(0, 1))], tmp_path / "clip.mp4")[0] == 1
    assert [number for _, number in filming.numbers(tmp_path / "clip.mp4")] == list(range(0, 240, 6))


def test_cut_hides_a_moving_region(films: Path, tmp_path: Path) -> None:
    """The box goes with the time of the recording; outside it the picture is kept."""
    board = np.tile(np.array([[20, 230], [230, 20]], np.uint8).repeat(8, 0).repeat(8, 1), (15, 20))
    image = np.dstack([board] * 3).astype(np.uint8)
    path = filming.film(films / "board.mp4", filming.steady(4), [image] * 100)
    boxes = ((Fraction(1), Box(0.0, 0.0, 0.25, 1.0)), (Fraction(3), Box(0.75, 0.0, 1.0, 1.0)))
    hidden = (HiddenPath(Place("procedure.md", 1), "strip", boxes),)
    other = (HiddenPath(Place("procedure.md", 2), "refit", ((Fraction(0), Box(0, 0, 1, 1)),)),)
    cut([ClipPart(path, _span(1, 3), hidden=hidden + other)], tmp_path / "clip.mp4")
    images = _images(tmp_path / "clip.mp4")
    for index, left in ((0, 0), (25, 120), (49, 236)):
        spread = images[index].astype(int).std(axis=(0, 2))
        assert spread[left + 6 : left + 74].max() < 20
        assert spread[(left + 120) % 240 : (left + 120) % 240 + 60].min() > 60


def test_cut_sound_is_that_of_the_span(films: Path, tmp_path: Path) -> None:
    """Sound that ends early is followed by silence; before that it is the tone of the recording."""
    path = filming.film(films / "short_tone.mp4", filming.steady(4), track=Track(sound=(Fraction(2),)))
    assert cut([ClipPart(path, _span(1, 3))], tmp_path / "clip.mp4")[3]
    samples, rate = _samples(tmp_path / "clip.mp4")
    assert rate == 48_000
    first, second = samples[9_600:43_200], samples[57_600:86_400]
    tone = np.abs(np.fft.rfft(first)).argmax() * rate / len(first)
    assert tone == pytest.approx(440, abs=3)
    assert np.abs(first).max() == pytest.approx(0.3, abs=0.05)
    assert np.abs(second).max() < 0.01


def test_cut_where_the_sound_has_ended_is_silent(films: Path, tmp_path: Path) -> None:
    """A part after the end of the sound has none that can be decoded."""
    path = filming.film(films / "shorter_tone.mp4", filming.steady(4), track=Track(sound=(Fraction(1),)))
    assert cut([ClipPart(path, _span(2, 3))], tmp_path / "clip.mp4") == (1, 320, 240, False)


def test_cut_broken_sound_is_not_fatal(films: Path, tmp_path: Path) -> None:
    """All pictures are there although no sound can be decoded."""
    path = filming.film(films / "bad_sound.mp4", filming.steady(2), track=Track(sound=(Fraction(2),)))
    part = ClipPart(filming.scramble(path, "audio"), _span(0, 2))
    assert cut([part], tmp_path / "clip.mp4") == (2, 320, 240, False)
    assert [number for _, number in filming.numbers(tmp_path / "clip.mp4")] == list(range(50))


def test_cut_damaged_stretch_keeps_what_can_be_decoded(films: Path, tmp_path: Path) -> None:
    """Pictures before and after the damage are kept, at their times."""
    path = filming.scramble(filming.film(films / "hurt.mp4", filming.steady(4)), "video", (0.4, 0.5))
    assert cut([ClipPart(path, _span(0, 4))], tmp_path / "clip.mp4")[0] == 4
    found = filming.numbers(tmp_path / "clip.mp4")
    assert set(found) >= {(Fraction(i, 25), i) for i in (*range(38), *range(70, 100))}


def test_cut_beyond_the_end_stops_with_the_recording(even: Path, tmp_path: Path) -> None:
    """Nothing is made up to fill a span."""
    assert cut([ClipPart(even, _span(3, 60))], tmp_path / "clip.mp4")[0] == 1


def test_cut_without_any_picture_says_where(even: Path, tmp_path: Path) -> None:
    """A span after the end of the recording gives no file."""
    with refused(Unreadable, "no picture can be decoded in strip 0:20-0:25"):
        cut([ClipPart(even, _span(20, 25))], tmp_path / "clip.mp4")
    assert not (tmp_path / "clip.mp4").exists()


def test_cut_has_no_metadata_and_the_same_bytes(films: Path, tmp_path: Path) -> None:
    """Place, device, date and program are left behind; the index stands in front for quick starts."""
    tags = (("location", "+51.5000-000.1200/"), ("com.apple.quicktime.model", "Camera 7"), ("comment", "yard"))
    path = filming.film(films / "tagged.mp4", filming.steady(2), track=Track(sound=(Fraction(2),), tags=tags))
    for name in ("one.mp4", "two.mp4"):
        cut([ClipPart(path, _span(0, 2))], tmp_path / name)
    data = (tmp_path / "one.mp4").read_bytes()
    assert data == (tmp_path / "two.mp4").read_bytes()
    with av.open(str(tmp_path / "one.mp4")) as container:
        assert set(container.metadata) == {"major_brand", "minor_version", "compatible_brands"}
        assert all(set(stream.metadata) <= {"language", "handler_name"} for stream in container.streams)
    assert b"Lavf" not in data
    assert data.index(b"moov") < data.index(b"mdat")
    at = data.index(b"mvhd") + 8
    assert data[at : at + 8] == bytes(8)  # creation and modification time (ISO 14496-12, 8.2.2)


def test_cut_plays_everywhere(even: Path, tmp_path: Path) -> None:
    """H.264 in 4:2:0 with BT.709 tags, AAC mono at 48 kHz."""
    cut([ClipPart(even, _span(0, 1))], tmp_path / "clip.mp4")
    with av.open(str(tmp_path / "clip.mp4")) as container:
        pictures, sound = container.streams.video[0].codec_context, container.streams.audio[0].codec_context
        assert (pictures.name, pictures.pix_fmt, pictures.colorspace) == ("h264", "yuv420p", 1)
        assert (sound.name, sound.layout.name, sound.sample_rate) == ("aac", "mono", 48_000)


def test_cut_keeps_colours(films: Path, tmp_path: Path) -> None:
    """Luma and colour differences of the patches are again those of ITU-R BT.709-6, as the clip is tagged."""
    path = film_bt709(films / "patches.mp4")
    cut([ClipPart(path, _span(0, Fraction(1, 25)))], tmp_path / "clip.mp4")
    with av.open(str(tmp_path / "clip.mp4")) as container:
        planes = next(container.decode(video=0)).to_ndarray()
    luma, blue, red = planes[:720], planes[720:900].reshape(360, 640), planes[900:].reshape(360, 640)
    for i, patch in enumerate(PATCHES):
        middle = 256 * i + 128
        found = [int(plane) for plane in (luma[360, middle], blue[180, middle // 2], red[180, middle // 2])]
        assert found == pytest.approx(list(stored(patch)), abs=4)


def test_cut_that_cannot_be_written_says_so(even: Path, tmp_path: Path) -> None:
    """The folder is missing."""
    with refused(CannotWrite, r"clip.mp4: cannot be written \(there is no such file or folder\)"):
        cut([ClipPart(even, _span(0, 1))], tmp_path / "none" / "clip.mp4")


@pytest.mark.parametrize(
    ("name", "start", "end", "sound"),
    [
        ("phone_vfr_rotated180.mp4", Fraction(1, 2), Fraction(3, 2), True),
        ("no_duration_vfr.webm", Fraction(2), Fraction(3), True),
        ("failing_audio.mp4", Fraction(10), Fraction(11), True),
    ],
)
def test_cut_real_clip(tmp_path: Path, name: str, start: Fraction, end: Fraction, sound: bool) -> None:
    """Real files with the habits of phones and browsers become plain clips."""
    if not (SHARED / name).exists():
        pytest.skip(f"{name} is not in the shared media folder")
    shutil.copy(SHARED / name, tmp_path / name)
    seconds, width, height, has_sound = cut([ClipPart(tmp_path / name, _span(start, end))], tmp_path / "clip.mp4")
    assert (seconds, has_sound) == (end - start, sound)
    assert (width, height) == ((640, 360) if name == "failing_audio.mp4" else (1280, 720))


def test_cut_begins_with_the_held_picture_in_silence(even: Path, tmp_path: Path) -> None:
    """For its seconds the clip shows the picture file; then film and tone begin as they would have without it."""
    board = np.tile(np.array([[40, 210], [210, 40]], np.uint8).repeat(40, 0).repeat(40, 1), (3, 4))
    cv2.imwrite(str(tmp_path / "held.jpg"), np.dstack([board] * 3))
    held = [Held(tmp_path / "held.jpg", Fraction(5, 2))]
    seconds, width, height, sound = cut([ClipPart(even, _span(1, 3))], tmp_path / "clip.mp4", held)
    assert (seconds, width, height, sound) == (Fraction(9, 2), 320, 240, True)
    with av.open(str(tmp_path / "clip.mp4")) as container:
        shown = [
            (f.pts * f.time_base, f.to_ndarray(format="gray"))
            for f in container.decode(video=0)
            if f.time_base and f.pts is not None
        ]
    still = [image for time, image in shown if time < 2.5]
    assert len(still) == 10
    assert max(np.abs(image.astype(int) - board).mean() for image in still) < 4
    found = [(time, number) for time, number in filming.numbers(tmp_path / "clip.mp4") if time >= Fraction(5, 2)]
    assert [number for _, number in found] == list(range(25, 75))
    assert found[0][0] == Fraction(5, 2)
    samples, rate = _samples(tmp_path / "clip.mp4")
    assert np.abs(samples[: int(2.4 * rate)]).max() < 0.001
    assert np.abs(samples[int(2.6 * rate) : int(4.4 * rate)]).max() == pytest.approx(0.3, abs=0.05)


def test_cut_held_picture_of_another_shape_stands_in_the_middle(turned: Path, tmp_path: Path) -> None:
    """A wide picture in an upright clip of 240 by 320 has black above and below."""
    cv2.imwrite(str(tmp_path / "held.png"), np.full((90, 160, 3), 200, np.uint8))
    held = [Held(tmp_path / "held.png", Fraction(1))]
    assert cut([ClipPart(turned, _span(0, 1))], tmp_path / "clip.mp4", held)[:3] == (2, 240, 320)
    first = _images(tmp_path / "clip.mp4")[0]
    assert first[:88].max() < 20
    assert first[232:].max() < 20
    assert (np.abs(first[100:220].astype(int) - 200) < 6).all()
