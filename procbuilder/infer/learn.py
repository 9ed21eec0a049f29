"""Learning from the practice log: a small Bayesian update over the steps of one procedure.

The logarithm of the minutes of a row is taken as

    step + person + sitting + (learning rate + the person's own) × log₂(how many times done / 3) + rest

Every term is normal around its stated prior, so with few rows the prior holds and the range is wide. Typed times
share a level, steps of the same operation another, and steps borrow their spread from each other. The rest has heavy
tails (Student's t), so that a row far off moves little; it is told, never taken out.

Sources: Bayesian linear regression, and Student's t as a normal with weights, are textbook matter; that time falls
by the same share with each doubling is the unit learning curve (``model/learning.py``).
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from math import exp
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from procbuilder.infer.belief import Array, Belief
from procbuilder.infer.logrows import LogRows, log_rows
from procbuilder.infer.prior import PRIOR, Prior, StepPrior
from procbuilder.model.estimate import OddTime
from procbuilder.model.practice import Run

TURNS = 10
"""Rounds of weighing the rows; after them no digit that is shown moves any more."""
ODD = 3.0
"""A row is odd when it lies this many spreads of its step from what was expected."""
_EIGHT_OF_TEN = NormalDist().inv_cdf(0.9)


def learn(
    runs: Sequence[Run],
    known: Mapping[str, StepPrior],
    prior: Prior = PRIOR,
    kinds: Mapping[str, str] | None = None,
) -> tuple[Belief, tuple[OddTime, ...]]:
    """What the rows of one procedure say about its steps, and which rows are odd.

    Args:
        runs: at least one row.
        known: steps of which a time is typed.
        prior: the stated spreads.
        kinds: the operation of each step, as far as it is known; rows of other procedures may be among the runs.
    """
    steps = tuple(dict.fromkeys(run.step for run in runs))
    rows = log_rows(runs, steps, _steps_precision(steps, known, prior, kinds or {}), known, prior)
    people, days = prior.person**2, prior.sitting**2
    spread = np.full(len(steps), prior.step**2)
    weight = np.ones(len(runs))
    for _ in range(TURNS):
        precision = _precision(rows, people, days, prior)
        load = weight / spread[rows.step]
        doubt = _inverse(precision + rows.crossed(load), rows.sittings)
        terms = doubt @ (precision @ rows.centre + rows.summed(load * rows.logs))
        rest = rows.logs - rows.expected(terms)
        unsure = rows.variance(doubt)
        square = rest**2 + unsure
        weight = (prior.tails + 1) / (prior.tails + square / spread[rows.step])
        spread = _spreads(weight * square, rows.step, len(steps), prior)
        people = _between(terms, doubt, rows.people, prior.person, prior.people_weight)
        days = _between(terms, doubt, rows.sittings, prior.sitting, prior.people_weight)
    keep = [*range(len(steps)), len(terms) - 1]
    belief = Belief(
        steps=steps,
        counts=tuple(np.bincount(rows.step, minlength=len(steps)).tolist()),
        centre=terms[keep],
        doubt=doubt[np.ix_(keep, keep)],
        rest=spread,
        whole=_spreads(square, rows.step, len(steps), prior),
        excess=_excess(rest + unsure / 2, spread, rows.step, prior),
        between=people + days,
        own_rate=prior.own_rate**2,
    )
    return belief, _odd(runs, rest, np.sqrt(spread[rows.step]))


def _steps_precision(
    steps: tuple[str, ...], known: Mapping[str, StepPrior], prior: Prior, kinds: Mapping[str, str]
) -> Array:
    """Each step apart, plus a level that typed steps share, one that the others share, and one of each operation."""
    typed = np.array([step in known for step in steps])
    own = np.array([known[step].spread ** 2 if step in known else prior.unknown**2 for step in steps])
    shared = np.outer(typed, typed) * prior.level**2 + np.outer(~typed, ~typed) * prior.base**2
    kind = np.array(["" if step in known else kinds.get(step, "") for step in steps])
    same = (kind[:, None] == kind[None, :]) & (kind != "") & (kind != "")[:, None]
    alike = same * prior.operation**2
    return np.asarray(np.linalg.inv(np.diag(own - np.diag(alike)) + shared + alike), dtype=np.float64)


def _inverse(matrix: Array, apart: slice) -> Array:
    """Inverse of a symmetric matrix of which this part is diagonal: no row belongs to two sittings.

    Source: block inversion by the Schur complement, textbook matter.
    """
    others = np.delete(np.arange(len(matrix)), apart)
    own = 1 / np.diag(matrix)[apart]
    cross = matrix[others, apart] * own
    small = np.linalg.inv(matrix[np.ix_(others, others)] - cross @ matrix[apart, others])
    inverse = np.empty_like(matrix)
    inverse[np.ix_(others, others)] = small
    inverse[others, apart] = -small @ cross
    inverse[apart, others] = inverse[others, apart].T
    inverse[apart, apart] = np.diag(own) + cross.T @ small @ cross
    return inverse


def _precision(rows: LogRows, people: float, days: float, prior: Prior) -> Array:
    """Prior precision of all terms."""
    diagonal = np.zeros(len(rows.centre))
    diagonal[rows.people], diagonal[rows.sittings] = 1 / people, 1 / days
    diagonal[rows.rates], diagonal[-1] = prior.own_rate**-2, prior.rate_spread**-2
    precision = np.diag(diagonal)
    precision[: len(rows.steps), : len(rows.steps)] = rows.steps
    return precision


def _spreads(square: Array, step: NDArray[np.intp], steps: int, prior: Prior) -> Array:
    """Variance of each step: its own rows, held by that of all steps, held by the stated one."""
    pooled = (prior.pool_weight * prior.step**2 + square.sum()) / (prior.pool_weight + len(square))
    sums, counts = np.bincount(step, square, steps), np.bincount(step, minlength=steps)
    return np.asarray((prior.step_weight * pooled + sums) / (prior.step_weight + counts), dtype=np.float64)


def _between(terms: Array, doubt: Array, part: slice, stated: float, weight: float) -> float:
    """Variance between people, or between sittings: what is seen, held by the stated one."""
    seen = terms[part] ** 2 + np.diag(doubt)[part]
    return float((weight * stated**2 + seen.sum()) / (weight + len(seen)))


def _excess(rest: Array, spread: Array, step: NDArray[np.intp], prior: Prior) -> Array:
    """Mean of exp(rest) over that of a normal rest, so that a sum tells what seized runs cost on average.

    Source: the smearing estimate of N. Duan, 1983, held at 1 by the stated weights.
    """
    factor = np.exp(rest - spread[step] / 2)
    pooled = (prior.pool_weight + factor.sum()) / (prior.pool_weight + len(factor))
    sums, counts = np.bincount(step, factor, len(spread)), np.bincount(step, minlength=len(spread))
    return np.asarray((prior.step_weight * pooled + sums) / (prior.step_weight + counts), dtype=np.float64)


def _odd(runs: Sequence[Run], rest: Array, spread: Array) -> tuple[OddTime, ...]:
    """Rows far off, with the minutes that were expected."""
    return tuple(
        OddTime(run.place, run.step, run.minutes, _expected(run, left, -own), _expected(run, left, own))
        for run, left, own in zip(runs, rest.tolist(), spread.tolist(), strict=True)
        if abs(left) > ODD * own
    )


def _expected(run: Run, left: float, spread: float) -> Decimal:
    return (run.minutes * Decimal(exp(-left + _EIGHT_OF_TEN * spread))).quantize(Decimal("0.1"))
