"""Terms that records hold as data – names of fields, signal words, balances – and how a language says them."""

from collections.abc import Iterable
from dataclasses import dataclass

from procbuilder.model.ledger import Balance, OnWay, Opening
from procbuilder.model.origin import Origin, OriginKind
from procbuilder.model.quantity import Item
from procbuilder.model.timecode import format_time
from procbuilder.model.torque import Stage
from procbuilder.publish.language import Language

LISTS = {
    "Condition": "Conditions",
    "Document": "Documents",
    "Note": "Notes",
    "Danger": "Dangers",
    "Downgraded": "Dangers made lower or left out",
}
"""Titles of the lists before the start, as far as they are no names of fields."""

BALANCES = {
    Balance.CLOSED: "closed",
    Balance.ASSUMED: "closed, only assumed",
    Balance.OPEN: "still open",
    Balance.LEFT_OPEN: "left open on purpose",
    Balance.NEVER_OPENED: "closed but never opened",
}
OPENINGS = {
    Opening.OFF: "off",
    Opening.SLACKENED: "slackened",
    Opening.TEMPORARY: "fitted for now",
    Opening.STATE: "state",
}

ORIGINS = {
    OriginKind.SAID: "said {place}",
    OriginKind.SEEN: "seen {place}",
    OriginKind.DOCUMENT: "from {document}",
    OriginKind.MEMORY: "from memory",
}
NEW, SCRAP = "{thing}, new", "{thing}, scrap"
IF, AND, IF_NOT, NOT = ("if: {condition}", ", and: ", "if not: {condition}", ", not: ")
"""How an entry of the ledger tells on which way it ends so."""


@dataclass(frozen=True, slots=True)
class Source:
    """Where a fact comes from, in words."""

    words: str = ""
    """``said strip 3:12``, ``from D1 p. 4``; empty when it was typed. Names and times stay as typed."""
    memory: bool = False
    """Somebody only remembers it: it is not confirmed."""


TYPED = Source()


def source(origin: Origin, language: Language) -> Source:
    """The words for an origin."""
    if origin.kind not in ORIGINS or (origin.time is None and origin.kind in (OriginKind.SAID, OriginKind.SEEN)):
        return TYPED
    place = "" if origin.time is None else f"{origin.recording} {format_time(origin.time)}".strip()
    words = language.text(ORIGINS[origin.kind], place=place, document=origin.document)
    return Source(words, origin.kind is OriginKind.MEMORY)


def thing(item: Item, language: Language) -> str:
    """``2 x axle stand``, ``brake cleaner, 200 ml``, ``split pin, new``: counts in front, amounts behind."""
    name = item.name
    for marked, words in ((item.new, NEW), (item.scrap, SCRAP)):
        name = language.text(words, thing=name) if marked else name
    if item.quantity is None:
        return name
    return f"{item.quantity} {name}" if item.quantity.unit == "x" else f"{name}, {item.quantity}"


def things(items: Iterable[Item], language: Language) -> str:
    """Several, behind one another."""
    return "; ".join(thing(item, language) for item in items)


def way(told: OnWay | None, language: Language) -> str:
    """``if not: braked hub, not: spare wheel fitted``, ``if: braked hub, and: disc``; empty for every way."""
    if told is None:
        return ""
    pattern, joint = (IF, AND) if told.taken else (IF_NOT, NOT)
    return language.text(pattern, condition=language.text(joint).join(told.branches))


def other_unit(also: Iterable[Stage], language: Language) -> str:
    """A value that was worked out in another unit, with the decimal sign of the language."""
    return language.text(" then ").join(str(stage).replace(".", language.decimal) for stage in also)


def minutes(typed: str) -> str:
    """``12 min``; words, and what has its unit, stay as they are."""
    return f"{typed} min" if typed[-1:].isdecimal() else typed
