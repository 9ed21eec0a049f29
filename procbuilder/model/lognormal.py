"""Lognormal times: never below zero, longer on the late side, as working times are. Any one unit of time."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist

_STANDARD = NormalDist()


@dataclass(frozen=True, slots=True)
class Lognormal:
    """A time whose natural logarithm is normal."""

    mu: float
    """Mean of the logarithm."""
    sigma: float
    """Standard deviation of the logarithm."""

    @classmethod
    def with_moments(cls, mean: float, variance: float) -> "Lognormal":
        """The lognormal of a given mean and variance."""
        square = math.log1p(variance / mean**2)
        return cls(math.log(mean) - square / 2, math.sqrt(square))

    @property
    def mean(self) -> float:
        """exp(μ + σ²/2)."""
        return math.exp(self.mu + self.sigma**2 / 2)

    @property
    def variance(self) -> float:
        """mean² · (exp(σ²) − 1)."""
        return self.mean**2 * math.expm1(self.sigma**2)

    def quantile(self, share: float) -> float:
        """The time within which this share of the runs stays."""
        return math.exp(self.mu + self.sigma * _STANDARD.inv_cdf(share))


def added(parts: Sequence[Lognormal]) -> Lognormal:
    """The sum of independent lognormal times, taken as lognormal with its exact mean and variance.

    Source: the method of L. F. Fenton, 1960.
    """
    return Lognormal.with_moments(sum(part.mean for part in parts), sum(part.variance for part in parts))
