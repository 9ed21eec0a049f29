"""Sizes that stand in the name of a thing: its thread, its spanners, and from where to where a wrench reads."""

import re
from decimal import Decimal
from fractions import Fraction

from procbuilder.model.fastener import NO_SIZES, NamedThread, Sizes, inches

_METRIC = re.compile(r"\bM(\d{1,2})(?:\s*[x×]\s*(\d(?:\.\d{1,2})?)(?![\d.]))?(?![\d.])")
_INCH = re.compile(r"(?<![\d/])([1-9]/[1-9]\d?|1)(?:\s*-\s*\d{1,2})?\s*UN[CF]\b")
_CLASS = re.compile(r"(?<![\d.])(4\.6|5\.6|8\.8|10\.9|12\.9)(?![\d.])")
_SPANNER = re.compile(r"(?<![\d.x×])(?<![x×] )(\d{1,2}(?:\.5)?)\s*mm\b(?!\s*(?:long|lang)\b)")
_INCH_SPANNER = re.compile(r"(?<![\d/])((?:1 )?[1-9]/[1-9]\d?|[1-9])\s*in\b(?!\s*long)")
_SCALE = re.compile(r"(\d{1,4}(?:\.\d)?)\s*(?:-|–|to|bis)\s*(\d{1,4}(?:\.\d)?)\s*N\s*[·.*-]?\s*m\b", re.IGNORECASE)
_LARGEST_PITCH = 3


def read_sizes(name: str) -> Sizes:
    """The sizes in a name such as ``M8 bolt, 13 mm``. A thread tells no spanner for certain, nor a spanner a thread."""
    if not any(sign.isdecimal() for sign in name):
        return NO_SIZES
    inch, scale = _INCH.search(name), _SCALE.search(name)
    return Sizes(
        thread=_thread(name),
        inch_thread=Fraction(inch[1]) if inch else None,
        spanners=tuple(Decimal(match[1]) for match in _SPANNER.finditer(name)),
        inch_spanners=tuple(inches(match[1]) for match in _INCH_SPANNER.finditer(name)),
        scale=(Fraction(scale[1]), Fraction(scale[2])) if scale else None,
    )


def _thread(name: str) -> NamedThread | None:
    """The first metric thread; a number behind ``x`` is a pitch up to 3 mm, else a length."""
    match = _METRIC.search(name)
    if match is None:
        return None
    pitch = float(match[2]) if match[2] and float(match[2]) <= _LARGEST_PITCH else None
    strength = _CLASS.search(name)
    return NamedThread(f"M{int(match[1])}", pitch, strength[1] if strength else "")
