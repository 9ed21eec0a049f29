"""The first estimate: minutes of the steps, summed exactly and rounded up once."""

import math
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.worked import Basis, Estimate, StepTime

_HUNDREDTH = Decimal("0.01")
Minutes = tuple[Fraction, Fraction, Fraction]
"""Low, likely and high."""


def estimate(procedure: Procedure) -> Estimate:
    """Typed minutes of each step, else the length of its footage, which is a lower bound.

    Steps with ``Only if`` have their minutes but are in no total; nor is waiting that overlaps with work.
    """
    main = [step for step in procedure.steps if not step.all("Only if")]
    low, likely, high = (hours(sum((_minutes(step)[place] for step in main), Fraction(0))) for place in range(3))
    waits = (wait.minutes.likely for step in main for wait in step.waits if not wait.overlaps)
    return Estimate(
        steps=tuple(_step_time(step) for step in procedure.steps),
        low=low,
        likely=likely,
        high=high,
        waiting=sum(waits, Decimal(0)),
        stated=procedure.front["stated time"],
    )


def hours(minutes: Fraction) -> Decimal:
    """Hours in tenths, rounded up: 42 minutes are 0.7 h, one second more is 0.8 h.

    Trade habit: labour is quoted in tenths of an hour, one tenth being six minutes.
    """
    return Decimal(math.ceil(minutes / 6)) / 10


def _basis(step: Step) -> Basis:
    if step.minutes is not None:
        return Basis.TYPED
    return Basis.FOOTAGE if step.footage > 0 else Basis.NOTHING


def _minutes(step: Step) -> Minutes:
    if step.minutes is not None:
        return Fraction(step.minutes.low), Fraction(step.minutes.likely), Fraction(step.minutes.high)
    footage = max(step.footage, Fraction(0)) / 60
    return footage, footage, footage


def _step_time(step: Step) -> StepTime:
    typed = step.minutes
    low, likely, high = (typed.low, typed.likely, typed.high) if typed else map(_shown, _minutes(step))
    return StepTime(step.id, _basis(step), low, likely, high, step.footage, extra=bool(step.all("Only if")))


def _shown(minutes: Fraction) -> Decimal:
    """To the hundredth of a minute, for one step; totals are summed from the exact values."""
    return (Decimal(minutes.numerator) / minutes.denominator).quantize(_HUNDREDTH, ROUND_HALF_UP)
