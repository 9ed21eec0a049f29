"""The minutes of each step as a table with bars."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Basis, Estimate, Evidence, StepTime
from procbuilder.model.footage import FootageSplit
from procbuilder.publish.html import page
from procbuilder.publish.timebars import Bar, bars
from tests.publish.blocks import TEMPLATES

SPLIT = FootageSplit(hands_on=Fraction(120), talk=Fraction(31), still=Fraction(9))


def test_a_bar_reaches_from_low_to_high_in_percent_of_the_longest(edition: Edition) -> None:
    found = {bar.id: bar for bar in bars(edition)}
    assert found["drive"] == Bar(
        11, "drive", found["drive"].command, "6–12, likely 8", "time typed", 50.0, 66.7, 100.0, False
    )
    assert (found["raise"].start, found["raise"].likely, found["raise"].end) == (41.7, 50.0, 75.0)


def test_what_is_not_sure_looks_so(edition: Edition) -> None:
    found = {bar.id: bar for bar in bars(edition)}
    film, unknown = found["chock"], found["clean"]
    assert (film.minutes, film.source) == ("1", "footage only: a lower bound if the film has cuts")
    assert (film.start, film.end, film.unsure) == (0.0, 8.3, True)
    assert (unknown.minutes, unknown.source, unknown.end, unknown.unsure) == ("not known", "no time known", 0.0, True)
    text = page(edition, templates=TEMPLATES)
    assert text.count('<svg class="time-bar unsure-bar"') == 7
    assert text.count('<svg class="time-bar"') == 4


@pytest.mark.parametrize(
    ("basis", "count", "source"),
    [
        (Basis.LOG, 4, "4 logged runs; besides: typed 5 min; besides: film 2 min; 2 people; "
         "only if it sticks: not in the total"),
        (Basis.LOG, 1, "1 logged run; besides: typed 5 min; besides: film 2 min; 2 people; "
         "only if it sticks: not in the total"),
        (Basis.CUT, 2, "film with cuts – lower bound; besides: typed 5 min; besides: film 2 min; 2 people; "
         "only if it sticks: not in the total"),
    ],
)  # fmt: skip
def test_all_evidence_is_told_the_best_first(edition: Edition, basis: Basis, count: int, source: str) -> None:
    one, five, two = Decimal(1), Decimal(5), Decimal(2)
    evidence = (
        Evidence(basis, one, two, five, count), Evidence(Basis.TYPED, five, five, five),
        Evidence(Basis.FOOTAGE, two, two, two),
    )  # fmt: skip
    time = StepTime("chock", basis, one, two, five, Fraction(0), extra=True, people=2, evidence=evidence)
    (section, *others) = edition.sections[1:]
    first = replace(section, steps=(replace(section.steps[0], only_if="it sticks"), *section.steps[1:]))
    changed = replace(edition, sections=(edition.sections[0], first, *others), estimate=Estimate((time,)))
    (bar,) = bars(changed)
    assert bar.source == source


def test_a_lower_bound_is_called_so(edition: Edition) -> None:
    two = Decimal(2)
    time = StepTime("chock", Basis.CUT, two, two, two, Fraction(120))
    (bar,) = bars(replace(edition, estimate=Estimate((time,))))
    assert bar.minutes == "at least 2"


@pytest.mark.parametrize(
    ("basis", "split", "source"),
    [
        (Basis.FOOTAGE, SPLIT,
         "film in which no cut was found; apart from it 31 s talk and 9 s nothing moving on film"),
        (Basis.CUT, replace(SPLIT, talk=Fraction(0)),
         "film with cuts – lower bound; apart from it 9 s nothing moving on film"),
        (Basis.FOOTAGE, replace(SPLIT, talk=Fraction(0), still=Fraction(0)), "film in which no cut was found"),
    ],
)  # fmt: skip
def test_talk_and_stillness_stand_apart(edition: Edition, basis: Basis, split: FootageSplit, source: str) -> None:
    two = Decimal(2)
    time = StepTime("chock", basis, two, two, two, Fraction(160), split, evidence=(Evidence(basis, two, two, two),))
    (bar,) = bars(replace(edition, estimate=Estimate((time,))))
    assert bar.source == source


def test_film_at_another_speed_is_told_beside_the_typed_time(edition: Edition) -> None:
    two = Decimal(2)
    split = replace(SPLIT, speed=Fraction(8))
    typed = Evidence(Basis.TYPED, two, two, two)
    time = StepTime("chock", Basis.TYPED, two, two, two, Fraction(160), split, evidence=(typed,))
    (bar,) = bars(replace(edition, estimate=Estimate((time,))))
    assert bar.source == "time typed; the film does not run at the speed of the work, and tells no time"


def test_page_draws_each_bar_beside_its_row(edition: Edition) -> None:
    text = page(edition, templates=TEMPLATES)
    assert '<rect x="50.0" y="2" width="50.0" height="6"/><path d="M66.7 0V10"/>' in text
