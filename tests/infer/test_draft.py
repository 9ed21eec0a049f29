"""A procedure proposed from a narration."""

from dataclasses import replace

import pytest

from procbuilder.infer.hearing.draft import draft
from procbuilder.model.drafted import Draft, ProposedStep
from tests.infer.spoken import narrated


def made(*lines: str) -> Draft:
    return draft([narrated(*lines)])


def fields(step: ProposedStep) -> list[str]:
    """Its fields without the receipt of its command."""
    lines = [f"{one.name}: {' | '.join(one.parts)}" for one in step.fields]
    return [line for line in lines if not line.startswith("Note: proposed from")]


def commands(*lines: str) -> list[str]:
    return [step.command for step in made(*lines).steps]


def went(*lines: str) -> list[str]:
    return [f"{one.step}: {one.how}" for one in made(*lines).landings]


def test_each_operation_is_a_command() -> None:
    assert commands(
        "Right, take the cover off.",
        "Undo the three bolts and lift the bracket off.",
        "Clean the face with a wire brush.",
        "Look for leaks.",
        "Stuff a clean rag in the port.",
        "Turn the hub until the hole lines up.",
        "Unhook the spring and the rod.",
        "Fit the new seal.",
    ) == [
        "Remove the cover",
        "Undo 3 bolts",
        "Remove the bracket",
        "Clean the face with a wire brush",
        "Look for leaks",
        "Fit the clean rag in the port",
        "Turn the hub until the hole lines up",
        "Unclip the spring and the rod",
        "Fit the new seal",
    ]


def test_no_command_has_more_than_twenty_words() -> None:
    long = "Clean the face " + "and the inside of the groove " * 8 + "."
    assert all(len(command.split()) <= 20 for command in commands(long, "Turn the hub " + "a bit more " * 12 + "."))


def test_a_step_runs_from_its_words_to_those_of_the_next_one() -> None:
    told = made("Take the cover off.", "Undo the nut.", "It's raining again.")
    assert [str(step.span) for step in told.steps] == ["strip 0:00-0:02", "strip 0:02-0:03"]


def test_two_operations_of_a_sentence_share_its_time() -> None:
    first, second = made("Undo the nut and take the cover off.", "Washer off.").steps[:2]
    assert first.span is not None
    assert second.span is not None
    assert first.span.start == 0
    assert first.span.end == second.span.start > 0
    assert second.span.end == 2


def test_every_field_says_when_it_was_said() -> None:
    (step,) = made("Undo the nut, thirteen mil.", "It's tight because it's rusty.").steps
    assert [f"{one.name} {one.origin.words}" for one in step.fields] == [
        "Note said strip 0:00",
        "Off said strip 0:00",
        "Tool said strip 0:00",
        "Key point said strip 0:02",
    ]


def test_what_is_said_about_a_step() -> None:
    (step,) = made(
        "Take the cover off.",
        "Careful, the edge is sharp.",
        "Never work on it with the engine hot.",
        "Make sure the gasket stays dry, otherwise it will leak.",
        "Look at that, it's perished.",
        "If it's stuck, tap it with a mallet.",
        "Let it drain, that takes five minutes.",
        "This one came from another job.",
    ).steps
    assert fields(step) == [
        "Off: cover",
        "Caution: Careful, the edge is sharp",
        "Warning: Never work on it with the engine hot",
        "Key point: Make sure the gasket stays dry | it will leak",
        "Finding: Look at that, it's perished | watch",
        "Tool: mallet",
        "If: it's stuck | Tap it with a mallet",
        "Wait: 5 | Let it drain, that takes five minutes",
        "Note: This one came from another job",
    ]


def test_a_torque_is_taken_with_its_unit_or_left_to_be_looked_up() -> None:
    first, second, third = made(
        "Tighten the long bolts to forty-five newton metres.",
        "Tighten the short bolt to twenty.",
        "Tighten the keeper bolt.",
        "Thirty newton metres, that one.",
    ).steps
    assert "Torque: long bolts | look up | heard: 45 N·m" in fields(first)
    assert fields(second) == ["Torque: short bolt | look up", "Note: a number was said without a unit"]
    assert fields(third) == ["Torque: keeper bolt | look up | heard: 30 N·m"]


def test_a_second_person_is_proposed_with_what_was_said() -> None:
    """Common practice: a second person for a long, heavy part."""
    asked = "Get somebody to hold the far end."
    heavy = "It's a heavy old thing, so you want a second person on the other end."
    first, second = made("Undo the last bolt.", asked, "Lift the tank out.", heavy).steps
    assert "People: 2 | helper: Get somebody to hold the far end" in fields(first)
    assert f"People: 2 | helper: {heavy[:-1]}" in fields(second)
    assert [line for line in fields(second) if line.startswith("Caution")] != []


def test_a_command_names_several_things_in_the_plural() -> None:
    assert commands("Take the two bushes out.") == ["Remove 2 bushes"]


def test_what_is_not_sure_is_headed_by_its_own_words_and_opens_nothing() -> None:
    found = made("Undo the nut.", "Then the washer.")
    assert found.steps[-1].command == "The washer"
    assert fields(found.steps[-1]) == ["Note: perhaps Off: washer"]
    assert found.landings[-1].how == "perhaps: Undo the washer"


def test_nuts_that_go_on_finger_tight_get_their_torque_where_they_are_tightened() -> None:
    work = ("Slacken the two nuts.", "Undo the nuts.", "Nuts back on, finger tight to begin with.")
    assert "Torque: 2 x nut | look up" in fields(made(*work).steps[-1])
    *_, on, tight = made(*work, "Tighten the nuts bit by bit.").steps
    assert fields(on) == ["On: nuts"]
    assert [line for line in fields(tight) if line.startswith("Torque")] == ["Torque: nuts | look up"]


def test_what_was_done_before_the_film_has_no_footage() -> None:
    first, second = made("I've already taken the wheel off.", "Undo the nut.").steps
    assert (first.command, first.span) == ("Remove the wheel", None)
    assert fields(first) == ["Off: wheel", "Note: done before the film"]
    assert second.span is not None


def test_what_was_said_too_late_goes_where_it_belongs_with_a_receipt() -> None:
    lines = (
        "Take the clips out.",
        "Slide the front pins out.",
        "Lift the deck out.",
        "Oh, I forgot to say, before you slide the pins out, put a block under the deck.",
    )
    told = made(*lines)
    assert [step.command for step in told.steps] == [
        "Remove the clips",
        "Fit the block under the deck",
        "Remove the front pins",
        "Remove the deck",
    ]
    assert told.steps[1].span is None
    assert fields(told.steps[1]) == ["For now: block", f"Note: said at 0:06, it belongs here: {lines[3]}"]
    assert went(*lines)[3] == "2: said at 0:06, it belongs here"


def test_talk_and_attempts_are_set_aside_with_the_reason() -> None:
    told = made(
        "The weather's lovely.",
        "Hook the spring on.",
        "No, wait, that's wrong.",
        "Hook the spring on.",
        "Whole job took me forty minutes.",
    )
    assert [f"{one.step}: {one.how}" for one in told.landings] == [
        "0: talk, no work in it",
        "1: command",
        "0: an attempt that was put right",
        "0: an attempt that was put right",
        "0: Note before the steps",
    ]
    assert [landing.aside for landing in told.landings] == [True, False, True, True, False]
    assert [field.parts for field in told.before] == [("time said: Whole job took me forty minutes.",)]


def test_a_narration_without_work_gives_no_step() -> None:
    told = made("Castle nut next.", "Hello.")
    assert told.steps == ()
    assert [landing.aside for landing in told.landings] == [True, True]


def test_several_recordings_are_one_job() -> None:
    refit = replace(narrated("Pop the cover back on."), recording="refit")
    told = draft([narrated("Take the big cover off."), refit])
    assert [str(step.span) for step in told.steps] == ["strip 0:00-0:01", "refit 0:00-0:01"]
    assert fields(told.steps[1]) == ["On: big cover"]


def test_started_by_hand_then_nipped_up_goes_on_once() -> None:
    """Four came off and three went on: the fourth is missing."""
    steps = made(
        "Take out the four screws.", "Start three of the screws by hand, then nip them up.", "Tighten the screws."
    ).steps
    on = [one.parts for step in steps for one in step.fields if one.name == "On"]
    assert on == [("3 x screw",)]


@pytest.mark.parametrize("words", ["Stand clear.", "Stand clear of the wheel.", "Mind your fingers on the chain."])
def test_a_safety_sentence_is_no_command(words: str) -> None:
    (step,) = made("Raise the bucket.", words).steps
    assert [one.name for one in step.fields if words.rstrip(".") in one.parts] in (["Caution"], ["Warning"])


def test_a_corrected_number_is_a_torque_heard_and_no_count() -> None:
    steps = made("Tighten the bolts with the washers.", "Thirty-eight, no, forty newton metres.").steps
    torques = [one.parts for step in steps for one in step.fields if one.name == "Torque"]
    assert torques == [("bolts", "look up", "heard: 40 N·m")]
    assert not [part for step in steps for one in step.fields for part in one.parts if "38 x" in part]


def test_a_left_hand_thread_is_a_warning_of_its_step() -> None:
    (step,) = made("Undo the nut, left-hand thread, so it goes clockwise.").steps
    assert "Caution" in [one.name for one in step.fields]
    assert "Off: nut" in fields(step)
