"""What is believed of the steps after the practice log has been read: the next time of a step, or of several."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp

import numpy as np
from numpy.typing import NDArray

from procbuilder.infer.prior import REFERENCE, experience
from procbuilder.model.lognormal import Lognormal

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Belief:
    """Logarithms of minutes."""

    steps: tuple[str, ...]
    counts: tuple[int, ...]
    """Rows of each step."""
    centre: Array
    """Mean of each step at the reference, and last the learning rate per doubling."""
    doubt: Array
    """Covariance of these."""
    rest: Array
    """Spread of each step from run to run, as a variance; rows far off count little."""
    whole: Array
    """The same with rows far off counted in full."""
    excess: Array
    """What the mean of a step's runs lies above its middle, as a factor: rows far off count in full."""
    between: float
    """Variance between people and their days."""
    own_rate: float
    """Variance between the learning rates of people."""

    def next(self, step: str, times: int = REFERENCE) -> Lognormal:
        """Minutes of the next run of a step, by somebody new to us who does it for the n-th time."""
        centre, spread = self._ahead([step], times)
        return Lognormal(float(centre[0]), float(np.sqrt(spread[0, 0])))

    def total(self, steps: Sequence[str], times: int = REFERENCE) -> Lognormal:
        """Minutes of several steps done in one run: their sum, taken as lognormal with its mean and variance.

        A slow person is slow in all of them, so the steps are not independent.
        """
        centre, spread = self._ahead(steps, times)
        at = [self.steps.index(step) for step in steps]
        means = np.exp(centre + np.diag(spread) / 2) * self.excess[at]
        spread = spread + np.diag(self.whole[at] - self.rest[at])
        variance = float((np.outer(means, means) * np.expm1(spread)).sum())
        return Lognormal.with_moments(float(means.sum()), variance)

    @property
    def rate(self) -> float:
        """Share of the time that is left after each doubling of the number of times done."""
        return exp(float(self.centre[-1]))

    def _ahead(self, steps: Sequence[str], times: int) -> tuple[Array, Array]:
        """Mean and covariance of the logarithms of the next run."""
        at = [self.steps.index(step) for step in steps]
        doublings = experience(times)
        rows = np.zeros((len(at), len(self.centre)))
        rows[np.arange(len(at)), at] = 1
        rows[:, -1] = doublings
        shared = self.between + doublings**2 * self.own_rate
        return rows @ self.centre, rows @ self.doubt @ rows.T + shared + np.diag(self.rest[at])
