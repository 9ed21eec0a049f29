"""What a message says, as data: it is put into words once, in the language of its reader."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from procbuilder.model.ledger import Moment, OnWay
from procbuilder.model.origin import Origin, Place
from procbuilder.model.quantity import Item
from procbuilder.model.timecode import Span


@dataclass(frozen=True, slots=True)
class StepRef:
    """A step that a message speaks of: its id stays, its number is how it is said."""

    id: str
    number: int


@dataclass(frozen=True, slots=True)
class Time:
    """A moment of a recording."""

    seconds: Fraction
    recording: str = ""


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade that the reader's catalogue holds, such as a severity or a unit of a list."""

    word: str


@dataclass(frozen=True, slots=True)
class Blank:
    """A part of a line that only the technician can fill in, by its name: ``reason``, ``who-checks``."""

    name: str


@dataclass(frozen=True, slots=True)
class Line:
    """A field to copy into the procedure."""

    field: str
    """Its name; empty for what is no field, such as a heading: then its first part is the whole line."""
    parts: tuple["Value", ...]
    """A list within one is a list of things: ``gloves; eye protection``."""
    words: tuple[tuple[str, "Value"], ...] = ()
    """Parts that begin with a word: ``while: trailer raised``."""
    place: Place | None = None
    """The line that it replaces, or the heading below which it goes; None when only the technician knows.

    One that replaces, or has a blank, ends the problem alone; the others of a problem do so together.
    """
    replaces: bool = False


@dataclass(frozen=True, slots=True)
class Phrase:
    """A part of a sentence that is not always there; worded by its own pattern."""

    form: str
    facts: "Facts" = ()


Value = (
    str | int | float | Decimal | date | timedelta | Path | Place | Span | Time | Moment | OnWay | StepRef | Item
    | Origin | Term | Blank | Line | Phrase | tuple["Value", ...]
)  # fmt: skip
"""One fact. A text is what somebody typed or said, never a sentence of ours."""

Facts = tuple[tuple[str, Value], ...]


def facts(**values: Value) -> Facts:
    """Facts by the names of the gaps that they fill."""
    return tuple(values.items())


def every(given: Facts) -> Iterator[Value]:
    """All values, those within lists and phrases too."""
    for _, value in given:
        yield from _within(value)


def _within(value: Value) -> Iterator[Value]:
    yield value
    if isinstance(value, tuple):
        for part in value:
            yield from _within(part)
    elif isinstance(value, Phrase):
        yield from every(value.facts)
