"""A German procedure with faults: what is wrong is told in German, with its own words as they are written."""

import pytest

from procbuilder.model.problem import Problem
from procbuilder.publish.language import language_of
from procbuilder.publish.wording.problems import Said, said
from tests.check.sample import found

GERMAN = language_of("de-DE")
TEXT = """\
---
format: 1
number: P-014
revision: B
author: RB
language: de-DE
---
# Anhängernabe – Lager erneuern

## Vorbereitung

- Condition: fester Boden
- Tool: Radkreuz
- Supply: none
- Part: none
- Wear: Handschuhe
- Dangers confirmed: RB | 2026-03-02

## Abbau

### Lichtmaschine ausbauen {#generator}

- Off: Lichtmaschine
- Off: Kabel
- Tool: Ständerbohrmaschine

### Deckel abnehmen, wenn er stört {#deckel}

- Torque: Radmutter | fest

### Probe fahren {#probe}

- Check: fahren | kein Geräusch
"""


@pytest.fixture(scope="module")
def told() -> dict[str, Said]:
    """By rule and subject."""
    return {_key(problem): said(problem, GERMAN) for problem in found(TEXT, durations={})}


def _key(problem: Problem) -> str:
    return problem.question or f"{problem.rule} {dict(problem.facts)['item']}"


def test_what_comes_off_and_stays_off(told: dict[str, Said]) -> None:
    assert str(told["unbalanced-ledger Kabel"]) == (
        "Kabel kommt in Schritt 1 ab und nicht wieder dran – "
        'beim Wiedereinbau "- On: Kabel" ergänzen, oder "- Left open: Kabel | Grund | Name"'
    )


def test_what_turns_is_quoted_as_it_is_written(told: dict[str, Said]) -> None:
    assert told["gloves near rotation: #generator"].what == (
        'Handschuhe werden in Schritt 1 getragen, wo sich etwas dreht ("Ständerbohrmaschine")'
    )


def test_a_rule_of_order_names_the_thing_itself(told: dict[str, Said]) -> None:
    assert told["wrong order: Lichtmaschine: vorher die Batterie abklemmen"].what == (
        'Schritt 1, "Lichtmaschine ausbauen", kommt zu früh: Lichtmaschine: vorher die Batterie abklemmen; '
        "Grund: das Kabel steht unter Spannung und hat keine Sicherung"
    )


def test_a_noun_keeps_its_capital_behind_a_condition(told: dict[str, Said]) -> None:
    assert told["condition last: #deckel"].instead == 'voranstellen: "Wenn er stört: Deckel abnehmen"'


def test_a_torque_in_words(told: dict[str, Said]) -> None:
    assert told["torque-in-words Radmutter"].what == (
        'das Anzugsdrehmoment von Radmutter ist nur in Worten angegeben: "fest"'
    )
