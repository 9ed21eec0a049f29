"""Work study: from readings to observed, normal and standard time, and how many readings it takes.

Source of the terms: work measurement as taught since the ILO's introduction to work study; "normal" is the
American word for its "basic" time. All times of one call share one unit; results have the same unit.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from statistics import median, stdev

UNUSUAL = 2
"""A reading is unusual when it is more than this many times the median, or less than the median divided by it."""


class Convention(StrEnum):
    """What an allowance is a share of. 15 % of 15.36 min gives 18.07 or 17.66 min, so it is always named."""

    DAY = "of the working day"
    """Standard = normal / (1 − share)."""
    JOB = "of the job time"
    """Standard = normal × (1 + share)."""


@dataclass(frozen=True, slots=True)
class Allowance:
    """Time for rest, fetching and interruptions, with the convention of its share."""

    share: Decimal
    """0.15 is 15 %."""
    convention: Convention

    def __post_init__(self) -> None:
        if not 0 <= self.share < 1:
            raise ValueError(f"an allowance is a share from 0 to below 1, not {self.share}")

    def standard(self, normal: Decimal) -> Decimal:
        """Standard time of a normal time."""
        if self.convention is Convention.DAY:
            return normal / (1 - self.share)
        return normal * (1 + self.share)


@dataclass(frozen=True, slots=True)
class Element:
    """One element of work: its readings, those that were set aside, and how fast the person was rated."""

    readings: tuple[Decimal, ...]
    """Those that count."""
    rating: Decimal = Decimal(1)
    """1.2 when the person worked at 120 % of the normal pace."""
    dropped: tuple[Decimal, ...] = ()
    """Unusual readings, kept to be told."""

    @property
    def observed(self) -> Decimal:
        """Mean of the readings that count."""
        return sum(self.readings, Decimal(0)) / len(self.readings)

    @property
    def normal(self) -> Decimal:
        """Observed time × rating."""
        return self.observed * self.rating


def element(readings: Sequence[Decimal], rating: Decimal = Decimal(1)) -> Element:
    """An element with its unusual readings set aside before averaging."""
    apart = unusual(readings)
    return Element(tuple(reading for reading in readings if reading not in apart), rating, apart)


def unusual(readings: Sequence[Decimal]) -> tuple[Decimal, ...]:
    """Readings that are more than twice, or less than half, the median of all."""
    middle = median(readings)
    return tuple(reading for reading in readings if reading > UNUSUAL * middle or reading * UNUSUAL < middle)


def readings_for_share(readings: Sequence[Decimal], share: Fraction, z: Fraction = Fraction(2)) -> Fraction:
    """Readings needed so that the mean lies within a share of itself: (z/share · √(n·Σx² − (Σx)²) / Σx)².

    The usual form, with 40 for 95 % and ±5 % (z = 2 and the spread of the readings themselves). Round up.
    """
    values = [Fraction(reading) for reading in readings]
    total, squares = sum(values, Fraction(0)), sum((value * value for value in values), Fraction(0))
    return (z / share) ** 2 * (len(values) * squares - total * total) / (total * total)


def readings_for_error(readings: Sequence[Decimal], error: float, z: float = 1.96) -> float:
    """Readings needed so that the mean lies within an error in the readings' unit: (z · s / error)².

    With the sample spread s (divided by n − 1) and z = 1.96 for 95 %. Round up.
    """
    return (z * stdev(map(float, readings)) / error) ** 2


def whole_readings(needed: Fraction | float) -> int:
    """A needed number of readings, rounded up."""
    return math.ceil(needed)
