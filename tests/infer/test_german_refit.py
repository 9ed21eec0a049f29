"""German commands: what they take off by their words alone, and the refit steps that are proposed for it."""

import pytest

from procbuilder.infer.by_words import taken_off_by_words
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.refit import derive
from procbuilder.infer.spoils import single_use, why_spoilt
from procbuilder.infer.trays import trays
from procbuilder.model.ledger import Balance
from tests.infer.written import written

WORDS = load("de")
HEAD = "---\nformat: 1\nlanguage: de-DE\n---\n# Probe\n\n"


def derived(text: str) -> list[str]:
    procedure = written(text, head=HEAD)
    steps = derive(procedure, ledger(procedure, WORDS), WORDS)
    return [" / ".join([step.command, *(f"{name}: {value}" for name, value in step.fields)]) for step in steps]


def taken(*commands: str) -> list[str]:
    headings = "\n".join(f"### {command}\n" for command in commands)
    return [one.item for one in taken_off_by_words(written(f"## A\n{headings}", head=HEAD))]


@pytest.mark.parametrize(
    ("step", "expected"),
    [
        ("Stecker vom Sensor abstecken {#a}\n- Off: Sensorstecker",
         "Sensorstecker anstecken / Derived: #a / On: Sensorstecker"),
        ("Hebel die Staubkappe ab {#a}\n- Off: Staubkappe", "Staubkappe aufdrücken / Derived: #a / On: Staubkappe"),
        ("Halter abschrauben {#a}\n- Off: Halter | by: 2 x Schraube M8, 13 mm",
         "Halter anschrauben / Derived: #a / On: Halter | by: 2 x Schraube M8, 13 mm / Torque: Schraube M8 | look up"),
        ("Anhänger anheben {#a}\n- State: Anhänger angehoben",
         "Anhänger ablassen / Derived: #a / Ends: Anhänger angehoben"),
        ("Öl ablassen {#a}\n- State: Motoröl abgelassen",
         "Motoröl auffüllen / Derived: #a / Ends: Motoröl abgelassen / Supply: Motoröl"),
        ("Klemmschraube lösen {#a}\n- Slacken: Klemmschraube",
         "Klemmschraube festziehen / Derived: #a / Torque: Klemmschraube | look up"),
        ("Etwas Seltsames tun {#a}\n- Off: Schutzblech", "Schutzblech einbauen / Derived: #a / On: Schutzblech"),
    ],
)  # fmt: skip
def test_a_step_is_turned_round_with_the_opposite_verb(step: str, expected: str) -> None:
    (line,) = derived(f"## Ausbau\n### {step}\n")
    assert line[0].upper() + line[1:] == expected


@pytest.mark.parametrize(
    ("step", "asks"),
    [
        ("Buchse auspressen {#a}\n- Off: Lenkerbuchse", "eingepresst oder eingetrieben"),
        ("Bremsschlauch abschrauben {#a}\n- Off: Bremsschlauch", "offen zu Flüssigkeit unter Druck"),
        ("Zahnriemen abnehmen {#a}\n- Off: Zahnriemen", "auf Steuerzeiten eingestellt"),
        ("Kronenmutter lösen {#a}\n- Slacken: Kronenmutter", "vorgespannt oder eingestellt"),
        ("Dichtung abziehen {#a}\n- Off: Ölwannendichtung", "nur einmal zu verwenden"),
    ],
)
def test_pressed_bled_timed_and_preloaded_work_is_only_asked_about(step: str, asks: str) -> None:
    (line,) = derived(f"## Ausbau\n### {step}\n")
    assert line.startswith("Einbau festlegen: ")
    assert f"Note: festzulegen: {asks}" in line


@pytest.mark.parametrize(
    ("commands", "left"),
    [
        (("Deckel, Kette und Schwert abnehmen", "Kette auflegen", "Schwert montieren"), ["Deckel"]),
        (("Nimm den Keilriemen ab", "Leg den Riemen wieder auf"), []),
        (("Kupplungsdeckel abschrauben", "Deckel anschrauben"), []),
        (("Mit dem Kettenzug den Zylinder herausheben",), ["Zylinder"]),
        (("Zieh beide Schläuche von der Pumpe ab", "Rad ansetzen"), ["Schläuche"]),
        (("Dichtreste abschaben und Altöl entfernen",), []),
        (("Schrauben der Glocke herausdrehen", "Schraube ansetzen"), []),
        (("Handbremse ziehen", "Rückstände entfernen", "Schutzfolie abziehen"), []),
        (("Sitz ausbauen und auf die Werkbank legen",), ["Sitz"]),
    ],
)
def test_what_comes_off_by_words_alone_must_be_named_again(commands: tuple[str, ...], left: list[str]) -> None:
    assert taken(*commands) == left


@pytest.mark.parametrize(
    "name", ["Sicherungssplint", "Kupferringe", "Zylinderkopfschraube M10", "O-Ring", "selbstsichernde Mutter"]
)
def test_parts_that_are_used_once(name: str) -> None:
    assert single_use(name, WORDS)


@pytest.mark.parametrize("name", ["Dichtungsfeder", "Kopfstütze", "Ringschlüssel", "Mutter"])
def test_parts_that_are_used_again(name: str) -> None:
    assert single_use(name, WORDS) is None


def test_what_is_cut_is_spoilt() -> None:
    assert why_spoilt("Gummimanschette", "Schneid die Manschette auf", WORDS)
    assert not why_spoilt("Gummimanschette", "Zieh die Manschette ab", WORDS)


def test_the_rest_in_reverse_order_is_only_assumed() -> None:
    text = "## A\n### Deckel abnehmen\n- Off: Deckel\n### Zusammenbau in umgekehrter Reihenfolge\n"
    (entry,) = ledger(written(text, head=HEAD), WORDS).entries
    assert entry.balance is Balance.ASSUMED
    text = text.replace("Zusammenbau in umgekehrter Reihenfolge", "Schrauben in umgekehrter Reihenfolge lösen")
    (entry,) = ledger(written(text, head=HEAD), WORDS).entries
    assert entry.balance is Balance.OPEN


def test_small_things_go_into_a_tray() -> None:
    text = "## A\n### Rad abnehmen\n- Off: 4 x Radmutter\n- Off: Rad\n- Off: Sicherungsring\n"
    lines = trays(ledger(written(text, head=HEAD), WORDS), WORDS)
    assert [line.contents.words for line in lines] == ["4 x Radmutter", "Sicherungsring"]
