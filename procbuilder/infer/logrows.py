"""The practice log as numbers: which terms each row is made of."""

from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import log
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from procbuilder.infer.belief import Array
from procbuilder.infer.prior import Prior, StepPrior, experience
from procbuilder.model.practice import Run, sittings

BASE_MINUTES = 3
"""Around this lies a step of which nothing is known, give or take ``Prior.base``."""
Thing = TypeVar("Thing", bound=Hashable)


@dataclass(frozen=True, slots=True)
class LogRows:
    """The log as numbers. Terms stand in this order: steps, people, sittings, own rates, common rate."""

    logs: Array
    term: NDArray[np.intp]
    """Numbers of the terms of each row: of the shape (rows, 5), its step first."""
    times: Array
    """How many times each of them counts, of the same shape."""
    centre: Array
    """Prior mean of each term."""
    steps: Array
    """Prior precision of the steps."""
    people: slice
    sittings: slice
    rates: slice

    @property
    def step(self) -> NDArray[np.intp]:
        """Number of the step of each row."""
        return self.term[:, 0]

    def expected(self, terms: Array) -> Array:
        """What the terms say of each row."""
        return np.asarray((self.times * terms[self.term]).sum(axis=1), dtype=np.float64)

    def summed(self, values: Array) -> Array:
        """Values of the rows, summed for each term."""
        weights = (self.times * values[:, None]).ravel()
        return np.bincount(self.term.ravel(), weights, len(self.centre)).astype(np.float64)

    def crossed(self, load: Array) -> Array:
        """Loads of the rows, summed for each pair of terms."""
        many = len(self.centre)
        pair = self.term[:, :, None] * many + self.term[:, None, :]
        product = load[:, None, None] * self.times[:, :, None] * self.times[:, None, :]
        return np.bincount(pair.ravel(), product.ravel(), many * many).reshape(many, many).astype(np.float64)

    def variance(self, doubt: Array) -> Array:
        """How unsure the expectation of each row is."""
        own = doubt[self.term[:, :, None], self.term[:, None, :]]
        return np.asarray(np.einsum("ri,rij,rj->r", self.times, own, self.times), dtype=np.float64)


def log_rows(
    runs: Sequence[Run], steps: tuple[str, ...], precision: Array, known: Mapping[str, StepPrior], prior: Prior
) -> LogRows:
    """The rows of the log; ``precision`` is the prior one of the steps."""
    sat = [(run.place.file, *each) for run, each in zip(runs, sittings(runs), strict=True)]
    step, person, day = _numbered(steps), _numbered(run.who for run in runs), _numbered(sat)
    first_day = len(step) + len(person)
    first_rate = first_day + len(day)
    last = first_rate + len(person)
    term = [
        (step[run.step], len(step) + person[run.who], first_day + day[sitting], first_rate + person[run.who], last)
        for run, sitting in zip(runs, sat, strict=True)
    ]
    times = [(1, 1, 1, doublings, doublings) for doublings in (experience(sitting[-1]) for sitting in sat)]
    centre = np.zeros(last + 1)
    centre[: len(steps)] = [log(known[step].minutes if step in known else BASE_MINUTES) for step in steps]
    centre[-1] = log(prior.rate)
    return LogRows(
        logs=np.array([log(run.minutes) for run in runs]),
        term=np.array(term),
        times=np.array(times),
        centre=centre,
        steps=precision,
        people=slice(len(steps), first_day),
        sittings=slice(first_day, first_rate),
        rates=slice(first_rate, last),
    )


def _numbered(things: Iterable[Thing]) -> dict[Thing, int]:
    """Each thing once, with its number in the order of the first."""
    return {thing: number for number, thing in enumerate(dict.fromkeys(things))}
