"""Three-point estimates: if all goes well, most likely, if it goes badly.

Any one unit of time.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

Points = tuple[float, float, float]
"""Low, likely, high."""


@dataclass(frozen=True, slots=True)
class Sum:
    """A total of several steps, with two ranges."""

    likely: float
    """Sum of the likely values."""
    worst: tuple[float, float]
    """All steps go well, all go badly."""
    usual: tuple[float, float]
    """Steps independent of each other: the distances to the likely value added as roots of squares."""


def added(steps: Sequence[Points]) -> Sum:
    """The total of steps that are done one after the other."""
    likely = sum(points[1] for points in steps)
    below = math.hypot(*(points[1] - points[0] for points in steps))
    above = math.hypot(*(points[2] - points[1] for points in steps))
    worst = sum(points[0] for points in steps), sum(points[2] for points in steps)
    return Sum(likely, worst, (likely - below, likely + above))
