"""Torques as typed, stage by stage, and the same in another unit. A value is never changed, only shown beside."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum
from fractions import Fraction


class TorqueUnit(StrEnum):
    """Units of a tightening, as written."""

    NEWTON_METRE = "N·m"
    NEWTON_CENTIMETRE = "N·cm"
    KILONEWTON_METRE = "kN·m"
    POUND_FOOT = "lbf·ft"
    POUND_INCH = "lbf·in"
    KILOGRAM_METRE = "kgf·m"
    KILOGRAM_CENTIMETRE = "kgf·cm"
    DEGREE = "°"
    TURN = "turn"


_POUND = Fraction("0.45359237") * Fraction("9.80665")
"""Newtons of a pound-force: exact by the definitions of the pound and of standard gravity (NIST SP 811, App. B)."""
NEWTON_METRES = {
    TorqueUnit.NEWTON_METRE: Fraction(1),
    TorqueUnit.NEWTON_CENTIMETRE: Fraction(1, 100),
    TorqueUnit.KILONEWTON_METRE: Fraction(1000),
    TorqueUnit.POUND_FOOT: _POUND * Fraction("0.3048"),
    TorqueUnit.POUND_INCH: _POUND * Fraction("0.0254"),
    TorqueUnit.KILOGRAM_METRE: Fraction("9.80665"),
    TorqueUnit.KILOGRAM_CENTIMETRE: Fraction("9.80665") / 100,
}
"""Exact newton metres of each unit of torque."""

_POUNDS, _SEPARATOR = r"(?:lbf|lbs|lb|pounds|pound)", r"\s*[·.*⋅ -]?\s*"
_FEET, _INCHES = r"(?:ft|foot|feet)", r"(?:inches|inch|in)"
_PATTERNS = (  # in every language at once: no word of one means another unit in another
    (TorqueUnit.NEWTON_CENTIMETRE, rf"N{_SEPARATOR}cm\b|cN{_SEPARATOR}m\b"),
    (TorqueUnit.KILONEWTON_METRE, rf"kN{_SEPARATOR}m\b"),
    (TorqueUnit.NEWTON_METRE, rf"N{_SEPARATOR}m\b|newton{_SEPARATOR}met(?:er|re)s?\b"),
    (TorqueUnit.POUND_FOOT, rf"{_POUNDS}{_SEPARATOR}{_FEET}\b|{_FEET}{_SEPARATOR}{_POUNDS}\b"),
    (TorqueUnit.POUND_INCH, rf"{_POUNDS}{_SEPARATOR}{_INCHES}\b|{_INCHES}{_SEPARATOR}{_POUNDS}\b"),
    (TorqueUnit.KILOGRAM_CENTIMETRE, rf"kgf?{_SEPARATOR}cm\b"),
    (TorqueUnit.KILOGRAM_METRE, rf"kgf?{_SEPARATOR}m\b"),
    (TorqueUnit.DEGREE, r"°|(?:degrees?|deg|Grad)\b"),
    (TorqueUnit.TURN, r"(?:turns?|Umdrehung(?:en)?)\b"),
)
_ANY_UNIT = "|".join(f"(?P<{unit.name}>{pattern})" for unit, pattern in _PATTERNS)
_UNIT = re.compile(rf"(?<![^\W\d_])(?:{_ANY_UNIT})", re.IGNORECASE)
_NUMBER = r"\d{1,6}(?:\.\d{1,4})?"
_STAGE = re.compile(
    rf"(?<![\w.,])(?P<low>{_NUMBER})(?:\s*(?:-|–|to|bis)\s*(?P<high>{_NUMBER})|\s*(?:±|\+/-)\s*(?P<within>{_NUMBER}))?"
    rf"\s*(?:{_ANY_UNIT}|(?P<bare>(?=\s*(?:,\s|;|\+|/|then\b|and\b|dann\b|danach\b|und\b))))",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage of a tightening."""

    low: Decimal
    high: Decimal
    """The same as ``low`` unless a range was typed."""
    unit: TorqueUnit
    within: Decimal | None = None
    """The number behind ``±``."""

    @property
    def is_torque(self) -> bool:
        """False for an angle."""
        return self.unit in NEWTON_METRES

    @property
    def newton_metres(self) -> tuple[Fraction, Fraction]:
        """Exact lowest and highest value; KeyError for an angle."""
        factor, spread = NEWTON_METRES[self.unit], Fraction(self.within or 0)
        return (Fraction(self.low) - spread) * factor, (Fraction(self.high) + spread) * factor

    def __str__(self) -> str:
        number = f"{self.low:f}" if self.low == self.high else f"{self.low:f}–{self.high:f}"
        spread = f" ± {self.within:f}" if self.within is not None else ""
        return f"{number}{spread}°" if self.unit is TorqueUnit.DEGREE else f"{number}{spread} {self.unit}"


@dataclass(frozen=True, slots=True)
class Torque:
    """The value of a tightening: as typed, and as read. Without a text it is a blank."""

    text: str = ""
    stages: tuple[Stage, ...] = ()
    units: frozenset[TorqueUnit] = frozenset()
    """All that stand in the text, also those without a number."""
    has_number: bool = False
    stage: int = 0
    """The one stage that its step does; 0 when the step does all."""

    def __bool__(self) -> bool:
        return bool(self.text)

    def __str__(self) -> str:
        return self.text

    @property
    def newton_metres(self) -> tuple[Fraction, ...]:
        """The highest value of each stage that is a torque, in order."""
        return tuple(stage.newton_metres[1] for stage in self.stages if stage.is_torque)

    @property
    def angles(self) -> tuple[Stage, ...]:
        """The stages that are turned by an angle."""
        return tuple(stage for stage in self.stages if not stage.is_torque)

    @property
    def has_torque(self) -> bool:
        """A unit of torque stands in it, not only one of angle."""
        return any(unit in NEWTON_METRES for unit in self.units)

    @property
    def in_other_unit(self) -> tuple[Stage, ...]:
        """The stages in lbf·ft or lbf·in where metric ones were typed, else in N·m; none when there is no torque.

        Rounded to whole numbers from 10 on and to tenths below: no more than was typed can be set on a wrench.
        """
        return tuple(_converted(self.stages)) if self.newton_metres else ()


BLANK = Torque()
_LOOK_UP = "look up"


def read_torque(text: str, stage: int = 0) -> Torque:
    """The value of a Torque field, or one that was said; ``look up`` is a blank."""
    if text.casefold() == _LOOK_UP:
        return Torque(stage=stage)
    units = frozenset(unit for match in _UNIT.finditer(text) if (unit := _unit_of(match)))
    return Torque(text, _stages(text), units, any(sign.isdecimal() for sign in text), stage)


def _stages(text: str) -> tuple[Stage, ...]:
    """The stages of ``15 then 30 N·m, then 90°``; a number without a unit takes that of the next stage.

    Numbers that no unit follows at last are left out, and so are words such as "half a turn".
    """
    found = [(match, _unit_of(match)) for match in _STAGE.finditer(text)]
    result: list[Stage] = []
    following: TorqueUnit | None = None
    for match, unit in reversed(found):
        following = unit or following
        if following is not None:
            low = Decimal(match["low"])
            within = Decimal(match["within"]) if match["within"] else None
            result.append(Stage(low, Decimal(match["high"] or match["low"]), following, within))
    return tuple(reversed(result))


def _unit_of(match: re.Match[str]) -> TorqueUnit | None:
    return next((unit for unit, _ in _PATTERNS if match[unit.name]), None)


def _converted(typed: Sequence[Stage]) -> Iterator[Stage]:
    for stage in typed:
        if not stage.is_torque:
            yield stage
            continue
        unit = _other(stage)
        factor = NEWTON_METRES[stage.unit] / NEWTON_METRES[unit]
        within = None if stage.within is None else _rounded(stage.within, factor)
        yield Stage(_rounded(stage.low, factor), _rounded(stage.high, factor), unit, within)


def _other(stage: Stage) -> TorqueUnit:
    if stage.unit not in _NEWTONS:
        return TorqueUnit.NEWTON_METRE
    return TorqueUnit.POUND_FOOT if stage.newton_metres[1] >= _SMALL else TorqueUnit.POUND_INCH


_NEWTONS = (TorqueUnit.NEWTON_METRE, TorqueUnit.NEWTON_CENTIMETRE, TorqueUnit.KILONEWTON_METRE)
_SMALL = 10
"""N·m below which workshop tables give inches."""


def _rounded(number: Decimal, factor: Fraction) -> Decimal:
    exact = Fraction(number) * factor
    step = Decimal(1) if exact >= 10 else Decimal("0.1")
    return (Decimal(exact.numerator) / Decimal(exact.denominator)).quantize(step, ROUND_HALF_UP).normalize() + 0
