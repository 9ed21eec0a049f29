"""The data of an edition are facts and what was typed: the same in every language, and without a sentence of ours."""

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, Protocol

import pytest

from procbuilder.model.fields import FIELDS
from procbuilder.pipeline.build import build
from procbuilder.publish.data import FORMAT
from procbuilder.publish.wording.phrases import BLANKS
from tests.pipeline.every_field import Words, every_field, fixed

MARK = "¤"
NAMES = {kind.name for kind in FIELDS} | {"look up"}
"""Words of the format of a procedure, the same in every language."""
HASHED = re.compile(r"(?<=-)[0-9a-f]{16}(?=\.)")
TYPED_NUMBERS = ("31 N·m", "31–31 N·m")


def marked(name: str, part: str) -> str:
    """Text that nobody but a technician can have typed, with a space in it."""
    return f"{MARK}{name} {part}".strip()


def in_german(name: str, part: str) -> str:
    """The same in another language."""
    return f"{MARK}auf Deutsch {name} {part}".strip()


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


class Published(Protocol):
    """Builds a procedure with every field; gives what is published of it as data."""

    def __call__(self, language: str, typed: Words = ...) -> dict[str, Any]: ...


@pytest.fixture
def data(folder: Callable[[str], Path]) -> Published:
    """What is published of a procedure with every field, in a language."""

    def published(language: str, typed: Words = marked) -> dict[str, Any]:
        text = every_field(fixed(typed)).replace("---\n", f"---\nlanguage: {language}\n", 1)
        home = folder(text)
        (home / "strip.srt").write_text(f"1\n00:00:00,600 --> 00:00:01,900\n{MARK}said here\n", encoding="utf-8")
        known: dict[str, Any] = json.loads((build(home).out / "edition.json").read_bytes())
        return known

    return published


def test_data_hold_no_sentence_but_typed_ones(data: Published) -> None:
    known = data("en-GB")
    typed = [text for _, text in texts(known) if MARK in text]
    assert len(typed) > 100
    ours = [(path, text) for path, text in texts(known) if " " in text and MARK not in text]
    known_words = {*NAMES, *TYPED_NUMBERS, FORMAT, *BLANKS}
    assert [(path, text) for path, text in ours if text not in known_words] == []


def test_data_are_the_same_in_every_language(data: Published) -> None:
    """But for what is noticed by the words of a language: its dangers and questions are problems."""
    english, german = data("en-GB"), data("de-DE")
    assert english.pop("problems") != []
    assert german.pop("problems") != []
    assert english.pop("language") == "en-GB"
    assert german.pop("language") == "de-DE"
    assert english == german


def untyped(value: Any, ids: dict[str, int]) -> Any:
    """Data without what was typed; an id that was made of typed words becomes the number of its step.

    The name of a picture is the hash of its content, and what marks say is drawn into it.
    """
    if isinstance(value, str):
        return ids.get(value, MARK if MARK in value else HASHED.sub("", value))
    if isinstance(value, dict):
        return {key: untyped(part, ids) for key, part in value.items()}
    return [untyped(part, ids) for part in value] if isinstance(value, list) else value


def test_the_same_job_typed_in_two_languages_gives_the_same_facts(data: Published) -> None:
    told = []
    for known in (data("en-GB"), data("de-DE", in_german)):
        assert known.pop("problems") != []
        ids = {step["id"]: step["number"] for section in known["sections"] for step in section["steps"]}
        told.append({**untyped(known, ids), "language": ""})
    assert told[0] == told[1]
