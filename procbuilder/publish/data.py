"""The edition as plain data: what ``edition.json`` holds, described by ``edition.schema.json``."""

import json
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from pathlib import PurePosixPath, PureWindowsPath
from typing import Any

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Estimate
from procbuilder.model.film import Film
from procbuilder.model.footage import Recording
from procbuilder.model.ledger import Moment
from procbuilder.model.origin import Origin, Place
from procbuilder.model.sequence import Sequence
from procbuilder.model.sign import Sign
from procbuilder.model.timecode import Span, format_time
from procbuilder.publish.timewords import sentences

FORMAT = "procbuilder edition 1"
"""Version of the data; it changes when a key is renamed, dropped or given another meaning."""


def edition_data(edition: Edition) -> dict[str, Any]:
    """The edition as dicts, lists, text and numbers.

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
    """A record and all within it as dicts, lists, text and numbers."""
    match value:
        case StrEnum():
            return value.value
        case None | bool() | int() | float() | str():
            return value
        case Decimal() | Fraction():
            return _number(value)
        case Place():
            return f"{_as_given(value.file)}:{value.line}"
        case tuple():
            return [plain(part) for part in value]
    if not is_dataclass(value):
        raise TypeError(f"an edition cannot hold a {type(value).__name__}")
    record = {part.name: plain(getattr(value, part.name)) for part in fields(value)}
    return record | {key: plain(work_out(value)) for key, work_out in WORKED_OUT.get(type(value), {}).items()}


def _number(value: Decimal | Fraction) -> int | float:
    rounded = round(Fraction(value), 3)
    return rounded.numerator if rounded.denominator == 1 else float(rounded)


def _as_given(path: str) -> str:
    """A path as typed; of one that starts at the root of a disk only the name, which tells nothing of the machine."""
    if PurePosixPath(path).is_absolute() or PureWindowsPath(path).is_absolute():
        return PureWindowsPath(path).name
    return path


def moment_words(moment: Moment) -> str:
    """``step 3, strip 1:09``."""
    if moment.time is None:
        return f"step {moment.number}"
    film = f"{moment.recording} {format_time(moment.time)}".strip()
    return f"step {moment.number}, {film}"


WORKED_OUT: dict[type, dict[str, Callable[[Any], object]]] = {
    Origin: {"words": lambda origin: origin.words},
    Sequence: {
        "turns": lambda sequence: sequence.turns,
        "places": lambda sequence: tuple(tuple(round(share, 3) for share in place) for place in sequence.places),
    },
    Sign: {"words": lambda sign: sign.words},
    Span: {"words": str},
    Moment: {"words": moment_words},
    Recording: {
        "path": lambda recording: _as_given(recording.path),
        "length": lambda recording: format_time(Fraction(round(recording.duration))),
    },
    Film: {"length": lambda film: format_time(Fraction(round(film.seconds)))},
    Estimate: {"lower_bound": lambda estimate: estimate.lower_bound, "words": sentences},
}
"""Keys that a record has beyond its fields, or that are not the field as it is."""
