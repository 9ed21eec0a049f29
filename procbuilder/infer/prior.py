"""What is taken to hold about times before any is logged. Spreads are of natural logarithms: 0.2 is about 20 %."""

from dataclasses import dataclass
from math import log2

PRACTISED = 10
"""From this time on nothing more is learned."""
REFERENCE = 3
"""Typed times, and the estimate itself, mean the third time or later."""


@dataclass(frozen=True, slots=True)
class Prior:
    """The stated spreads. ``person`` to ``unknown`` were chosen on open data: five jobs, 13 to 18 people each."""

    person: float = 0.16
    """Between people."""
    sitting: float = 0.10
    """Between the days of one person."""
    people_weight: float = 10
    """Number of people, and of sittings, for which these two count."""
    step: float = 0.5
    """Of one step from run to run."""
    pool_weight: float = 20
    """Number of rows for which it counts."""
    step_weight: float = 16
    """Number of rows of a single step for which the spread of all steps counts."""
    tails: float = 10
    """Degrees of freedom: the fewer, the less a row far off moves the estimate."""
    unknown: float = 0.8
    """Between steps of which no time is typed."""
    operation: float = 0.7
    """What steps of the same operation share of that; stated, not chosen on data."""
    base: float = 2.0
    """Of the level that these steps share, around three minutes."""
    level: float = 0.3
    """Of the level that typed times share: they are wrong together."""
    typed: float = 0.4
    """Of one typed time without low and high."""
    rate: float = 0.88
    """Share of the time that is left after each doubling of the number of times done (unit model)."""
    rate_spread: float = 0.07
    own_rate: float = 0.05
    """Between people, of the logarithm of their rate."""


PRIOR = Prior()


@dataclass(frozen=True, slots=True)
class StepPrior:
    """What is known of a step apart from the log."""

    minutes: float
    """Typed likely minutes, the third time or later."""
    spread: float
    """Of its logarithm."""


def experience(times: int) -> float:
    """Doublings between the reference and the n-th time; it stands still from ``PRACTISED`` on."""
    return log2(min(times, PRACTISED) / REFERENCE)
