"""The edition as plain data: what ``edition.json`` holds, described by ``edition.schema.json``."""

import json
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from datetime import date, timedelta
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from pathlib import PurePath, PurePosixPath, PureWindowsPath
from typing import Any

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Estimate
from procbuilder.model.film import Chapter
from procbuilder.model.footage import Recording
from procbuilder.model.ledger import Spoilt
from procbuilder.model.origin import Place
from procbuilder.model.quantity import Item
from procbuilder.model.sequence import Sequence
from procbuilder.model.sign import Sign
from procbuilder.model.torque import Torque

FORMAT = "procbuilder edition 2"
"""Version of the data; it changes when a key is renamed, dropped or given another meaning."""


WorkedOut = dict[type, dict[str, Callable[[Any], object]]]
"""Keys that records of a type have beyond their fields, or that are not the field as it is."""

WORKED_OUT: WorkedOut = {
    Sequence: {
        "turns": lambda sequence: sequence.turns,
        "places": lambda sequence: tuple(tuple(round(share, 3) for share in place) for place in sequence.places),
    },
    Recording: {"path": lambda recording: as_given(recording.path)},
    Estimate: {"lower_bound": lambda estimate: estimate.lower_bound},
}
"""What a reader would have to work out; the same in every language."""


LEFT_OUT: dict[type, tuple[str, ...]] = {
    Item: ("place", "origin", "sizes"),
    Torque: ("units", "has_number"),
    Spoilt: ("why",),
    Chapter: ("title",),
}
"""Fields that are in no data: words of a language, what a record holds to be reckoned with, what its owner tells."""


def edition_data(edition: Edition) -> dict[str, Any]:
    """The edition as dicts, lists, text and numbers: facts and what was typed, and no sentence of any language.

    Keys are the names of the records' fields, in their order. Seconds are rounded to thousandths, and a
    place is ``file:line``. There is no build time, and no path from outside the procedure's folder.
    """
    return {"format": FORMAT, **plain(edition)}


def edition_json(edition: Edition) -> bytes:
    """``edition.json``: the same bytes for the same edition."""
    text = json.dumps(edition_data(edition), ensure_ascii=False, indent=2, allow_nan=False)
    # Half a surrogate pair has no UTF-8; as backslash escape it is still the JSON for itself.
    return (text + "\n").encode("utf-8", "backslashreplace")


def plain(value: object) -> Any:
    """A record and all within it as dicts, lists, text and numbers, with what is worked out of it."""
    if isinstance(value, tuple):
        return [plain(part) for part in value]
    if not is_dataclass(value) or isinstance(value, Place | Sign):
        return _in_one(value)
    names = [part.name for part in fields(value) if part.name not in LEFT_OUT.get(type(value), ())]
    record = {name: plain(getattr(value, name)) for name in names}
    return record | {key: plain(work_out(value)) for key, work_out in WORKED_OUT.get(type(value), {}).items()}


def _in_one(value: object) -> str | int | float | None:
    """What is written as one text or number."""
    match value:
        case StrEnum():
            return value.value
        case None | bool() | int() | float() | str():
            return value
        case Decimal() | Fraction():
            return _number(value)
        case date():
            return value.isoformat()
        case timedelta():
            return _number(Fraction(value // timedelta(milliseconds=1), 1000))
        case PurePath():
            return as_given(str(value))
        case Place():
            return f"{as_given(value.file)}:{value.line}"
        case Sign():
            return value.number
    raise TypeError(f"an edition cannot hold a {type(value).__name__}")


def _number(value: Decimal | Fraction) -> int | float:
    rounded = round(Fraction(value), 3)
    return rounded.numerator if rounded.denominator == 1 else float(rounded)


def as_given(path: str) -> str:
    """A path as typed; of one that starts at the root of a disk only the name, which tells nothing of the machine."""
    if PurePosixPath(path).is_absolute() or PureWindowsPath(path).is_absolute():
        return PureWindowsPath(path).name
    return path
