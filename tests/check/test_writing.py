"""Commands: how long, how many, and whether they are commands at all (ASD-STE100, rules 5.1 to 5.3)."""

import pytest

from procbuilder.check.writing import MOST_WORDS
from procbuilder.infer.lexicon import load
from procbuilder.model.commands import split_commands
from tests.check.sample import changed, found, said

WORDS = load()


def rules(command: str) -> list[str]:
    text = changed(("Raise the trailer", command))
    return [line.split()[2] for line in said(text)]


def test_twenty_words_are_the_most() -> None:
    """ASD-STE100, rule 5.1: at most 20 words in a sentence of a procedure."""
    assert MOST_WORDS == 20
    assert rules("Raise " + "very " * 17 + "high up") == []
    assert rules("Raise " + "very " * 18 + "high up") == ["long-command"]


def test_signs_alone_are_no_words() -> None:
    assert rules("Raise " + "very – " * 17 + "high up") == []


@pytest.mark.parametrize(
    ("sentence", "commands"),
    [
        ("Remove the cap and pull the pin", ["Remove the cap", "Pull the pin"]),
        ("Remove the cap, then pull the pin", ["Remove the cap", "Pull the pin"]),
        ("Remove the cap; pull pin 3", ["Remove the cap", "Pull pin 3"]),
        ("Turn the hub, check the play, and note it", ["Turn the hub", "Check the play", "Note it"]),
        ("When it is cool, drain the oil and remove the filter", ["Drain the oil", "Remove the filter"]),
        ("Remove the clip and pin the lever", ["Remove the clip", "Pin the lever"]),
        ("Undo 4 bolts and lift off the cover", ["Undo 4 bolts", "Lift off the cover"]),
    ],
)
def test_several_commands_are_told_apart(sentence: str, commands: list[str]) -> None:
    assert split_commands(sentence, WORDS.commands, WORDS.words) == commands


@pytest.mark.parametrize(
    "sentence",
    [
        "Remove the nut and washer",
        "Remove the clip and pin",
        "Remove the clip, seal and lock plate",
        "Clean and dry the hub",
        "Fit the cap and seal",
        "With the wheel on the ground, tighten the nuts",
        "Prise off the dust cap",
        "Unplug the left and right sensors",
        "Turn it back and forth",
        "Apply grease and oil on it",
    ],
)
def test_one_command_about_several_things_is_one(sentence: str) -> None:
    assert len(split_commands(sentence, WORDS.commands, WORDS.words)) == 1


def test_both_hands_at_once_are_one_command() -> None:
    """ASD-STE100, rule 5.2, allows two instructions that are carried out at the same time."""
    assert rules("Hold the jack and raise the trailer") == []


@pytest.mark.parametrize(
    "command", ["Bring the jack", "Swing the jack under it", "Ease it up", "Jack it up", "4 nuts off"]
)
def test_commands_that_are_let_pass(command: str) -> None:
    assert rules(command) == []


@pytest.mark.parametrize("command", ["You raise it", "Jacking up", "It goes up", "This is the jack"])
def test_telling_is_no_command(command: str) -> None:
    assert rules(command) == ["not-a-command"]


def test_other_languages_are_not_judged() -> None:
    text = changed(("author: RB\n", "author: RB\nlanguage: fr-FR\n"), ("Raise the trailer", "You Levez la remorque"))
    assert "not-a-command" not in [problem.rule for problem in found(text)]
