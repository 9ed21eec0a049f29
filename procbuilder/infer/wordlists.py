"""The files of ``infer/data``: what is the same in every language, and the words of one."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cache
from pathlib import Path
from typing import Any, TypeVar, get_origin

from procbuilder.model.words import CommandWords, VerbForms, Words

DATA = Path(__file__).parent / "data"
ENGLISH = "en"
"""Of a procedure that names no language."""

Kind = TypeVar("Kind")


@dataclass(frozen=True, slots=True)
class WordLists:
    """The word lists of one language."""

    language: str
    """The name of its folder; empty when there is none."""
    folder: Path = DATA

    def facts(self, name: str) -> dict[str, Any]:
        """What one file holds that is the same in every language."""
        return _read(DATA, f"{name}.toml")

    def table(self, name: str) -> dict[str, Any]:
        """The words of one file; empty when the language has no such file."""
        return _read(self.folder, self.language, f"{name}.toml") if self.language else {}

    def flat(self, name: str) -> tuple[str, ...]:
        """All words of a file of lists."""
        return tuple(word for group in self.table(name).values() for word in group)

    def words(self) -> Words:
        """How its words are told apart."""
        table = self.table("words")
        letters = table.get("letters", {})
        table = {**_written(table, letters), "letters": letters}
        verbs = record(VerbForms, {**table.get("verbs", {}), "kinds": [*self.table("commands").values()]})
        command = record(CommandWords, table.get("command", {}))
        return record(Words, {**table, "verbs": verbs, "command": command})


def lists(language: str, folder: Path = DATA) -> WordLists:
    """Those of a language as typed; a region uses those of its language: ``de-AT`` those of ``de``.

    A language that has no words of dangers has none at all: nobody may take silence for safety.
    """
    code = (language.strip() or ENGLISH).casefold().partition("-")[0]
    known = code.isalpha() and (folder / code / "dangers.toml").is_file()
    return WordLists(code if known else "", folder)


def record(kind: type[Kind], table: Mapping[str, Any]) -> Kind:
    """A record out of a table whose keys are the names of its fields; lists become tuples or sets, as declared.

    Raises:
        TypeError: a key is no field of it.
    """
    sets = {one.name for one in fields(kind) if get_origin(one.type) is frozenset}  # type: ignore[arg-type]
    return kind(**{key: frozenset(value) if key in sets else frozen(value) for key, value in table.items()})


def frozen(value: Any) -> Any:
    """Lists as tuples, however deep."""
    return tuple(map(frozen, value)) if isinstance(value, list) else value


def _written(value: Any, letters: Mapping[str, str]) -> Any:
    """Texts in a table, however deep, with each letter written in one way."""
    if isinstance(value, str):
        for letter, other in letters.items():
            value = value.replace(letter, other)
        return value
    if isinstance(value, dict):
        return {_written(key, letters): _written(one, letters) for key, one in value.items()}
    return [_written(one, letters) for one in value] if isinstance(value, list) else value


@cache
def _read(folder: Path, *path: str) -> dict[str, Any]:
    file = folder.joinpath(*path)
    return tomllib.loads(file.read_text(encoding="utf-8")) if file.is_file() else {}
