"""Measures of the pictures of a step against each other."""

from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.media.calm import AWAY, MOVING
from procbuilder.media.look import look
from procbuilder.media.measure import measured
from procbuilder.media.sample import sampled
from procbuilder.model.footage import Measure
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.filming import Image


def _measure(films: Path, name: str, images: list[Image], rate: int = 10) -> tuple[Measure, ...]:
    path = filming.film(films / f"{name}.mp4", [Fraction(i, rate) for i in range(len(images))], images)
    return measured([look(*each) for each in sampled(path, Span("strip", Fraction(0), Fraction(100)), Fraction(0))])


def test_blur_lowers_sharpness_and_acuity_and_loses_detail(films: Path) -> None:
    """Three pictures each, sharp to blurred; the order must be found again."""
    found = _measure(films, "blurs", [filming.scene(blur=blur) for blur in (0, 0, 0, 2, 2, 2, 5, 5, 5)])
    for values in ([m.sharpness for m in found], [m.acuity for m in found], [-m.lost for m in found]):
        assert min(values[0:3]) > max(values[3:6])
        assert min(values[3:6]) > max(values[6:9])


def test_a_calm_stretch_ends_where_something_moves(films: Path) -> None:
    """A stone slides over the others from the tenth picture on."""
    images = [filming.scene() for _ in range(20)]
    for i in range(10, 20):
        images[i][100:150, 30 + 20 * (i - 10) : 80 + 20 * (i - 10)] = (30, 60, 190)
    found = _measure(films, "slides", images)
    assert {m.calm for m in found[:9]} == {1}
    assert {m.calm for m in found[12:]} == {0}
    assert max(m.motion for m in found[:9]) < MOVING < min(m.motion for m in found[12:])


def test_a_shaking_camera_is_calm_and_a_swing_is_not(films: Path) -> None:
    """Two pixels to and fro, then off to the side for good."""
    images = [filming.scene(shift=2 * (i % 2)) for i in range(20)] + [filming.scene(shift=12 * i) for i in range(1, 7)]
    found = _measure(films, "swing", images)
    assert {m.calm for m in found[:19]} == {1}
    assert {m.calm for m in found[-4:]} == {0}
    assert max(m.away for m in found[:19]) < AWAY < found[-1].away


def test_light_and_white_are_measured(films: Path) -> None:
    """Brightness is the mean grey, light is told against the usual one, and a white-out has no detail."""
    images = [filming.scene()] * 4 + [filming.scene(light=0.2)] * 2 + [filming.scene(light=9.0)] * 2
    found = _measure(films, "lights", images)
    assert found[0].brightness == pytest.approx(125, abs=6)
    assert found[4].brightness == pytest.approx(25, abs=4)
    assert found[0].light == pytest.approx(0, abs=0.1)
    assert found[4].light == pytest.approx(-1.6, abs=0.15)
    assert found[0].white < 0.05 < 0.8 < found[6].white


def test_a_picture_without_neighbours_is_alone(films: Path) -> None:
    """One picture a second tells nothing of motion."""
    found = _measure(films, "alone", [filming.scene()] * 4, rate=1)
    assert [(m.alone, m.calm) for m in found] == [(True, 0)] * 4


def test_nothing_measured_of_nothing() -> None:
    assert measured([]) == ()
