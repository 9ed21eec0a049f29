"""Three-point estimates: if all goes well, most likely, if it goes badly.

Any one unit of time. PERT has two variances that are not equal; each function says in its name which it gives.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist

Points = tuple[float, float, float]
"""Low, likely, high."""


def mean(points: Points) -> float:
    """(a + 4m + b) / 6, the mean of both PERT forms."""
    low, likely, high = points
    return (low + 4 * likely + high) / 6


def classic_variance(points: Points) -> float:
    """((b − a) / 6)²: the range is taken for six standard deviations, as in the first PERT reports."""
    return ((points[2] - points[0]) / 6) ** 2


def beta_shape(points: Points) -> tuple[float, float]:
    """α and β of the beta distribution with λ = 4: 1 + 4(m − a)/(b − a) and 1 + 4(b − m)/(b − a)."""
    low, likely, high = points
    return 1 + 4 * (likely - low) / (high - low), 1 + 4 * (high - likely) / (high - low)


def beta_variance(points: Points) -> float:
    """(μ − a)(b − μ) / 7: the exact variance of that beta distribution."""
    middle = mean(points)
    return (middle - points[0]) * (points[2] - middle) / 7


def chance_within(deadline: float, mean: float, variance: float) -> float:
    """Probability of being ready by a deadline when the total is normal: Φ((D − Σμ) / √Σσ²)."""
    return NormalDist(mean, math.sqrt(variance)).cdf(deadline)


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
