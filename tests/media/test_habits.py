"""Every habit of phones and action cameras: the picture asked for, upright, as still and in the clip."""

from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

import av
import cv2
import numpy as np
import pytest

from procbuilder.media.clips import ClipPart, cut
from procbuilder.media.decode import picture_at
from procbuilder.media.probe import probe
from procbuilder.model.footage import Oddity
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.coded import BT601, BT709, BT2020, HLG, PQ, UNTAGGED, Coding, coded, patched
from tests.media.filming import Image, Track, number_of

_PLAIN = (BT709, BT709, BT709)
_ORDINARY, _HIGH = 3.0, 6.0
"""Mean error of colours, of 255, in ordinary and in high dynamic range."""

_TICK = Fraction(1, 90_000)


@dataclass(frozen=True)
class Habit:
    """How a camera writes; pictures are ``shape`` as shown."""

    name: str
    track: Track
    coding: Coding = field(default_factory=Coding)
    times: tuple[Fraction, ...] = tuple(filming.steady(1, rate=10))
    shape: tuple[int, int] = (320, 180)
    ending: str = "mp4"

    @property
    def worst(self) -> float:
        """Mean colour error that is allowed."""
        return _HIGH if self.coding.high_range else _ORDINARY

    def picture(self, number: int) -> Image:
        """What was before the camera."""
        return patched(number, *self.shape)

    def film(self, folder: Path) -> Path:
        """Writes the recording."""
        images = (coded(self._stored(self.picture(i)), self.coding) for i in range(len(self.times)))
        return filming.film(folder / f"{self.name}.{self.ending}", self.times, images, self.track)

    def _stored(self, image: Image) -> Image:
        turned = np.ascontiguousarray(np.rot90(image, -self.track.turned // 90))
        return cv2.resize(turned, self.track.size, interpolation=cv2.INTER_AREA).astype(np.uint8, copy=False)


def _track(
    coding: Coding,
    *,
    codec: str = "libx264",
    size: tuple[int, int] = (320, 180),
    gop: int = 12,
    b_frames: int = 0,
    turned: int = 0,
    colours: tuple[int, int, int] = _PLAIN,
    pixel_shape: Fraction = Fraction(1),
    sound: tuple[Fraction, ...] = (),
) -> Track:
    return Track(
        size=size,
        gop=gop,
        b_frames=b_frames,
        turned=turned,
        sound=sound,
        pixel_shape=pixel_shape,
        codec=codec,
        pixels="yuv420p10le" if coding.bits > 8 else "yuv420p",
        colours=colours,
        full_range=coding.full_range,
    )


_SDR, _SDR10, _SD = Coding(), Coding(bits=10), Coding(matrix=BT601)
_HLG10, _PQ10 = Coding(HLG, BT2020, 10), Coding(PQ, BT2020, 10)
_JPEG = Coding(matrix=BT601, full_range=True)
_FULL, _PQ_FULL = Coding(full_range=True), Coding(PQ, BT2020, 10, True)
_HLG_TAGS, _PQ_TAGS, _NO_TAGS = (BT2020, HLG, BT2020), (BT2020, PQ, BT2020), (UNTAGGED, UNTAGGED, UNTAGGED)
_LONG = tuple(filming.steady(4))
_UNEVEN = tuple(filming.uneven(40))

HABITS = [
    Habit("h264", _track(_SDR)),
    Habit("h264_key_frames_only", _track(_SDR, gop=1)),
    Habit("h264_sound", _track(_SDR, sound=(Fraction(1),))),
    Habit("h264_two_sounds", _track(_SDR, sound=(Fraction(1), Fraction(1))), ending="mov"),
    Habit("h264_in_matroska", _track(_SDR, b_frames=2), ending="mkv"),
    Habit("h264_long_gop", _track(_SDR, gop=250, b_frames=3), times=_LONG),
    Habit("h264_uneven", _track(_SDR, gop=15, b_frames=2), times=_UNEVEN),
    Habit("h264_full_range", _track(_FULL), _FULL),
    Habit("h264_sd_tags", _track(_SD, colours=(BT601, BT601, BT601)), _SD),
    Habit("h264_sd_untagged", _track(_SD, colours=_NO_TAGS), _SD),
    Habit("h264_hd_untagged", _track(_SDR, size=(1280, 720), colours=_NO_TAGS), times=_LONG[:4], shape=(1280, 720)),
    Habit("h264_turned_90", _track(_SDR, turned=90), shape=(180, 320)),
    Habit("h264_turned_180", _track(_SDR, turned=180)),
    Habit("h264_turned_270", _track(_SDR, turned=270), shape=(180, 320)),
    Habit("h264_oblong", _track(_SDR, size=(240, 180), pixel_shape=Fraction(4, 3))),
    Habit("h264_odd_as_shown", _track(_SDR, pixel_shape=Fraction(313, 320)), shape=(313, 180)),
    Habit("jpegs_odd", _track(_JPEG, codec="mjpeg", size=(321, 181), colours=_NO_TAGS), _JPEG, shape=(321, 181)),
    Habit("hevc", _track(_SDR, codec="libx265")),
    Habit("hevc_uneven_b", _track(_SDR, codec="libx265", gop=20, b_frames=3), times=_UNEVEN, ending="mov"),
    Habit("hevc_10bit", _track(_SDR10, codec="libx265"), _SDR10),
    Habit("hevc_hlg", _track(_HLG10, codec="libx265", colours=_HLG_TAGS, b_frames=2), _HLG10, ending="mov"),
    Habit("hevc_hlg_turned", _track(_HLG10, codec="libx265", colours=_HLG_TAGS, turned=270), _HLG10, shape=(180, 320)),
    Habit("hevc_hlg_half_tagged", _track(_HLG10, codec="libx265", colours=(BT2020, HLG, UNTAGGED)), _HLG10),
    Habit("hevc_hlg_uneven", _track(_HLG10, codec="libx265", colours=_HLG_TAGS), _HLG10, times=_UNEVEN),
    Habit("hevc_pq", _track(_PQ10, codec="libx265", colours=_PQ_TAGS), _PQ10),
    Habit("hevc_pq_full_range", _track(_PQ_FULL, codec="libx265", colours=_PQ_TAGS), _PQ_FULL),
]


@pytest.fixture(scope="module", params=HABITS, ids=lambda habit: habit.name)
def filmed(request: pytest.FixtureRequest, films: Path) -> tuple[Habit, Path]:
    """A habit and a recording that has it."""
    habit: Habit = request.param
    return habit, habit.film(films)


def _error(image: Image, wanted: Image) -> float:
    """Mean difference of the colours, but for the edges of patches, across which 4:2:0 smears them."""
    around = np.ones((9, 9), np.uint8)
    even = (cv2.dilate(wanted, around).astype(int) - cv2.erode(wanted, around)).max(axis=2) < 20
    return float(np.abs(image.astype(int) - wanted)[even].mean())


def test_still_is_the_picture_asked_for(filmed: tuple[Habit, Path]) -> None:
    """At, just before and after the moment at which it appears; upright, square, in its colours."""
    habit, path = filmed
    for i in sorted({0, 1, len(habit.times) // 2, len(habit.times) - 2, len(habit.times) - 1}):
        appears = habit.times[i] - habit.times[0]
        for time, wanted in ((appears, i), (appears + Fraction(1, 100), i), (appears - 45 * _TICK, max(i - 1, 0))):
            assert number_of(picture_at(path, time)[1]) == wanted
        image = picture_at(path, appears)[1]
        assert image.shape[1::-1] == habit.shape
        assert _error(image, habit.picture(i)) <= habit.worst


def test_clip_has_the_pictures_of_its_span(filmed: tuple[Habit, Path], tmp_path: Path) -> None:
    """All of them once, upright, in their colours, at their times, in colours tagged as BT.709."""
    habit, path = filmed
    first, last = len(habit.times) // 4, len(habit.times) * 3 // 4
    span = Span("strip", habit.times[first], habit.times[last])
    seconds, width, height, sound = cut([ClipPart(path, span)], tmp_path / "clip.mp4")
    assert (seconds, sound) == (span.seconds, bool(habit.track.sound))
    assert abs(width / height - habit.shape[0] / habit.shape[1]) < 0.02
    with av.open(str(tmp_path / "clip.mp4")) as container:
        frames = list(container.decode(video=0))
    images = [frame.to_ndarray(format="bgr24").astype(np.uint8, copy=False) for frame in frames]
    shortly = {i for i in range(first, last) if habit.times[i + 1] - habit.times[i] < Fraction(1, 40)}
    found = [number_of(image) for image in images]
    assert found == sorted(set(found))
    assert set(range(first, last)) - shortly <= set(found) <= set(range(first, last))
    for frame, number in zip(frames, found, strict=True):
        assert frame.pts is not None
        assert frame.time_base is not None
        assert abs(frame.pts * frame.time_base - (habit.times[number] - habit.times[first])) <= 2 * _TICK
        assert (frame.color_primaries, frame.color_trc, frame.colorspace, frame.color_range) == (*_PLAIN, 1)
    wanted = cv2.resize(habit.picture(found[-1]), (width, height), interpolation=cv2.INTER_AREA)
    assert _error(images[-1], wanted.astype(np.uint8, copy=False)) <= habit.worst


def test_facts_are_those_of_the_recording(filmed: tuple[Habit, Path]) -> None:
    """Number and length of pictures, size as shown, and a word on what is unusual."""
    habit, path = filmed
    facts = probe(path, name="strip", shown=path.name, sha256="0").recording
    assert (facts.pictures, facts.width, facts.height) == (len(habit.times), *habit.shape)
    assert facts.rotation == habit.track.turned
    assert facts.variable_rate == (habit.times == _UNEVEN)
    assert abs(facts.duration - habit.times[-1]) <= Fraction(11, 100)
    assert any(remark.oddity is Oddity.HIGH_RANGE for remark in facts.remarks) == habit.coding.high_range
