"""The moment chosen for a step, and the reason given."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.media.choose import choose
from procbuilder.media.measure import measure
from procbuilder.model.footage import Measure
from procbuilder.model.timecode import Span
from tests.media import filming

SPAN = Span("strip", Fraction(10), Fraction(20))
GOOD = Measure(Fraction(0), sharpness=8.0, motion=0.0, brightness=110.0, clipped=0.01, strangeness=5.0)


def _window(**faults: dict[int, float]) -> list[Measure]:
    """Ten measures, one a second; a fault changes one value at one second."""
    measures = [replace(GOOD, time=Fraction(10 + i)) for i in range(10)]
    for name, values in faults.items():
        for i, value in values.items():
            measures[i] = replace(measures[i], **{name: value})  # type: ignore[arg-type]  # names of float fields
    return measures


@pytest.mark.parametrize(
    ("fault", "spoilt", "value"),
    [
        ("sharpness", (8, 9), 5.0),
        ("motion", (8, 9), 3.0),
        ("brightness", (8, 9), 30.0),
        ("clipped", (8, 9), 0.6),
        ("strangeness", (8, 9), 80.0),
    ],
)
def test_choose_avoids_a_fault_late_in_the_step(fault: str, spoilt: tuple[int, ...], value: float) -> None:
    """All else equal, the latest moment without the fault is good enough."""
    chosen = choose(_window(**{fault: dict.fromkeys(spoilt, value)}), SPAN)
    assert chosen.time == 17
    assert chosen.reason == "sharp and still, 0:03 before the end of the step"


def test_choose_prefers_the_end() -> None:
    """Among pictures that are all alike the finished state comes last."""
    assert choose(_window(), SPAN).time == 19


def test_choose_prefers_a_sharp_picture_over_the_last_one() -> None:
    """A little lateness is given up for much sharpness."""
    window = _window(sharpness=dict.fromkeys((0, 1, 2, 3, 4, 5, 7, 8, 9), 6.0))
    assert choose(window, SPAN).time == 16


def test_choose_noise_between_like_pictures_does_not_outweigh_lateness() -> None:
    """The sharpest of pictures that are all alike is not taken when it lies early."""
    window = _window(sharpness={1: 8.004}, motion={1: -0.004}, strangeness={1: 4.99})
    assert choose(window, SPAN).time == 19


@pytest.mark.parametrize(
    ("changed", "reason"),
    [
        ({}, "sharp and still, 0:01 before the end of the step"),
        ({"motion": 1.0}, "sharp, 0:01 before the end of the step"),
        ({"brightness": 20.0}, "the best there is, but dark, 0:01 before the end of the step"),
        ({"sharpness": 3.0}, "the best there is, but blurred, 0:01 before the end of the step"),
        ({"motion": 2.5}, "the best there is, but in motion, 0:01 before the end of the step"),
        ({"brightness": 230.0, "clipped": 0.5}, "the best there is, but glaring, 0:01 before the end of the step"),
        (
            {"brightness": 20.0, "sharpness": 3.0},
            "the best there is, but dark and blurred, 0:01 before the end of the step",
        ),
    ],
)
def test_choose_reason_says_what_is_weak(changed: dict[str, float], reason: str) -> None:
    """When all pictures of a step share a fault, the best of them still has it."""
    window = _window(**{name: dict.fromkeys(range(10), value) for name, value in changed.items()})
    assert choose(window, SPAN).reason == reason


def test_choose_reason_calls_the_soft_one_of_sharp_pictures_blurred() -> None:
    """A picture taken for its stillness although others are much sharper is called blurred."""
    window = _window(sharpness={0: 9.0}, motion=dict.fromkeys(range(9), 6.0))
    assert choose(window, SPAN).reason == "the best there is, but blurred, 0:01 before the end of the step"


def test_choose_single_picture() -> None:
    """One picture is the choice, whatever it is like."""
    chosen = choose([replace(GOOD, time=Fraction(199, 10))], SPAN)
    assert (chosen.recording, chosen.time) == ("strip", Fraction(199, 10))
    assert chosen.reason == "sharp and still, at the end of the step"


def test_choose_without_pictures_takes_the_middle_and_says_so() -> None:
    """An honest reason, not a made-up one."""
    chosen = choose([], SPAN)
    assert chosen.time == 15
    assert chosen.reason == "no picture of this step could be measured; taken from its middle"


def test_choose_never_leaves_the_span() -> None:
    """Measures before, after and at the end of the span do not count."""
    outside = [replace(GOOD, time=Fraction(t), sharpness=20.0) for t in (5, 20, 25)]
    assert choose([*outside, *_window()], SPAN).time == 19
    assert choose(outside, SPAN).time == 15


def test_choose_on_film_takes_the_pause_after_the_work(films: Path) -> None:
    """Six seconds: still and sharp before the work, shaking and blurred during it, finished, then a swing away."""
    finished = filming.scene()
    finished[80:160, 120:200] = (30, 60, 190)
    work = [filming.scene(blur=2, shift=(i * 37) % 60) for i in range(20)]
    away = [filming.scene(blur=3, shift=20 * i) for i in range(1, 6)]
    images = [filming.scene()] * 10 + work + [finished] * 25 + away
    path = filming.film(films / "work.mp4", [Fraction(i, 10) for i in range(len(images))], images)
    span = Span("strip", Fraction(0), Fraction(6))
    chosen = choose(measure(path, span), span)
    assert Fraction(3) <= chosen.time < Fraction(11, 2)
    assert chosen.reason.startswith("sharp and still, 0:0")


def test_choose_on_film_says_blurred_when_all_is_blurred(films: Path) -> None:
    """A step filmed out of focus from beginning to end."""
    path = filming.film(films / "soft.mp4", filming.steady(1), [filming.scene(blur=12)] * 25)
    span = Span("strip", Fraction(0), Fraction(1))
    assert choose(measure(path, span), span).reason == "the best there is, but blurred, at the end of the step"
