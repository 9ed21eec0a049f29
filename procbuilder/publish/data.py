"""The edition as plain data: what ``edition.json`` holds, described by ``edition.schema.json``."""

import json
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from pathlib import PurePosixPath, PureWindowsPath
from typing import Any

from procbuilder.model.edition import Edition, ItemLine, Line, Named
from procbuilder.model.estimate import Estimate
from procbuilder.model.film import Film
from procbuilder.model.footage import Recording
from procbuilder.model.ledger import Entry, Moment
from procbuilder.model.origin import Origin, Place
from procbuilder.model.problem import Problem
from procbuilder.model.quantity import Item
from procbuilder.model.sequence import Sequence
from procbuilder.model.sign import Sign
from procbuilder.model.timecode import Span, format_time
from procbuilder.model.torque import Torque
from procbuilder.model.worked import TorqueRow
from procbuilder.publish import terms
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.spoken import moment_words
from procbuilder.publish.timewords import sentences
from procbuilder.publish.wording.problems import said

FORMAT = "procbuilder edition 1"
"""Version of the data; it changes when a key is renamed, dropped or given another meaning."""


WorkedOut = dict[type, dict[str, Callable[[Any], object]]]


def worked_out(language: Language) -> WorkedOut:
    """Keys that a record has beyond its fields, or that are not the field as it is."""
    source: dict[str, Callable[[Any], object]] = {"origin": lambda line: terms.origin(line.origin, language)}
    return {
        Origin: {"words": lambda origin: terms.origin(origin.words, language)},
        Line: source,
        ItemLine: source,
        Named: {"extra": lambda entry: terms.extra(entry, language), **source},
        TorqueRow: {"also": lambda row: terms.other_unit(row.also, language)},
        Sequence: {
            "turns": lambda sequence: sequence.turns,
            "places": lambda sequence: tuple(tuple(round(share, 3) for share in place) for place in sequence.places),
        },
        Sign: {
            "meaning": lambda sign: language.text(sign.meaning),
            "words": lambda sign: f"{sign.number} {language.text(sign.meaning)}",
        },
        Span: {"words": str},
        Entry: {
            "fasteners": lambda entry: entry.held_by,
            "way": lambda entry: terms.way(entry.way, language),
            "spoilt": lambda entry: language.text(entry.spoilt),
        },
        Moment: {"words": lambda moment: moment_words(moment, language)},
        Recording: {
            "path": lambda recording: _as_given(recording.path),
            "length": lambda recording: format_time(Fraction(round(recording.duration))),
        },
        Problem: {
            "facts": lambda problem: tuple(name for name, _ in problem.facts),
            "what": lambda problem: said(problem, language).what,
            "instead": lambda problem: said(problem, language).instead,
        },
        Film: {"length": lambda film: format_time(Fraction(round(film.seconds)))},
        Estimate: {
            "lower_bound": lambda estimate: estimate.lower_bound,
            "words": lambda estimate: sentences(estimate, language),
        },
    }


WORKED_OUT = worked_out(ENGLISH)
"""That of the data of an edition, which are the same in every language."""


def edition_data(edition: Edition, language: Language = ENGLISH) -> dict[str, Any]:
    """The edition as dicts, lists, text and numbers; what is told in words is told in a language.

    Keys are the names of the records' fields, in their order. Seconds are rounded to thousandths, and a
    place is ``file:line``. There is no build time, and no path from outside the procedure's folder.
    """
    return {"format": FORMAT, **plain(edition, worked_out(language))}


def edition_json(edition: Edition) -> bytes:
    """``edition.json``: the same bytes for the same edition."""
    text = json.dumps(edition_data(edition), ensure_ascii=False, indent=2, allow_nan=False)
    # Half a surrogate pair has no UTF-8; as backslash escape it is still the JSON for itself.
    return (text + "\n").encode("utf-8", "backslashreplace")


def plain(value: object, told: WorkedOut = WORKED_OUT) -> Any:
    """A record and all within it as dicts, lists, text and numbers, with what is worked out of it."""
    match value:
        case StrEnum():
            return value.value
        case None | bool() | int() | float() | str():
            return value
        case Decimal() | Fraction():
            return _number(value)
        case Item() | Torque():
            return str(value)
        case Place():
            return f"{_as_given(value.file)}:{value.line}"
        case tuple():
            return [plain(part, told) for part in value]
    if not is_dataclass(value):
        raise TypeError(f"an edition cannot hold a {type(value).__name__}")
    record = {part.name: plain(getattr(value, part.name), told) for part in fields(value)}
    return record | {key: plain(work_out(value), told) for key, work_out in told.get(type(value), {}).items()}


def _number(value: Decimal | Fraction) -> int | float:
    rounded = round(Fraction(value), 3)
    return rounded.numerator if rounded.denominator == 1 else float(rounded)


def _as_given(path: str) -> str:
    """A path as typed; of one that starts at the root of a disk only the name, which tells nothing of the machine."""
    if PurePosixPath(path).is_absolute() or PureWindowsPath(path).is_absolute():
        return PureWindowsPath(path).name
    return path
