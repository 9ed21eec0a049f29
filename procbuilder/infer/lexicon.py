"""The words of a language as one record, with those of a workshop."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

from procbuilder.infer.wordlists import DATA, ENGLISH, Kind, WordLists, frozen, lists, record
from procbuilder.model.activity import Activity, Order, Work, activity
from procbuilder.model.fastener import InchThread, Thread, inches
from procbuilder.model.heard import Act
from procbuilder.model.lexicon import (
    CheckWords,
    Doing,
    Lexicon,
    Patterns,
    Protection,
    Refit,
    SignWords,
    SingleUse,
    Spoiling,
    Ways,
)
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

_KEPT_SMALL = ("fastener", "clip")
"""Groups of ``objects.toml`` that go into a bag or tray."""


@cache
def load(language: str = "", own: OwnWords = NO_OWN_WORDS, folder: Path = DATA) -> Lexicon:
    """All word lists of a language, with the words of a workshop; of a language without a folder only the figures.

    ``language``: as typed in a procedure; none typed is English, and a region counts as its language.
    """
    known = lists(language, folder)
    tightening = tuple(verb for one in own.operations if one.act is Act.TIGHTEN for verb in one.verbs)
    why = _said(known, "single_use", "own")["why"]
    spoiling = tuple(Spoiling("", one.verbs, why, one.things) for one in own.operations if one.scrap)
    return Lexicon(
        language=known.language,
        heard=bool(known.table("grammar")),
        words=known.words(),
        commands=frozenset(known.flat("commands")) | {verb for one in own.operations for verb in one.verbs},
        tightening=(*known.flat("tightening"), *tightening),
        tests=known.flat("tests"),
        critical=known.flat("critical"),
        flammable=known.flat("flammable"),
        vapour=known.flat("vapour"),
        rotating=known.flat("rotating"),
        checks=record(CheckWords, known.table("checks")),
        doings=(*_own_doings(own), *_blocks(known, "acts", "act", Doing)),
        kept_small=tuple(_kept_small(known, own)),
        not_kept=tuple(known.table("acts").get("not_kept", ())),
        protections=tuple(_blocks(known, "protection", "protection", Protection)),
        safe_states=tuple(known.table("protection").get("safe", ())),
        sounds_safe=tuple(known.table("protection").get("sounds_safe", ())),
        single_use=tuple(_single_use(known)),
        spoiling=(*_blocks(known, "single_use", "command", Spoiling), *spoiling),
        ways=record(Ways, known.table("ways")),
        patterns=record(Patterns, known.table("patterns")),
        refit=_refit(known),
        synonyms=frozen(known.table("synonyms").get("same", [])),
        nicknames=own.nicknames,
        threads=tuple(_threads(known)),
        inch_threads=tuple(_inch_threads(known)),
        torque_wrenches=frozen(known.facts("fasteners")["torque_wrenches"]),
        activities=tuple(activity(both) for both in _with_facts(known, "dangers", known.table("dangers"))),
        orders=tuple(_orders(known)),
        moves=known.table("order").get("moves", {}),
        signs=dict(_signs(known)),
    )


def with_dangers(lexicon: Lexicon, own: tuple[Activity, ...]) -> Lexicon:
    """The lexicon with a workshop's own activities; one of the same name takes the place of that of the program."""
    names = {activity.name for activity in own}
    kept = tuple(activity for activity in lexicon.activities if activity.name not in names)
    return replace(lexicon, activities=kept + own) if own else lexicon


def _with_facts(known: WordLists, name: str, words: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Each entry that has words, with its name and what is the same in every language, in the order of the latter."""
    for key, facts in known.facts(name).items():
        if key in words:
            yield {"id": key, **facts, **words[key]}


def _blocks(known: WordLists, name: str, part: str, kind: type[Kind]) -> Iterator[Kind]:
    for key, block in known.table(name).get(part, {}).items():
        yield record(kind, {"id": key, **block})


def _kept_small(known: WordLists, own: OwnWords) -> Iterator[str]:
    groups = [*known.table("objects").items(), *own.objects]
    yield from (thing for name, things in groups if name in _KEPT_SMALL for thing in things)
    yield from known.table("acts").get("kept_small", ())


def _own_doings(own: OwnWords) -> Iterator[Doing]:
    for one in own.operations:
        yield Doing("", one.act, one.verbs, one.opposite)


def _single_use(known: WordLists) -> Iterator[SingleUse]:
    spoilt = known.facts("single_use")["spoilt"]
    for part in _blocks(known, "single_use", "part", SingleUse):
        yield replace(part, spoilt=part.id in spoilt)


def _said(known: WordLists, name: str, part: str) -> dict[str, str]:
    """What the program itself says, in English where there are no words for it."""
    own: dict[str, str] = known.table(name).get(part) or lists(ENGLISH).table(name)[part]
    return own


def _refit(known: WordLists) -> Refit:
    table = known.table("refit")
    return Refit(
        decide=tuple((tuple(block["words"]), block["decide"]) for block in table.get("decide", {}).values()),
        threaded=tuple(table.get("threaded", {}).get("words", ())),
        ends={known.words().folded(state): verb for state, verb in table.get("ends", {}).items()},
        supply=tuple(table.get("needs", {}).get("supply", ())),
        said=_said(known, "refit", "said"),
    )


def _signs(known: WordLists) -> Iterator[tuple[str, SignWords]]:
    """Every sign, so that one whose number is typed is shown in any language, with its meaning in English at least."""
    words, english = known.table("safety_signs"), lists(ENGLISH).table("safety_signs")
    for number in (number for numbers in known.facts("safety_signs").values() for number in numbers):
        yield number, record(SignWords, words.get(number, {"meaning": english[number]["meaning"]}))


def _threads(known: WordLists) -> Iterator[Thread]:
    for block in known.facts("fasteners")["thread"]:
        yield Thread(
            size=block["size"],
            pitch=block["pitch"],
            area=block["area"],
            hexagons=_widths(block["hexagon"]),
            keys=_widths(block.get("key", {})),
            proof=tuple(block["proof"].items()),
        )


def _inch_threads(known: WordLists) -> Iterator[InchThread]:
    for block in known.facts("fasteners")["inch"]:
        key = inches(block["key"]) if "key" in block else None
        yield InchThread(inches(block["size"]), inches(block["hexagon"]), key)


def _widths(table: dict[str, float]) -> tuple[tuple[str, Decimal], ...]:
    return tuple((name, Decimal(str(width))) for name, width in table.items())


def _orders(known: WordLists) -> Iterator[Order]:
    table = known.table("order")
    for block in _with_facts(known, "order", table.get("order", {})):
        met = table.get("set", {}).get(block.get("set"), {})
        for name in block.get("needs", met):
            yield _order(_condition(block, name, met[name]), "", table["verbs"])
        for word in block.get("each", [""]) if not met else ():
            yield _order(block, word, table["verbs"])


def _condition(block: dict[str, Any], name: str, condition: dict[str, Any]) -> dict[str, Any]:
    """One condition of a set as a rule of its own."""
    rule = condition["rule"].format(before=block["before"])
    return {**block, **condition, "rule": rule, "why": block["why"], "id": f"{block['id']}.{name}"}


def _order(block: dict[str, Any], word: str, verbs: dict[str, list[str]]) -> Order:
    """A rule, with a word in place of ``{}``."""

    def text(key: str) -> str:
        return str(block.get(key, "")).replace("{}", word.strip("-"))

    def acts(key: str) -> tuple[Work, ...]:
        return tuple(_act(act.replace("{}", word), verbs) for act in block.get(key, []))

    return Order(
        id=block["id"], rule=text("rule"), why=text("why"), first=acts("first"), then=acts("then"), since=acts("since"),
        missing=block.get("missing", False), example=text("example"), danger=block["danger"],
    )  # fmt: skip


def _act(text: str, verbs: dict[str, list[str]]) -> Work:
    """``"@off, drop: gearbox, transmission"``: verbs and things; ``@off`` stands for a list of verbs."""
    before, _, behind = text.partition(":")
    doing = [one for word in _listed(before) for one in (verbs[word[1:]] if word.startswith("@") else [word])]
    return Work(tuple(doing), tuple(_listed(behind)))


def _listed(text: str) -> list[str]:
    return [word.strip() for word in text.split(",") if word.strip()]
