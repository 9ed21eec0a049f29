"""What the program makes of things that every workshop knows and says. All are common practice, in words of our own."""

from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.infer.dictionary.sizes import sizes
from procbuilder.infer.dictionary.wordbook import wordbook
from procbuilder.infer.hearing.draft import draft
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.times import estimate
from procbuilder.model.ledger import Balance
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration
from procbuilder.model.workshop import Condition, Workshop
from tests.check.sample import changed, said
from tests.infer.written import written

WORDS = load()


def told(words: str) -> list[tuple[str, list[tuple[str, ...]]]]:
    """The steps that a narration gives, with their fields; the list before the steps stands first."""
    cues = (Cue(Place("strip.srt", 1), Fraction(0), Fraction(20), words),)
    made = draft([Narration("strip", cues)])
    lists = [("", made.before), *((step.command, step.fields) for step in made.steps)]
    return [
        (command, [(field.name, *field.parts) for field in fields if not _is_receipt(field.parts)])
        for command, fields in lists
    ]


def _is_receipt(parts: tuple[str, ...]) -> bool:
    return parts[0].startswith("proposed from")


def test_a_10_mm_spanner_on_m6_and_13_mm_on_m8_is_nothing_to_ask() -> None:
    assert [size.text for size in sizes("A ten mil spanner on the M6, a thirteen on the M8.", wordbook())] == [
        "10 mm",
        "13 mm",
    ]
    off = "- Off: washer | by: 2 x M6 bolt, 10 mm; 2 x M8 bolt, 13 mm"
    assert said(changed(("- Off: washer", off))) == []


def test_the_two_spanners_taken_for_each_other_are_asked_about() -> None:
    off = "- Off: washer | by: 2 x M6 bolt, 13 mm; 2 x M8 bolt, 10 mm"
    assert [line.split(" – ")[0].partition(": ")[2] for line in said(changed(("- Off: washer", off)))] == [
        '"M6 bolt, 13 mm": a 13 mm spanner fits no usual head of an M6 thread: usual are 10 mm'
    ]


def test_a_parking_brake_that_holds_after_about_three_clicks_keeps_its_measure() -> None:
    assert told("Set the handbrake so that it holds after about three clicks.") == [
        ("", []),
        (
            "Apply the handbrake",
            [
                ("State", "handbrake on"),
                ("Key point", "Set the handbrake", "so that it holds after about three clicks"),
            ],
        ),
    ]


def test_rusted_nuts_near_the_heat_are_a_caution_and_a_sheared_one_is_a_case() -> None:
    words = "Undo the two nuts of the exhaust. Careful, near the heat they are rusted and often shear off. "
    (_, before), (command, fields) = told(words + "If a nut shears, drill it out and fit a new stud.")
    assert (before, command) == ([], "Undo 2 nuts")
    assert fields == [
        ("Off", "2 x nut"),
        ("Caution", "Careful, near the heat they are rusted and often shear off"),
        ("If", "a nut shears", "Drill it out and fit a new stud"),
    ]


CLIPS = """
## Work
### Take off the retaining clips
- Off: 2 x retaining clip
### Lever out the seal
- Off: shaft seal
### Press in the new seal
- On: shaft seal, new
### Put the same clips back
- On: 2 x retaining clip
"""


def test_clips_are_used_again_while_the_seal_is_renewed() -> None:
    found = ledger(written(CLIPS), WORDS).entries
    assert [(entry.item, entry.balance, entry.renewed) for entry in found] == [
        ("retaining clip", Balance.CLOSED, False),
        ("shaft seal", Balance.CLOSED, True),
    ]


def test_the_same_is_heard_in_a_narration() -> None:
    words = "Take off the two retaining clips and pull the seal out. Put a new seal in and clip the retaining clips on."
    assert [fields for _, fields in told(words)][1:] == [
        [("Off", "2 x retaining clip")],
        [("Off", "seal")],
        [("On", "seal, new")],
        [("On", "2 x retaining clip")],
    ]


def test_a_second_person_for_a_long_heavy_part_is_asked_for_and_the_caution_kept() -> None:
    words = (
        "Get a second person to hold the far end of the drive shaft, it is long and heavy. Lift the drive shaft off."
    )
    said = "Get a second person to hold the far end of the drive shaft, it is long and heavy"
    assert told(words)[1:] == [
        ("Hold the far end of the drive shaft", [("People", "2", f"helper: {said}"), ("Caution", said)]),
        ("Remove the drive shaft", [("Off", "drive shaft")]),
    ]


def test_every_bolt_is_started_before_any_is_tightened() -> None:
    words = "Start all four bolts by hand before you tighten any of them, so that none cross-threads. "
    assert told(words + "Now tighten the four bolts.")[1:] == [
        (
            "Hand-start 4 bolts",
            [
                ("On", "4 x bolt"),
                (
                    "Key point",
                    "Start all four bolts by hand before you tighten any of them",
                    "so that none cross-threads",
                ),
            ],
        ),
        ("Tighten 4 bolts", [("Torque", "bolts", "look up")]),
    ]


def test_two_hours_on_a_lift_and_longer_on_the_floor() -> None:
    head = "---\nformat: 1\nplace: on a lift\nstated time: 2 h\n---\n# Exhaust from below\n\n"
    procedure = written("## Work\n### Take the exhaust off\n- Time: 120\n", head=head)
    floor = Condition("on the floor, on stands", Decimal("1.5"), "on a lift", "own job cards")
    found = estimate(procedure, (), Workshop(conditions=(floor,)))
    assert found.likely == 2
    assert [(place.name, place.likely) for place in found.elsewhere] == [("on the floor, on stands", 3)]


def test_the_time_that_is_said_is_kept_and_never_taken_for_minutes_of_a_step() -> None:
    assert told("The whole job takes about two hours on a lift, and longer on the floor.") == [
        ("", [("Note", "time said: The whole job takes about two hours on a lift, and longer on the floor.")])
    ]


@pytest.mark.parametrize("word", ["worn", "perished"])
def test_a_worn_part_is_a_finding_and_the_owner_is_asked_first(word: str) -> None:
    words = f"Take the wheel off. Look at these pads, they are {word}. The owner has to say yes before we renew them."
    assert told(words)[1:] == [
        (
            "Remove the wheel",
            [
                ("Off", "wheel"),
                ("Finding", f"Look at these pads, they are {word}", "watch"),
                ("Key point", "The owner has to say yes before we renew them"),
            ],
        )
    ]
