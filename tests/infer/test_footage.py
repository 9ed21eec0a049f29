"""How the footage of a step is split, and what of it counts as minutes."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.infer.footage import Scanned, split
from procbuilder.infer.times import estimate
from procbuilder.model.estimate import Basis, Evidence
from procbuilder.model.footage import Cut, FootageSplit, Heard, Looked, PacketFacts
from procbuilder.model.stretch import Stretch
from tests.infer.written import written


def stretch(start: int, end: int) -> Stretch:
    return Stretch(Fraction(start), Fraction(end))


FILM = PacketFacts(key_spacing=Fraction(1), spacing=Fraction(1, 25))
PART = Scanned(
    stretch(10, 70),
    FILM,
    Looked(still=(stretch(0, 20), stretch(40, 60)), unlike=()),
    Heard(speech=(stretch(15, 30), stretch(40, 45)), noise=(stretch(50, 53),)),
    cuts=(),
)
"""A minute: still from 10 to 20, with 5 s of speech, and from 40 to 60, with 5 s of speech and 3 s of noise."""


def test_work_talk_and_stillness_are_kept_apart() -> None:
    """60 = 33 + 10 + 17: speech while something moves is work, and so is noise while nothing moves."""
    assert split([PART]) == FootageSplit(Fraction(33), Fraction(10), Fraction(17))


def test_without_sound_nobody_talks() -> None:
    assert split([replace(PART, heard=None)]) == FootageSplit(Fraction(30), Fraction(0), Fraction(30))


@pytest.mark.parametrize(("time", "cuts"), [(Fraction(40), 1), (Fraction(21, 2), 0), (Fraction(139, 2), 0)])
def test_a_cut_at_the_end_of_a_step_is_not_in_it(time: Fraction, cuts: int) -> None:
    """Times are typed in whole seconds."""
    assert split([replace(PART, cuts=(Cut(time),))]).cuts == cuts


def test_between_two_parts_something_is_left_out() -> None:
    both = split([PART, replace(PART, stretch=stretch(70, 80))])
    assert both == FootageSplit(Fraction(43), Fraction(10), Fraction(17), cuts=1)


@pytest.mark.parametrize(
    ("speed", "told"), [(None, 1), (Fraction(1), 1), (Fraction(8), 8), (Fraction(1, 4), Fraction(1, 4))]
)
def test_speed_is_that_of_the_part_that_is_off(speed: Fraction | None, told: Fraction) -> None:
    assert split([PART, replace(PART, film=replace(FILM, speed=speed))]).speed == told


TEXT = "## Work\n\n### strip 0:10-1:10 Take off the cap {#cap}\n\n### strip 1:10-1:30 Look at it {#look}\n"
SPLIT = FootageSplit(Fraction(33), Fraction(10), Fraction(17))


def test_hands_on_seconds_are_the_minutes_of_continuous_film() -> None:
    """33 s are 0.55 min; of the other step nothing is known but its length."""
    cap, look = estimate(written(TEXT), splits={"cap": SPLIT}).steps
    assert (cap.basis, cap.likely, cap.footage, cap.split) == (Basis.FOOTAGE, Decimal("0.55"), 60, SPLIT)
    assert (look.basis, look.likely, look.split) == (Basis.FOOTAGE, Decimal("0.33"), None)


def test_film_with_cuts_is_a_lower_bound() -> None:
    found = estimate(written(TEXT), splits={"cap": replace(SPLIT, cuts=2)})
    assert found.steps[0].evidence == (Evidence(Basis.CUT, Decimal("0.55"), Decimal("0.55"), Decimal("0.55")),)
    assert found.lower_bound


@pytest.mark.parametrize("other", [replace(SPLIT, speed=Fraction(8)), replace(SPLIT, hands_on=Fraction(0))])
def test_film_without_work_at_its_own_speed_gives_no_minutes(other: FootageSplit) -> None:
    (cap, _) = estimate(written(TEXT), splits={"cap": other}).steps
    assert (cap.basis, cap.likely, cap.evidence) == (Basis.NOTHING, 0, ())


def test_the_total_is_summed_from_exact_seconds() -> None:
    """350 s and 11 s are a second more than 0.1 h, which makes 0.2 h."""
    splits = {"cap": replace(SPLIT, hands_on=Fraction(350)), "look": replace(SPLIT, hands_on=Fraction(11))}
    assert estimate(written(TEXT), splits=splits).likely == Decimal("0.2")
