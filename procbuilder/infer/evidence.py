"""What is known of the minutes of each step: every source, the best first."""

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import log
from typing import TYPE_CHECKING

from procbuilder.infer.alike import NO_NEIGHBOURS, Neighbours, borrowed, kinds
from procbuilder.infer.prior import PRIOR, StepPrior
from procbuilder.model.estimate import Basis, Evidence, OddTime
from procbuilder.model.footage import FootageSplit
from procbuilder.model.practice import Run
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

if TYPE_CHECKING:
    from procbuilder.infer.belief import Belief

_HUNDREDTH = Decimal("0.01")
_TENTH = Decimal("0.1")
_EIGHT_OF_TEN = 2.5631
"""Spreads of a normal between which eight of ten lie: from the 10th to the 90th of a hundred."""


def evidence(step: Step, belief: "Belief | None", split: FootageSplit | None = None) -> tuple[Evidence, ...]:
    """Logged runs, then typed minutes, then film; empty when there is none of them.

    Of film the hands-on seconds count; without a split the whole length, which may hold talk and cuts.
    """
    found = []
    if belief and step.id in belief.steps:
        time = belief.next(step.id)
        low, likely, high = (_of_float(time.quantile(share)) for share in (0.1, 0.5, 0.9))
        found.append(Evidence(Basis.LOG, low, likely, high, belief.counts[belief.steps.index(step.id)]))
    if typed := step.minutes:
        found.append(Evidence(Basis.TYPED, typed.low, typed.likely, typed.high))
    if (seconds := hands_on(step, split)) > 0:
        minutes = shown(seconds / 60)
        cut = len(step.spans) > 1 or step.skips or (split and split.cuts)
        basis = Basis.CUT if cut else Basis.FOOTAGE
        found.append(Evidence(basis, minutes, minutes, minutes, len(step.spans)))
    return tuple(found)


def hands_on(step: Step, split: FootageSplit | None) -> Fraction:
    """Seconds of work that the film shows; none when it does not run at the speed at which things happened."""
    if split is None:
        return step.footage
    return split.hands_on if split.speed == 1 else Fraction(0)


def believed(
    procedure: Procedure, runs: Sequence[Run], neighbours: Neighbours = NO_NEIGHBOURS, own: OwnWords = NO_OWN_WORDS
) -> "tuple[Belief | None, tuple[OddTime, ...]]":
    """What the practice log says of the steps, held by the same operations of other procedures; None without rows."""
    if not runs:
        return None, ()
    from procbuilder.infer.learn import learn

    steps = procedure.steps
    known = {step.id: prior for step in steps if (prior := _typed(step))}
    done = {run.step for run in runs}
    untimed = (step for step in steps if step.id in done and step.id not in known)
    here = kinds(untimed, procedure.front["language"], own)
    others, there = borrowed(here, neighbours)
    belief, odd = learn([*runs, *others], known, kinds=here | there)
    return belief, tuple(each for each in odd if each.step in done)


def _typed(step: Step) -> StepPrior | None:
    """Typed minutes as a prior; low and high are taken for the 10th and the 90th of a hundred runs."""
    typed = step.minutes
    if typed is None or typed.likely <= 0:
        return None
    wide = log(typed.high / typed.low) / _EIGHT_OF_TEN if typed.low > 0 else PRIOR.typed
    return StepPrior(float(typed.likely), max(wide, PRIOR.typed))


def shown(minutes: Fraction) -> Decimal:
    """To the hundredth of a minute, for one step; totals are summed from the exact values."""
    return (Decimal(minutes.numerator) / minutes.denominator).quantize(_HUNDREDTH, ROUND_HALF_UP)


def _of_float(minutes: float) -> Decimal:
    return Decimal(minutes).quantize(_TENTH, ROUND_HALF_UP)
