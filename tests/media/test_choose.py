"""The moment chosen for a step, and the reason given."""

import itertools
from dataclasses import replace
from fractions import Fraction

import pytest

from procbuilder.media.choose import MOST_CANDIDATES, choose
from procbuilder.model.footage import Measure, Reason, Weakness, Why
from procbuilder.model.timecode import Span

SPAN = Span("strip", Fraction(10), Fraction(20))
GOOD = Measure(
    Fraction(0), sharpness=8.0, lost=0.1, acuity=-1.0, blunter=0.0, brightness=110.0, light=0.0, white=0.01,
    motion=1.0, camera=0.01, away=0.0, calm=1,
)  # fmt: skip


def _window(**faults: dict[int, float]) -> list[Measure]:
    """A hundred measures, ten a second, in calm stretches of a second; a fault changes one value in one second."""
    measures = [replace(GOOD, time=10 + Fraction(i, 10), calm=1 + i // 10) for i in range(100)]
    for name, values in faults.items():
        for second, value in values.items():
            for i in range(10 * second, 10 * second + 10):
                measures[i] = replace(measures[i], **{name: value})  # type: ignore[arg-type]  # names of its fields
    return measures


def _second(measures: list[Measure]) -> int:
    return int(choose(measures, SPAN).time) - 10


@pytest.mark.parametrize(
    ("fault", "why"),
    [
        ({"light": -0.5}, Why.SHARP_AND_LIT),
        ({"brightness": 30.0}, Why.SHARP_AND_LIT),
        ({"white": 0.5}, Why.SHARP_AND_LIT),
        ({"light": 0.5}, Why.SHARP_AND_LIT),
        ({"acuity": -3.0}, Why.SHARP_AND_LIT),
        ({"lost": 2.0, "blunter": 0.5}, Why.SHARP_AND_LIT),
        ({"covered": True}, Why.BEFORE_COVERED),
        ({"away": 0.2}, Why.BEFORE_TURN),
    ],
)
def test_a_fault_in_the_last_second_is_avoided(fault: dict[str, float], why: Why) -> None:
    """All else equal, the second before it is taken, and the reason says why not the last."""
    chosen = choose(_window(**{name: {9: bad} for name, bad in fault.items()}), SPAN)
    assert int(chosen.time) == 18
    assert chosen.reason.why is why
    assert chosen.weak == ()


def test_among_pictures_that_are_all_alike_the_last_calm_stretch_is_taken() -> None:
    chosen = choose(_window(), SPAN)
    assert int(chosen.time) == 19
    assert chosen.reason == Reason(Why.CALM, Fraction(1))


def test_the_sharpest_of_the_last_calm_stretch_is_taken() -> None:
    measures = _window()
    measures[95] = replace(measures[95], sharpness=9.0)
    measures[20] = replace(measures[20], sharpness=12.0)
    chosen = choose(measures, SPAN)
    assert chosen.time == Fraction(195, 10)
    assert chosen.reason.sharper == 98


def test_the_edges_of_a_calm_stretch_are_left_alone() -> None:
    """A hand is still on its way there; the sharper picture at the edge is not worth it."""
    measures = _window()
    measures[90] = replace(measures[90], sharpness=9.0)
    measures[99] = replace(measures[99], sharpness=9.0)
    assert Fraction(191, 10) < choose(measures, SPAN).time < Fraction(199, 10)


@pytest.mark.parametrize(("sharpness", "acuity", "weak"), [(6.0, -1.9, ("blurred",)), (6.0, -1.0, ()), (8.0, -1.9, ())])
def test_little_detail_is_blur_only_when_it_is_blunt_too(
    sharpness: float, acuity: float, weak: tuple[str, ...]
) -> None:
    """A plain part has little detail, and its edges are crisp."""
    every = {"sharpness": dict.fromkeys(range(10), sharpness), "acuity": dict.fromkeys(range(10), acuity)}
    assert choose(_window(**every), SPAN).weak == weak


def test_lost_detail_alone_is_no_blur() -> None:
    """A hand that goes takes its edges with it, and what is left is as crisp as before."""
    assert _second(_window(lost={9: 2.0})) == 9


def test_a_picture_in_motion_is_taken_only_when_there_is_no_calm_one() -> None:
    assert _second(_window(calm={9: 0})) == 8
    moving = choose(_window(calm=dict.fromkeys(range(10), 0)), SPAN)
    assert moving.weak == (Weakness.IN_MOTION,)
    assert moving.reason == Reason(Why.BEST_THERE_IS, Fraction(0))


@pytest.mark.parametrize(
    ("fault", "weak"),
    [
        ({"brightness": 20.0}, ("dark",)),
        ({"white": 0.6}, ("burnt-out",)),
        ({"acuity": -3.0}, ("blurred",)),
        ({"covered": True}, ("covered",)),
        ({"brightness": 20.0, "acuity": -3.0}, ("dark", "blurred")),
    ],
)
def test_a_fault_that_all_pictures_share_is_told(fault: dict[str, float], weak: tuple[str, ...]) -> None:
    chosen = choose(_window(**{name: dict.fromkeys(range(10), bad) for name, bad in fault.items()}), SPAN)
    assert chosen.weak == weak
    assert chosen.reason == Reason(Why.BEST_THERE_IS, Fraction(1))


def test_a_good_picture_long_before_the_end_does_not_show_how_the_step_ends() -> None:
    """The last seconds are all covered: better the covered end than the bare beginning."""
    chosen = choose(_window(covered=dict.fromkeys(range(5, 10), True)), SPAN)
    assert int(chosen.time) == 19
    assert chosen.weak == ("covered",)


def test_as_found_is_the_first_calm_moment() -> None:
    chosen = choose(_window(covered={0: True}), SPAN, first=True)
    assert int(chosen.time) == 11
    assert chosen.reason == Reason(Why.CALM, Fraction(-1))


def test_a_single_picture_is_the_choice_whatever_it_is_like() -> None:
    chosen = choose([replace(GOOD, time=Fraction(199, 10), calm=0, alone=True)], SPAN)
    assert (chosen.recording, chosen.time, chosen.weak) == ("strip", Fraction(199, 10), ())
    assert chosen.reason == Reason(Why.MOTION_UNKNOWN, Fraction(0))


def test_without_pictures_the_middle_is_taken_and_told() -> None:
    chosen = choose([], SPAN)
    assert chosen.time == 15
    assert chosen.reason == Reason(Why.UNMEASURED)


def test_the_choice_never_leaves_the_span() -> None:
    outside = [replace(GOOD, time=Fraction(t), sharpness=20.0, calm=20) for t in (5, 20, 25)]
    assert int(choose([outside[0], *_window(), *outside[1:]], SPAN).time) == 19
    assert choose(outside, SPAN).time == 15


def test_candidates_differ_and_hold_the_choice() -> None:
    chosen = choose(_window(covered={9: True}), SPAN)
    times = [candidate.time for candidate in chosen.candidates]
    assert len(times) == MOST_CANDIDATES
    assert chosen.time in times
    assert times == sorted(times)
    assert all(later - earlier >= 1 for earlier, later in itertools.pairwise(times))
    assert {(each.why, each.weak) for each in chosen.candidates} >= {
        (Why.CALM, ()), (Why.BEST_THERE_IS, (Weakness.EARLY,)),
    }  # fmt: skip
