"""Practice logs made by a known rule."""

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from procbuilder.model.origin import Place
from procbuilder.model.practice import Run


def run(step: str, minutes: float | str, *, who: str = "ab", day: int = 1, line: int = 2) -> Run:
    """One row."""
    return Run(who, f"2026-03-{day:02}", step, Decimal(minutes), Place("times.csv", line))


@dataclass(frozen=True, slots=True)
class World:
    """A job whose truth is known: lognormal steps, people who are slow or quick in all of them."""

    middles: tuple[float, ...]
    """Logarithm of the middle minutes of each step."""
    spreads: tuple[float, ...]
    person: float = 0.22
    seized: float = 0
    """Chance that one of every fourth step has seized and takes four times as long."""

    @classmethod
    def drawn(cls, draw: random.Random, seized: float = 0) -> "World":
        """Twelve steps of about 1 to 16 minutes."""
        middles = tuple(draw.gauss(1.4, 0.7) for _ in range(12))
        return cls(middles, tuple(draw.uniform(0.3, 0.6) for _ in range(12)), seized=seized)

    def minutes(self, draw: random.Random) -> list[float]:
        """One run of the whole job."""
        person = draw.gauss(0, self.person)
        return [
            draw.lognormvariate(middle + person, spread) * (4 if step % 4 == 0 and draw.random() < self.seized else 1)
            for step, (middle, spread) in enumerate(zip(self.middles, self.spreads, strict=True))
        ]

    def log(self, draw: random.Random, people: int) -> list[Run]:
        """One run by each of so many people."""
        return [
            run(f"s{step}", minutes, who=f"p{person}", day=person + 1)
            for person in range(people)
            for step, minutes in enumerate(self.minutes(draw))
        ]


def totals(runs: Sequence[list[float]]) -> Iterator[float]:
    """Minutes of whole runs."""
    return (sum(each) for each in runs)
