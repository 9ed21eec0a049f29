"""Typed steps that a narration fills: commands and order stay, and every sentence is accounted for."""

from fractions import Fraction

from procbuilder.infer.hearing.draft import draft
from procbuilder.infer.hearing.filled import ELSEWHERE, filled
from procbuilder.model.drafted import Draft, ProposedStep
from procbuilder.model.timecode import Span
from tests.infer.spoken import narrated

SAID = (
    "Hello and welcome.",
    "Take off the wheel nuts, there are four of them.",
    "Careful, the edge is sharp.",
    "Take off the drum with the puller.",
    "Tighten the wheel nuts to ninety newton metres.",
)


def typed(*steps: tuple[str, int, int], recording: str = "strip") -> list[ProposedStep]:
    return [ProposedStep(text, Span(recording, Fraction(start), Fraction(end)), ()) for text, start, end in steps]


def fill(*steps: tuple[str, int, int], recording: str = "strip") -> Draft:
    return filled(typed(*steps, recording=recording), draft([narrated(*SAID)]))


STEPS = (("Nuts off", 2, 6), ("Pull the drum", 6, 8), ("Nuts on", 8, 10))


def test_commands_and_order_stay_as_typed() -> None:
    assert [(step.command, step.span) for step in fill(*STEPS).steps] == [
        (text, Span("strip", Fraction(start), Fraction(end))) for text, start, end in STEPS
    ]


def test_each_field_stands_in_the_step_in_which_it_was_said() -> None:
    told = [[f"{one.name}: {' | '.join(one.parts)}" for one in step.fields] for step in fill(*STEPS).steps]
    off, drum, on = ([text for text in fields if not text.startswith("Note: ")] for fields in told)
    assert off == ["Off: 4 x wheel nut", "Caution: Careful, the edge is sharp"]
    assert drum == ["Off: drum"]
    assert on == ["On: 4 x wheel nut", "Torque: wheel nut | look up | heard: 90 N·m"]


def test_every_sentence_is_accounted_for() -> None:
    landings = fill(*STEPS).landings
    assert [one.sentence.words for one in landings] == list(SAID)
    assert [(one.step, one.aside) for one in landings] == [(0, True), (1, False), (1, False), (2, False), (3, False)]


def test_what_was_said_before_the_first_and_behind_the_last_typed_step_is_kept() -> None:
    landings = fill(("Pull the drum", 6, 7)).landings
    assert [one.step for one in landings] == [0, 1, 1, 1, 1]


def test_a_recording_that_no_typed_step_shows_is_set_aside_with_the_reason() -> None:
    made = fill(*STEPS, recording="refit")
    assert [step.fields for step in made.steps] == [(), (), ()]
    assert {one.how for one in made.landings if one.aside} >= {ELSEWHERE}
    assert all(one.aside for one in made.landings)
