"""Learning curves by the unit model (Crawford): each doubling of the number brings the time of *that* unit to the rate.

The cumulative-average model (Wright) means the mean of all so far by the same "80 %"; it is not used here.
"""

import math


def exponent(rate: float) -> float:
    """b = log₂(rate): −0.3219 for 80 %."""
    return math.log2(rate)


def unit_time(first: float, number: int, rate: float) -> float:
    """Time of one unit, in the unit of the first one's time."""
    return first * math.pow(number, exponent(rate))
