"""The word lists that come with the program, read from ``infer/data`` and its folder of a language."""

import tomllib
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from functools import cache
from importlib.resources import files
from typing import Any

from procbuilder.model.activity import Activity, Order, Work, activity
from procbuilder.model.fastener import InchThread, Thread, inches
from procbuilder.model.heard import Act
from procbuilder.model.lexicon import Lexicon, Protection, SingleUse, Spoiling, Ways
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

_SPOILT = "the workshop says that this spoils it"


@cache
def load(own: OwnWords = NO_OWN_WORDS) -> Lexicon:
    """All word lists as one record, with the words of a workshop."""
    tightening = tuple(verb for one in own.operations if one.act is Act.TIGHTEN for verb in one.verbs)
    spoiling = tuple(Spoiling(one.verbs, _SPOILT, one.things) for one in own.operations if one.scrap)
    return Lexicon(
        commands=frozenset(_words("commands")) | {verb for one in own.operations for verb in one.verbs},
        tightening=(*_words("tightening"), *tightening),
        tests=_words("tests"),
        critical=_words("critical"),
        flammable=_words("flammable"),
        vapour=_words("vapour"),
        rotating=_words("rotating"),
        synonyms=tuple(tuple(names) for names in _table("synonyms")["same"]),
        protections=_protections(),
        safe_states=tuple(_table("protection")["safe"]),
        single_use=tuple(
            SingleUse(tuple(block["things"]), block["why"], name in facts("single_use")["spoilt"])
            for name, block in _table("single_use")["part"].items()
        ),
        spoiling=(*_spoiling(), *spoiling),
        ways=_ways(),
        nicknames=own.nicknames,
        threads=_threads(),
        inch_threads=tuple(
            InchThread(
                inches(block["size"]), inches(block["hexagon"]), inches(block["key"]) if "key" in block else None
            )
            for block in facts("fasteners")["inch"]
        ),
        torque_wrenches=tuple((low, high) for low, high in facts("fasteners")["torque_wrenches"]),
        activities=tuple(activity(_table("dangers")[name] | block) for name, block in facts("dangers").items()),
        orders=tuple(_orders()),
        signs={number: entry["meaning"] for number, entry in _table("safety_signs").items()},
        worn=_worn(),
    )


@cache
def word_list(name: str) -> dict[str, Any]:
    """One word list as it is in its file."""
    return _table(name)


def with_dangers(lexicon: Lexicon, own: tuple[Activity, ...]) -> Lexicon:
    """The lexicon with a workshop's own activities; one of the same name takes the place of that of the program."""
    names = {activity.name for activity in own}
    kept = tuple(activity for activity in lexicon.activities if activity.name not in names)
    return replace(lexicon, activities=kept + own) if own else lexicon


@cache
def facts(name: str) -> dict[str, Any]:
    """What one file holds that is the same in every language."""
    return _read(f"{name}.toml")


def _table(name: str) -> dict[str, Any]:
    return _read("en", f"{name}.toml")


def _read(*path: str) -> dict[str, Any]:
    return tomllib.loads(files("procbuilder.infer").joinpath("data", *path).read_text(encoding="utf-8"))


def _words(name: str) -> tuple[str, ...]:
    return tuple(word for group in _table(name).values() for word in group)


def _spoiling() -> tuple[Spoiling, ...]:
    return tuple(
        Spoiling(tuple(block["verbs"]), block["why"], tuple(block.get("things", ())))
        for block in _table("single_use")["command"].values()
    )


def _threads() -> tuple[Thread, ...]:
    return tuple(
        Thread(
            size=block["size"],
            pitch=block["pitch"],
            area=block["area"],
            hexagons=_widths(block["hexagon"]),
            keys=_widths(block.get("key", {})),
            bit=block.get("bit", ""),
            proof=tuple(block["proof"].items()),
        )
        for block in facts("fasteners")["thread"]
    )


def _widths(table: dict[str, float]) -> tuple[tuple[str, Decimal], ...]:
    return tuple((name, Decimal(str(width))) for name, width in table.items())


def _ways() -> Ways:
    table = {name: tuple(words) for name, words in _table("ways").items()}
    return Ways(table["reverse"], table["refit"], table["with"], table["without"], table["otherwise"])


def _worn() -> dict[str, tuple[str, ...]]:
    words = _table("safety_signs")
    return {number: (words[number]["worn"], *words[number]["words"]) for number in facts("safety_signs")["worn"]}


def _protections() -> tuple[Protection, ...]:
    return tuple(
        Protection(state, tuple(block["items"]), block["reason"])
        for block in _table("protection")["protection"].values()
        for state in block["states"]
    )


def _orders() -> Iterator[Order]:
    table = _table("order")
    for name, block in facts("order").items():
        for word in table["order"][name].get("each", [""]):
            yield _order(table["order"][name] | block, word, table["verbs"])


def _order(block: dict[str, Any], word: str, verbs: dict[str, list[str]]) -> Order:
    """A rule, with a word in place of ``{}``."""

    def text(key: str) -> str:
        return str(block.get(key, "")).replace("{}", word)

    def acts(key: str) -> tuple[Work, ...]:
        return tuple(_act(act.replace("{}", word), verbs) for act in block.get(key, []))

    return Order(
        rule=text("rule"), why=text("why"), first=acts("first"), then=acts("then"), since=acts("since"),
        missing=block.get("missing", False), example=text("example"), danger=block["danger"],
    )  # fmt: skip


def _act(text: str, verbs: dict[str, list[str]]) -> Work:
    """``"@off, drop: gearbox, transmission"``: verbs and things; ``@off`` stands for a list of verbs."""
    before, _, behind = text.partition(":")
    doing = [one for word in _listed(before) for one in (verbs[word[1:]] if word.startswith("@") else [word])]
    return Work(tuple(doing), tuple(_listed(behind)))


def _listed(text: str) -> list[str]:
    return [word.strip() for word in text.split(",") if word.strip()]
