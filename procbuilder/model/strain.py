"""What work does to a body: loads lifted by hand, and tools that shake the hand.

Lifting: revised NIOSH lifting equation (NIOSH 94-110, rev. 9/2021), for two hands and no turning.
Vibration: Directive 2002/44/EC; points as in the ready reckoner of HSE. Advice only, and never
divided by the number of people.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from procbuilder.model.origin import Place


@dataclass(frozen=True, slots=True)
class Lift:
    """A load lifted by hand. What cannot be read is None: nobody judges a lift by halves."""

    place: Place
    item: str
    load: float | None
    """kg."""
    path: tuple[float, float, float] | None
    """cm: height of the hands where it is taken up, where it is put down, and how far they reach."""

    @property
    def limits(self) -> tuple[float | None, ...]:
        """The recommended weight limit at both ends; None outside the scope of the equation."""
        if self.path is None:
            return ()
        low, high, reach = self.path
        return tuple(weight_limit(reach, height, abs(high - low)) for height in (low, high))


@dataclass(frozen=True, slots=True)
class Vibration:
    """A tool that shakes the hand. What cannot be read is None."""

    place: Place
    tool: str
    level: float | None
    """m/s²."""
    minutes: float | None


ACTION, LIMIT = 2.5, 5.0
"""Daily exposure in m/s² at which something must be done, and that must not be passed."""
ACTION_POINTS = 100


@dataclass(frozen=True, slots=True)
class Measures:
    """The constants of the lifting equation in one system of units."""

    load: float
    near: float
    far: float
    """Reach below which it counts as ``near``, and beyond which the equation gives nothing."""
    knuckle: float
    """Height of the hands at which lifting is easiest."""
    per_height: float
    highest: float
    per_travel: float
    shortest: float
    longest: float


METRIC = Measures(23, 25, 63, 75, 0.003, 175, 4.5, 25, 175)
"""kg and cm."""
INCH = Measures(51, 10, 25, 30, 0.0075, 70, 1.8, 10, 70)
"""lb and inches."""


def weight_limit(
    reach: float, height: float, travel: float, *, turned: float = 0, factors: float = 0.95, units: Measures = METRIC
) -> float | None:
    """The recommended weight limit at one end of a lift; None outside the scope of the equation.

    Args:
        reach: from between the ankles to the hands, level.
        height: of the hands above the floor.
        travel: how far the hands go up or down.
        turned: degrees to the side.
        factors: frequency times grip; 0.95 is a rare lift with a fair grip, the worse of its two values.
    """
    if not (0 <= reach <= units.far and 0 <= height <= units.highest and 0 <= travel <= units.longest) or turned > 135:
        return None
    horizontal = units.near / max(reach, units.near)
    vertical = 1 - units.per_height * abs(height - units.knuckle)
    distance = 0.82 + units.per_travel / max(travel, units.shortest)
    return units.load * horizontal * vertical * distance * (1 - 0.0032 * turned) * factors


def vibration_points(level: float, minutes: float) -> float:
    """Points of one tool: 100 are the action value, 400 the limit; points of several tools add up."""
    return 2 * level**2 * minutes / 60


def daily_exposure(tools: Iterable[tuple[float, float]]) -> float:
    """A(8) in m/s² of tools given as level in m/s² and minutes."""
    return math.sqrt(sum(level**2 * minutes / 480 for level, minutes in tools))
