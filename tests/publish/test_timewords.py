"""How an estimate is told."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.model.estimate import Basis, Elsewhere, Estimate, Extra, OddTime, Practice, StepTime
from procbuilder.model.footage import FootageSplit
from procbuilder.model.origin import Place
from procbuilder.publish.timewords import headline, sentences


def step(name: str, basis: Basis, people: int = 1) -> StepTime:
    return StepTime(name, basis, Decimal(1), Decimal(2), Decimal(3), Fraction(0), people=people)


def tenths(*numbers: str) -> tuple[Decimal, Decimal, Decimal, Decimal]:
    factor, low, likely, high = map(Decimal, numbers)
    return factor, low, likely, high


WHOLE = Estimate(
    steps=(step("a", Basis.LOG), step("b", Basis.LOG), step("c", Basis.TYPED)),
    low=Decimal("1.6"), likely=Decimal("1.9"), high=Decimal("2.4"), waiting=Decimal(30),
    worst_low=Decimal("1.2"), worst_high=Decimal("3.1"), person_hours=Decimal("1.9"), elapsed=Decimal("2.4"),
    first=(Decimal("2.0"), Decimal("2.6")), practised=(Decimal("1.3"), Decimal("1.8")),
    rate=(Decimal("0.80"), Decimal("0.96")), films=1, practice=Practice(sittings=4, people=3, rows=8),
    place="on stands",    not_included=("road test", "alignment"),
    extras=(Extra("a stud breaks", "30"), Extra("it has seized", "")),
)  # fmt: skip


def test_headline_says_range_conditions_and_what_it_rests_on() -> None:
    assert headline(WHOLE) == (
        "Hands-on 1.6–2.4 h (likely 1.9; 1.2–3.1 if every step goes well, or badly), waiting 30 min, one person, "
        "on stands, third time or later; from 4 logged runs by three people (2 steps) and typed times (1 step); "
        "not included: road test, alignment; "
        "extras that need approval: a stud breaks +30 min, it has seized (time not known)."
    )


def test_two_people_overlapping_waiting_and_one_figure() -> None:
    figure = replace(
        WHOLE, steps=(step("a", Basis.TYPED, 2), step("b", Basis.TYPED)), low=Decimal("0.5"), likely=Decimal("0.5"),
        high=Decimal("0.5"), worst_low=Decimal("0.5"), worst_high=Decimal("0.5"), person_hours=Decimal("0.8"),
        overlapping=Decimal(10), not_included=(), extras=(), place="",
    )  # fmt: skip
    assert headline(figure) == (
        "Hands-on 0.5 h, waiting 30 min, waiting 10 min more (can overlap), two people at 1 step (0.8 person-hours), "
        "third time or later; from typed times (2 steps)."
    )
    assert "waiting 10 min (can overlap)" in headline(replace(figure, waiting=Decimal(0)))


def test_a_lower_bound_looks_like_one_and_the_stated_total_stands_beside_it() -> None:
    bound = replace(WHOLE, steps=(step("a", Basis.CUT), step("b", Basis.FOOTAGE), step("c", Basis.NOTHING)),
                    waiting=Decimal(0), stated="3 h", stated_hours=Decimal("3.0"), unaccounted=Decimal("0.6"),
                    not_included=(), extras=())  # fmt: skip
    assert sentences(bound) == (
        "Hands-on at least 1.9 h (a lower bound: not every step has a time of its own), "
        "3.0 h in all as the technician states, one person, on stands, third time or later; "
        "from 1 film (1 step; a lower bound if cut), film with cuts – lower bound (1 step) and no time known (1 step).",
        "The technician states 3.0 h; the steps account for at least 2.4 h from start to end: "
        "0.6 h is not accounted for.",
    )


def test_nothing_known_is_said() -> None:
    assert sentences(Estimate()) == ("Hands-on time is not known.",)


@pytest.mark.parametrize(
    ("stated", "hours", "gap", "sentence"),
    [
        ("3 h", "3.0", "0.6", "The technician states 3.0 h; the steps account for 2.4 h from start to end: "
         "0.6 h is not accounted for."),
        ("2 h", "2.0", "-0.4", "The technician states 2.0 h; the steps account for 2.4 h from start to end: "
         "0.4 h more than stated."),
        ("2.4 h", "2.4", "0.0", "The technician states 2.4 h; the steps account for 2.4 h from start to end: "
         "they agree."),
        ("about 2 h", None, None, "The technician states: about 2 h."),
    ],
)  # fmt: skip
def test_difference_to_the_stated_total(stated: str, hours: str | None, gap: str | None, sentence: str) -> None:
    known = (Decimal(hours) if hours else None, Decimal(gap) if gap else None)
    told = replace(WHOLE, stated=stated, stated_hours=known[0], unaccounted=known[1])
    assert sentences(told)[1] == sentence


def test_first_and_tenth_time_say_whether_the_rate_is_assumed() -> None:
    assert sentences(WHOLE)[1:] == (
        "First time 2.0–2.6 h, tenth time 1.3–1.8 h, if each doubling of the number of times leaves 80 to 96 % of the "
        "time, which is assumed: the log shows nobody twice.",
        "A first run under supervision takes that time of the apprentice, and up to as much of the supervisor: "
        "up to 5.2 person-hours.",
    )
    logged = replace(WHOLE, practice=replace(WHOLE.practice, repeated=True))
    assert "leaves 80 to 96 % of the time, as the log says." in sentences(logged)[1]


def test_conditions_odd_rows_and_unused_rows_are_told() -> None:
    odd = OddTime(Place("times.csv", 12), "pin-out", Decimal(60), Decimal("4.1"), Decimal("9.0"))
    told = replace(
        WHOLE,
        elsewhere=(Elsewhere("on a lift", *tenths("0.8", "1.3", "1.6", "2.0"), "38 own job cards"),),
        practice=Practice(4, 3, 8, unused=1, odd=(odd,)),
    )
    assert sentences(told)[3:] == (
        "On a lift: 1.3–2.0 h, likely 1.6 (× 0.80, from 38 own job cards).",
        "times.csv:12: pin-out 60 min, where 4.1–9.0 min were expected; it is kept, but counts little.",
        "1 logged row of steps that the procedure does not have, not used.",
    )


def filmed(name: str, basis: Basis, split: FootageSplit | None) -> StepTime:
    minutes = Decimal(2)
    return StepTime(name, basis, minutes, minutes, minutes, Fraction(300), split)


SPLIT = FootageSplit(hands_on=Fraction(125), talk=Fraction(61, 2), still=Fraction(9))


def test_film_in_which_no_cut_was_found_says_so() -> None:
    """Without a scan it is a lower bound if cut."""
    one, other = filmed("a", Basis.FOOTAGE, SPLIT), filmed("b", Basis.FOOTAGE, None)
    assert "from 1 film (1 step; no cut found)" in headline(replace(WHOLE, steps=(one,)))
    assert "from 1 film (2 steps; a lower bound if cut)" in headline(replace(WHOLE, steps=(one, other)))


def test_film_with_cuts_is_a_lower_bound_in_words() -> None:
    steps = (filmed("a", Basis.CUT, replace(SPLIT, cuts=2)),)
    assert "; from film with cuts – lower bound (1 step)" in headline(replace(WHOLE, steps=steps))


def test_talk_and_stillness_are_told_apart_from_work() -> None:
    """125 s twice are 4:10; 30.5 s twice are 1:01; and one of the films has cuts."""
    steps = (filmed("a", Basis.LOG, SPLIT), filmed("b", Basis.CUT, replace(SPLIT, cuts=1)))
    assert sentences(replace(WHOLE, steps=steps))[1] == (
        "Seen on film of 2 steps: 4:10 hands-on at least, for 1 step has cuts; "
        "apart from it 1:01 of talk and 0:18 in which nothing moves."
    )
    assert sentences(replace(WHOLE, steps=steps[:1]))[1] == (
        "Seen on film of 1 step: 2:05 hands-on; apart from it 0:30 of talk and 0:09 in which nothing moves."
    )


def test_film_at_another_speed_tells_no_time() -> None:
    steps = (filmed("a", Basis.TYPED, replace(SPLIT, speed=Fraction(8))),)
    assert sentences(replace(WHOLE, steps=steps))[1] == (
        "The film of 1 step does not run at the speed of the work, and tells no time."
    )
