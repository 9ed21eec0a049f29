"""Learning curves. "80 %" means two things: the model is in the name of every function.

Unit model (Crawford): each doubling of the number brings the time of *that* unit to the rate.
Cumulative-average model (Wright): each doubling brings the *mean of all so far* to the rate.
"""

import math


def exponent(rate: float) -> float:
    """b = log₂(rate): −0.3219 for 80 %."""
    return math.log2(rate)


def unit_time(first: float, number: int, rate: float) -> float:
    """Unit model: time of one unit, in the unit of the first one's time."""
    return first * math.pow(number, exponent(rate))


def unit_total(first: float, number: int, rate: float) -> float:
    """Unit model: time of the first ``number`` units together."""
    return math.fsum(unit_time(first, each, rate) for each in range(1, number + 1))


def average_time(first: float, number: int, rate: float) -> float:
    """Cumulative-average model: mean time of the first ``number`` units."""
    return first * math.pow(number, exponent(rate))


def average_total(first: float, number: int, rate: float) -> float:
    """Cumulative-average model: time of the first ``number`` units together."""
    return number * average_time(first, number, rate)
