"""What work does to a body: loads lifted by hand, and tools that shake the hand.

Lifting: revised NIOSH lifting equation (NIOSH 94-110, rev. 9/2021), for two hands and no turning.
A team carries less than the sum of its members (HSE L23: about two thirds for two, half for three).
Vibration: Directive 2002/44/EC; points as in the ready reckoner of HSE, never divided by the number of people.
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


_RARE = 0.95
"""Frequency times grip: a rare lift with a fair grip, the worse of its two values."""


def weight_limit(reach: float, height: float, travel: float) -> float | None:
    """The recommended weight limit in kg at one end of a lift; None outside the scope of the equation. All in cm.

    Args:
        reach: from between the ankles to the hands, level.
        height: of the hands above the floor.
        travel: how far the hands go up or down.
    """
    if not (0 <= reach <= 63 and 0 <= height <= 175 and 0 <= travel <= 175):
        return None
    horizontal = 25 / max(reach, 25)
    vertical = 1 - 0.003 * abs(height - 75)
    distance = 0.82 + 4.5 / max(travel, 25)
    return 23 * horizontal * vertical * distance * _RARE


_TEAM = {1: 1.0, 2: 2 / 3, 3: 1 / 2}
"""What part of the sum of their limits a team of so many carries (HSE L23, Manual Handling Operations Regulations)."""


def team_limit(limit: float, people: int) -> float:
    """kg for so many people, each of whom alone may lift ``limit``; more than three get in each other's way."""
    team = min(people, 3)
    return limit * team * _TEAM[team]


def vibration_points(level: float, minutes: float) -> float:
    """Points of one tool: 100 are the action value, 400 the limit; points of several tools add up."""
    return 2 * level**2 * minutes / 60


def daily_exposure(tools: Iterable[tuple[float, float]]) -> float:
    """A(8) in m/s² of tools given as level in m/s² and minutes."""
    return math.sqrt(sum(level**2 * minutes / 480 for level, minutes in tools))
