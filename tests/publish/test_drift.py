"""Page, PDF and data say the same: no fact stands in one of them alone."""

import json
from collections.abc import Iterator
from typing import Any

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Basis
from procbuilder.publish import timewords
from procbuilder.publish.data import edition_json
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.speaker import spoken
from procbuilder.publish.spoken import SpokenStep
from procbuilder.publish.teller import Teller
from procbuilder.publish.terms import other_unit
from tests.publish.blocks import views
from tests.publish.sheet import solid


def _strings(value: Any) -> Iterator[str]:
    """Every text of the data, however deep."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        yield from (text for inner in value.values() for text in _strings(inner))
    elif isinstance(value, list):
        yield from (text for inner in value for text in _strings(inner))


@pytest.fixture(scope="module")
def told(edition: Edition, text: str) -> dict[str, str]:
    """What each output says, without spaces."""
    page = " ".join(block for blocks in views(edition).values() for block in blocks)
    data = "\n".join(_strings(json.loads(edition_json(edition))))
    return {"page": solid(page), "PDF": solid(text), "data": solid(data)}


def _lost(told: dict[str, str], facts: Iterator[str]) -> list[tuple[str, str]]:
    """Each fact that an output lacks, with the output."""
    known = [fact for fact in facts if fact]
    assert known
    return [(name, fact) for name, words in told.items() for fact in known if solid(fact) not in words]


def _read(told: dict[str, str]) -> dict[str, str]:
    """What is read by people: data hold no sentence."""
    return {name: words for name, words in told.items() if name != "data"}


def test_titles_and_commands_stand_in_all_three(edition: Edition, told: dict[str, str]) -> None:
    titles = [edition.title, *(section.title for section in edition.sections)]
    assert _lost(told, iter([*titles, *(step.command for step in edition.steps)])) == []


def test_every_part_of_every_hazard_stands_in_all_three(edition: Edition, told: dict[str, str]) -> None:
    hazards = [*edition.hazards, *(hazard for step in edition.steps for hazard in step.hazards)]
    parts = (part for each in hazards for part in (each.hazard, each.consequence, each.avoid, each.state))
    assert _lost(told, parts) == []


def test_signs_of_dangers_stand_in_all_three_with_their_meaning(edition: Edition, told: dict[str, str]) -> None:
    steps = spoken(edition).steps
    signs = [str(sign) for step in steps for hazard in step.hazards for sign in hazard.signs]
    assert signs == ["W019 Crushing", "P024 Do not walk or stand here"]
    assert _lost(_read(told), iter(signs)) == []
    assert _lost(told, (sign.partition(" ")[0] for sign in signs)) == []


def test_torques_stand_in_all_three(edition: Edition, told: dict[str, str]) -> None:
    rows = edition.torques
    facts = (each for row in rows for each in (row.item.words, row.value.text, row.look_in, row.order, row.when))
    assert _lost(told, facts) == []
    assert _lost(_read(told), (Teller(ENGLISH).stage(row) for row in rows)) == []
    assert _lost(_read(told), (other_unit(row.also, ENGLISH) for row in rows)) == []


def test_trays_stand_in_all_three(edition: Edition, told: dict[str, str]) -> None:
    facts = (fact for line in edition.trays for fact in (line.tray, line.contents.name, line.holds))
    assert _lost(told, facts) == []
    assert _lost(_read(told), (line.contents.words for line in edition.trays)) == []


def test_what_is_shown_before_and_after_stands_in_all_three(edition: Edition, told: dict[str, str]) -> None:
    assert len(edition.pairs) == 2
    assert _lost(told, (pair.item for pair in edition.pairs)) == []
    shown = [f"step {number}" for pair in edition.pairs for number in (pair.off, pair.on)]
    assert _lost(_read(told), iter(shown)) == []


def _counted(step: SpokenStep) -> Iterator[str]:
    """Whatever of a step tells how many or how much: things with their number, quantity or size."""
    lines = (line.text for line in (*step.tools, *step.supplies, *step.parts))
    moves = (part for named in (*step.moves, *step.checks) for part in (named.text, *named.extra))
    yield from (words for words in (*lines, *moves) if any(sign.isdigit() for sign in words))


def test_counts_stand_on_page_and_paper(edition: Edition, told: dict[str, str]) -> None:
    said = spoken(edition)
    items = [*said.tools, *said.supplies, *said.parts]
    counted = [words for step in said.steps if not step.reserved for words in _counted(step)]
    assert "2 x axle stand" in counted
    assert _lost(_read(told), iter([*(item.quantity for item in items), *counted])) == []


def test_the_estimate_is_said_in_the_same_words_on_page_and_paper(edition: Edition, told: dict[str, str]) -> None:
    said = timewords.sentences(edition.estimate)
    assert said[0].startswith("Hands-on ")
    assert _lost(_read(told), iter(said)) == []


def test_spans_of_footage_stand_on_page_and_paper(edition: Edition, told: dict[str, str]) -> None:
    spans = [str(span) for step in edition.steps for span in step.spans]
    assert spans == ["strip 0:00-0:20", "strip 0:42-1:15"]
    assert _lost(_read(told), iter(spans)) == []


def test_minutes_of_each_step_are_printed_as_in_the_data(edition: Edition, text: str) -> None:
    """The row of each step: its command, and behind it the minutes made of the numbers of the data."""
    rows = json.loads(edition_json(edition))["estimate"]["steps"]
    data = [(row["low"], row["likely"], row["high"]) for row in rows if row["basis"] == "typed"]
    assert data == [(5, 6, 9), (3, 4, 8), (4, 5, 7), (6, 8, 12)]
    page = " ".join(block for blocks in views(edition).values() for block in blocks)
    commands = [step.command for step in edition.steps if step.basis is Basis.TYPED]
    said = [f"{low}–{high}, likely {likely}" for low, likely, high in data]
    facts = [f"{command} {minutes}" for command, minutes in zip(commands, said, strict=True)]
    assert _lost({"page": solid(page), "PDF": solid(text)}, iter(facts)) == []


def test_the_three_say_of_how_many_steps_a_procedure_is(edition: Edition, told: dict[str, str]) -> None:
    data = json.loads(edition_json(edition))
    assert sum(len(section["steps"]) for section in data["sections"]) == len(edition.steps) == 11
    assert _lost(_read(told), (f"Step {number} of 11" for number in range(1, 12))) == []
