"""Work that can hurt somebody, and where a procedure speaks of it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from procbuilder.model.facts import Time
from procbuilder.model.origin import Place
from procbuilder.model.signal import Signal


@dataclass(frozen=True, slots=True)
class Activity:
    """One block of ``dangers.toml``: the words that point to some work, and the danger that goes with it."""

    name: str
    words: tuple[str, ...]
    told: tuple[str, ...]
    """Words of a typed danger that covers it."""
    signal: Signal
    hazard: str
    consequence: str
    avoid: str
    signs: tuple[str, ...] = ()
    """ISO 7010 numbers."""
    who: str = ""
    reserved: str = ""
    """Who alone may do it by law; empty when anyone who is trained may."""
    hold: str = ""
    """What must be checked before going on; empty when no hold point is usual."""
    begins: str = ""
    """The state during which the danger stands."""
    once: bool = False
    """The harm comes later: one statement anywhere in the job covers it."""
    vapour: bool = False
    """It sets free vapour or gas that can catch fire."""
    id: str = ""
    """Its name in every language; empty for one of a workshop's own."""


NEEDED = ("name", "words", "signal", "hazard", "consequence", "avoid")
"""Keys without which a block proposes nothing."""


def activity(block: Mapping[str, Any]) -> Activity:
    """An activity out of a block of a word list.

    Raises:
        KeyError: one of the needed keys is missing.
        ValueError: the signal word is none of the four.
    """
    return Activity(
        name=block["name"], words=tuple(block["words"]), told=tuple(block.get("told", block["words"])),
        signal=Signal(block["signal"]), hazard=block["hazard"], consequence=block["consequence"], avoid=block["avoid"],
        signs=tuple(block.get("signs", "").split()), who=block.get("who", ""), reserved=block.get("reserved", ""),
        hold=block.get("hold", ""), begins=block.get("begins", ""), once=block.get("once", False),
        vapour=block.get("vapour", False), id=block.get("id", ""),
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Hit:
    """Words of a procedure that point to an activity."""

    words: str
    """As they stand there."""
    number: int
    """Of the step; 0 for the title and the front lists."""
    place: Place
    told: bool
    """A typed danger covers it."""
    said: Time | None = None
    """When it was said in the narration; None for what is typed."""


@dataclass(frozen=True, slots=True)
class Noticed:
    """An activity of which a procedure speaks, with all places in the order of the file."""

    activity: Activity
    hits: tuple[Hit, ...]


@dataclass(frozen=True, slots=True)
class Work:
    """What is done to what: any of the verbs with any of the things."""

    verbs: tuple[str, ...]
    things: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Order:
    """One block of ``order.toml``: what must come before what."""

    rule: str
    """In words, as a command: ``support the gearbox before it comes out``."""
    why: str
    first: tuple[Work, ...]
    then: tuple[Work, ...]
    since: tuple[Work, ...] = ()
    """It counts only behind one of these; empty means from the start."""
    missing: bool = False
    """It is a problem too when the first is nowhere said."""
    example: str = ""
    """A command that would do."""
    danger: int = 2
    """As in a problem."""
    id: str = ""
    """Its name in every language."""


@dataclass(frozen=True, slots=True)
class Done:
    """A step in which something of a rule is done."""

    number: int
    """0 for the front lists."""
    command: str
    place: Place


@dataclass(frozen=True, slots=True)
class Disorder:
    """A rule of order that a procedure breaks."""

    order: Order
    then: Done
    """What comes too early."""
    first: Done | None
    """What should have come before it, and comes after; None when it is nowhere said."""
    since: Done | None = None
