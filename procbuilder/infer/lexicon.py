"""The word lists that come with the program, read from ``infer/data``."""

import tomllib
from importlib.resources import files
from typing import Any

from procbuilder.model.lexicon import Lexicon, Protection


def load() -> Lexicon:
    """All word lists as one record."""
    return Lexicon(
        commands=frozenset(_words("commands")),
        tightening=_words("tightening"),
        tests=_words("tests"),
        critical=_words("critical"),
        flammable=_words("flammable"),
        protections=_protections(),
    )


def _table(name: str) -> dict[str, Any]:
    text = files("procbuilder.infer").joinpath("data", f"{name}.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def _words(name: str) -> tuple[str, ...]:
    return tuple(word for group in _table(name).values() for word in group)


def _protections() -> tuple[Protection, ...]:
    return tuple(
        Protection(state, tuple(block["items"]), block["reason"])
        for block in _table("protection")["protection"]
        for state in block["states"]
    )
