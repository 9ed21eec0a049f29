"""A thing, how it is said to be now, and what is known of it: all by which it is judged what was done to it."""

from dataclasses import dataclass
from functools import cached_property

from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.outcome import Outcome


@dataclass(frozen=True, slots=True)
class Now:
    """What is known of a thing when it is told what became of it."""

    off: bool = False
    """Something of this kind is off, or slack."""
    gone: bool = False
    """It was said to be off itself."""
    slack: bool = False
    back: bool = False
    """It may go on now: it is off, or was spoken of while things were taken off."""
    late: bool = False
    """Things are being put back."""
    shut: bool = False
    """It is switched or shut off."""
    raised: str = ""
    """The state it is in: open, raised or tilted."""
    begun: bool = False
    """Some work has been told before."""
    held: bool = False
    """The sentence has counted what holds it."""
    temporary: bool = False
    """It was fitted for the job only."""


@dataclass(frozen=True)
class Case:
    """A thing with its outcome."""

    clauses: Clauses
    thing: Thing
    outcome: Outcome
    now: Now

    @cached_property
    def ways(self) -> frozenset[str]:
        """Particles and states of the outcome."""
        return frozenset(self.outcome.ways)

    @cached_property
    def place(self) -> Thing | None:
        """What stands behind the outcome, as "its groove" behind "in"; no measure."""
        found = read_thing(self.clauses.tokens, self.outcome.end, self.clauses.book)
        return found if (found is not None) else None

    @property
    def behind(self) -> str:
        """The token behind the outcome."""
        return self.clauses.low(self.outcome.end)

    def is_in(self, *groups: str) -> bool:
        """True when the thing is one of these groups."""
        return self.clauses.book.is_in(self.thing.name, groups)

    def is_at(self, *groups: str) -> bool:
        """True when the place is one of these groups."""
        return self.place is not None and self.clauses.book.is_in(self.place.name, groups)
