"""The word lists: what a rule may rely on."""

from importlib.resources import files

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.model.lexicon import Protection

LISTS = ("commands", "tightening", "tests", "critical", "protection")


def test_lists_hold_the_words_that_the_rules_are_built_on() -> None:
    lexicon = load()
    assert {
        "remove",
        "refit",
        "prise",
        "pry",
        "slacken",
        "loosen",
        "torque",
        "nip",
        "fit",
        "install",
    } <= lexicon.commands
    assert {"brake", "steering", "wheel", "fuel", "seat belt", "hub", "bearing nut"} <= set(lexicon.critical)
    assert "tighten" in lexicon.tightening
    assert "road test" in lexicon.tests


def test_each_state_of_a_block_becomes_a_protection() -> None:
    raised = next(p for p in load().protections if "raised" in p.states)
    assert isinstance(raised, Protection)
    assert {"axle stand", "chock", "prop"} <= set(raised.items)
    assert raised.reason == "it can fall or roll"


def test_words_are_in_lower_case_and_stand_once() -> None:
    lexicon = load()
    for words in (sorted(lexicon.commands), lexicon.tightening, lexicon.tests, lexicon.critical):
        assert [word for word in words if word != word.casefold() or word != word.strip()] == []
        assert len(set(words)) == len(words)


def test_commands_are_single_words() -> None:
    assert [word for word in load().commands if " " in word] == []


@pytest.mark.parametrize("name", LISTS)
def test_each_file_opens_with_how_to_add_to_it(name: str) -> None:
    text = files("procbuilder.infer").joinpath("data", "en", f"{name}.toml").read_text(encoding="utf-8")
    opening = text[: text.index("\n\n")] + text[: text.index("\n[") if "\n[" in text else text.index(" = ")]
    assert text.startswith("# ")
    assert "To add" in opening
