"""Measures of the pictures at the end of a step."""

from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.media.decode import frames
from procbuilder.media.measure import measure
from procbuilder.model.footage import Measure
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.filming import Image


def _measure(path: Path, start: float, end: float, *skips: tuple[int, int]) -> tuple[Measure, ...]:
    left_out = tuple(Span("strip", Fraction(a), Fraction(b)) for a, b in skips)
    return measure(path, Span("strip", Fraction(start), Fraction(end)), skips=left_out)


def _film(films: Path, name: str, images: list[Image], rate: int = 10) -> Path:
    return filming.film(films / f"{name}.mp4", [Fraction(i, rate) for i in range(len(images))], images)


def test_measure_blur_lowers_sharpness_even_under_noise(films: Path) -> None:
    """Three pictures each, sharp to blurred; the order must be found again."""
    images = [filming.scene(blur=blur) for blur in (0, 0, 0, 2, 2, 2, 5, 5, 5)]
    found = [m.sharpness for m in _measure(_film(films, "blurs", images), 0, 1)]
    assert min(found[0:3]) > max(found[3:6])
    assert min(found[3:6]) > max(found[6:9])


def test_measure_motion_is_high_while_something_moves(films: Path) -> None:
    """Still for a second, then moving for a second."""
    images = [filming.scene(shift=max(i - 10, 0) * 12) for i in range(20)]
    found = [m.motion for m in _measure(_film(films, "moves", images), 0, 2)]
    assert max(found[:8]) + 1 < min(found[13:])


def test_measure_light_and_clipping(films: Path) -> None:
    """Brightness is the mean grey; a white-out has no detail."""
    images = [filming.scene()] * 2 + [filming.scene(light=0.2)] * 2 + [filming.scene(light=9.0)] * 2
    found = _measure(_film(films, "lights", images), 0, 1)
    assert found[0].brightness == pytest.approx(125, abs=6)
    assert found[2].brightness == pytest.approx(25, abs=4)
    assert found[0].clipped < 0.05 < 0.8 < found[4].clipped


def test_measure_strangeness_marks_what_is_unlike_the_rest(films: Path) -> None:
    """One picture of another thing among nine alike."""
    images = [filming.scene()] * 9
    images[6] = 255 - images[6]
    found = [m.strangeness for m in _measure(_film(films, "odd", images), 0, 1)]
    assert found.index(max(found)) == 6
    assert max(found) > 20 * found[0]


def test_measure_takes_the_last_ten_seconds(films: Path) -> None:
    """Of a long step only the end can show how it ends."""
    path = filming.film(films / "long.mp4", filming.steady(30, rate=2))
    assert [m.time for m in _measure(path, 1, 29)] == [Fraction(i, 2) for i in range(38, 58)]


def test_measure_leaves_skipped_stretches_out(even: Path) -> None:
    """No measure lies in a skip, and ten seconds are counted in what is left."""
    times = [m.time for m in _measure(even, 0, 4, (1, 3))]
    assert len(times) == 26
    assert not any(1 <= time < 3 for time in times)


def test_measure_jump_over_a_skip_is_no_motion(films: Path) -> None:
    """Two still stretches with different pictures stay still."""
    images = [filming.scene()] * 10 + [filming.scene(shift=80)] * 20
    found = [m.motion for m in _measure(_film(films, "jump", images), 0, 3, (1, 2))]
    assert max(found) < 0


def test_measure_slow_motion_is_thinned_out(films: Path) -> None:
    """Of 240 pictures a second sixteen are enough."""
    path = filming.film(films / "slow_motion.mp4", [Fraction(i, 240) for i in range(240)])
    assert len(_measure(path, 0, 1)) == 16


def test_measure_damaged_pictures_are_left_out(films: Path) -> None:
    """A smeared picture must not be chosen for its sharp edges."""
    images = [filming.scene(shift=3 * i) for i in range(50)]
    path = filming.scramble(_film(films, "smeared", images), "video", (0.4, 0.5), keep=0.5)
    smeared = {time for time, frame in frames(path, Fraction(0), Fraction(5)) if frame.is_corrupt}
    times = {m.time for m in _measure(path, 0, 5)}
    assert smeared
    assert not smeared & times
    assert len(times) >= 40


def test_measure_one_picture_and_none(even: Path) -> None:
    """A step of one picture has one measure, a step beyond the end has none."""
    (only,) = _measure(even, 1.0, 1.03)
    assert only.time == 1
    assert _measure(even, 50, 60) == ()
