"""Frozen records as JSON and back; exact times become text such as ``1001/30``."""

from dataclasses import fields, is_dataclass
from enum import StrEnum
from fractions import Fraction
from types import NoneType
from typing import Any, TypeVar, get_args, get_origin, get_type_hints

Record = TypeVar("Record")


def stored(value: Any) -> Any:
    """A record, with all records and tuples in it, as JSON."""
    if isinstance(value, Fraction):
        return str(value)
    if isinstance(value, tuple):
        return [stored(part) for part in value]
    if is_dataclass(value):
        return {entry.name: stored(getattr(value, entry.name)) for entry in fields(value)}
    return value


def restored(kind: type[Record], data: dict[str, Any]) -> Record:
    """The record that ``stored`` wrote.

    Raises:
        KeyError: It was written for another kind.
    """
    hints = get_type_hints(kind)
    return kind(**{entry.name: _value(hints[entry.name], data[entry.name]) for entry in fields(kind)})  # type: ignore[arg-type]


def _value(hint: Any, data: Any) -> Any:
    if data is None:
        return None
    inner = [each for each in get_args(hint) if each is not NoneType]
    if get_origin(hint) is tuple:
        each = inner[:1] * len(data) if inner[1:] == [...] else inner
        return tuple(_value(one, part) for one, part in zip(each, data, strict=True))
    if NoneType in get_args(hint):
        return _value(inner[0], data)
    if isinstance(hint, type) and issubclass(hint, Fraction | StrEnum):
        return hint(data)
    return restored(hint, data) if isinstance(hint, type) and is_dataclass(hint) else data
