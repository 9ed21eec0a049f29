"""Printed cards: the steps that are worked without a phone, because vapour or gas can catch fire there."""

from dataclasses import dataclass
from itertools import groupby

from procbuilder.model.edition import Edition
from procbuilder.publish.language import ENGLISH, Language


@dataclass(frozen=True, slots=True)
class Card:
    """Steps behind one another that share a card."""

    first: int
    last: int
    reason: str
    """What gives off the vapour or gas, in the words of the procedure: ``brake cleaner; petrol pipe``."""

    @property
    def steps(self) -> str:
        """``step 16``, ``steps 16 to 18``."""
        return self.steps_in(ENGLISH)

    def steps_in(self, language: Language) -> str:
        """The same in another language."""
        if self.first == self.last:
            return language.text("step {number}", number=self.first)
        return language.text("steps {first} to {last}", first=self.first, last=self.last)


def cards(edition: Edition) -> tuple[Card, ...]:
    """One card for each run of such steps, in their order."""
    made = []
    for needed, run in groupby(edition.steps, key=lambda step: bool(step.no_phone)):
        if needed:
            steps = list(run)
            reasons = dict.fromkeys(step.no_phone.casefold() for step in steps)
            made.append(Card(steps[0].number, steps[-1].number, "; ".join(reasons)))
    return tuple(made)
