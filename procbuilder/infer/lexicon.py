"""The word lists that come with the program, read from ``infer/data``."""

import tomllib
from importlib.resources import files
from typing import Any

from procbuilder.model.lexicon import Lexicon, Protection, SingleUse, Spoiling, Ways


def load() -> Lexicon:
    """All word lists as one record."""
    return Lexicon(
        commands=frozenset(_words("commands")),
        tightening=_words("tightening"),
        tests=_words("tests"),
        critical=_words("critical"),
        flammable=_words("flammable"),
        protections=_protections(),
        single_use=tuple(
            SingleUse(tuple(block["things"]), block["why"], block.get("spoilt", False))
            for block in _table("single_use")["part"]
        ),
        spoiling=tuple(
            Spoiling(tuple(block["verbs"]), block["why"], tuple(block.get("things", ())))
            for block in _table("single_use")["command"]
        ),
        ways=_ways(),
    )


def _table(name: str) -> dict[str, Any]:
    text = files("procbuilder.infer").joinpath("data", f"{name}.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def _words(name: str) -> tuple[str, ...]:
    return tuple(word for group in _table(name).values() for word in group)


def _ways() -> Ways:
    table = {name: tuple(words) for name, words in _table("ways").items()}
    return Ways(table["reverse"], table["refit"], table["with"], table["without"], table["otherwise"])


def _protections() -> tuple[Protection, ...]:
    return tuple(
        Protection(state, tuple(block["items"]), block["reason"])
        for block in _table("protection")["protection"]
        for state in block["states"]
    )
