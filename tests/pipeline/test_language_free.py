"""The data of an edition are facts and what was typed: the same in every language, and without a sentence of ours."""

import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from procbuilder.model.fields import FIELDS
from procbuilder.pipeline.build import build
from procbuilder.publish.data import FORMAT
from procbuilder.publish.wording.phrases import BLANKS
from tests.pipeline.every_field import every_field, fixed

MARK = "¤"
NAMES = {kind.name for kind in FIELDS} | {"look up"}
"""Words of the format of a procedure, the same in every language."""
TYPED_NUMBERS = ("31 N·m", "31–31 N·m")


def marked(name: str, part: str) -> str:
    """Text that nobody but a technician can have typed, with a space in it."""
    return f"{MARK}{name} {part}".strip()


def texts(value: Any, path: str = "") -> Iterator[tuple[str, str]]:
    """Every text of the data, with the way to it."""
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, dict):
        for key, part in value.items():
            yield from texts(part, f"{path}.{key}")
    elif isinstance(value, list):
        for part in value:
            yield from texts(part, path)


@pytest.fixture
def data(folder: Callable[[str], Path]) -> Callable[[str], dict[str, Any]]:
    """What is published of a procedure with every field, in a language."""

    def published(language: str) -> dict[str, Any]:
        text = every_field(fixed(marked)).replace("---\n", f"---\nlanguage: {language}\n", 1)
        home = folder(text)
        (home / "strip.srt").write_text(f"1\n00:00:00,600 --> 00:00:01,900\n{MARK}said here\n", encoding="utf-8")
        known: dict[str, Any] = json.loads((build(home).out / "edition.json").read_bytes())
        return known

    return published


def test_data_hold_no_sentence_but_typed_ones(data: Callable[[str], dict[str, Any]]) -> None:
    known = data("en-GB")
    typed = [text for _, text in texts(known) if MARK in text]
    assert len(typed) > 100
    ours = [(path, text) for path, text in texts(known) if " " in text and MARK not in text]
    known_words = {*NAMES, *TYPED_NUMBERS, FORMAT, *BLANKS}
    assert [(path, text) for path, text in ours if text not in known_words] == []


def test_data_are_the_same_in_every_language(data: Callable[[str], dict[str, Any]]) -> None:
    """But for what is noticed by the words of a language: its dangers and questions are problems."""
    english, german = data("en-GB"), data("de-DE")
    assert english.pop("problems") != []
    assert german.pop("problems") != []
    assert english.pop("language") == "en-GB"
    assert german.pop("language") == "de-DE"
    assert english == german
