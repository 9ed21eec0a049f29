"""The first and the tenth time of a job: a range between both ends of the learning rate, never one figure."""

import math
from decimal import Decimal
from fractions import Fraction
from statistics import NormalDist
from typing import TYPE_CHECKING

from procbuilder.infer.prior import PRIOR, REFERENCE
from procbuilder.model.learning import unit_time

if TYPE_CHECKING:
    from procbuilder.infer.belief import Belief

_EIGHT_OF_TEN = NormalDist().inv_cdf(0.9)
_HUNDREDTH = Decimal("0.01")


def learning_rate(belief: "Belief | None") -> tuple[Decimal, Decimal]:
    """Between which shares of the time each doubling leaves (unit model): as stated, or what logs make of it."""
    middle, spread = math.log(PRIOR.rate), PRIOR.rate_spread
    if belief:
        middle, spread = float(belief.centre[-1]), math.sqrt(float(belief.doubt[-1, -1]))
    low, high = (math.exp(middle + side * _EIGHT_OF_TEN * spread) for side in (-1, 1))
    return Decimal(low).quantize(_HUNDREDTH), min(Decimal(high).quantize(_HUNDREDTH), Decimal(1))


def at_both_ends(likely: Fraction, times: int, rate: tuple[Decimal, Decimal]) -> tuple[Fraction, Fraction]:
    """Likely minutes of the n-th time from those of the third, at both rates, the shorter first."""
    both = sorted(unit_time(1, times, float(each)) / unit_time(1, REFERENCE, float(each)) for each in rate)
    return likely * Fraction(both[0]), likely * Fraction(both[1])
