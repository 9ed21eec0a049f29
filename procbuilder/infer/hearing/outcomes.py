"""How a thing is then, as told behind it: "off", "'s back on", "are tight at last", ", out"."""

from dataclasses import dataclass
from functools import cached_property

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses

OUTWARD = frozenset({"off", "out", "away", "apart", "clear", "free"})
INWARD = frozenset({"on", "in", "back", "home", "over"})


@dataclass(frozen=True, slots=True)
class Outcome:
    """How a thing is, as told behind it."""

    ways: tuple[str, ...]
    """Particles and states in order: ``back``, ``on``, ``tight``."""
    end: int
    """Token behind them."""
    is_be: bool
    """It *is* so, in words: "the cover's off"."""
    apart: bool = False
    """Behind a comma: "last screw, out"."""
    doubtful: bool = False
    """It is so still, too, or nearly."""
    already: bool = False
    """It was so before the film."""


def read_outcome(clauses: Clauses, at: int) -> Outcome | None:
    """The outcome that begins at a token; None when none does."""
    apart = clauses.low(at) == ","
    at += apart
    is_be = doubtful = already = False
    while clauses.has("be", at) or _is_between(clauses, at):
        if clauses.low(at) in ("was", "were", "been"):
            return None
        is_be = is_be or clauses.has("be", at)
        doubtful = doubtful or clauses.has("doubt", at)
        already = already or clauses.low(at) == "already"
        at += 1
    if clauses.has("doubt", at) or clauses.has("negations", at):
        return None
    first = at + (not apart and clauses.low(at) in ("go", "goes"))
    first += clauses.low(first) == "up"
    at += is_be and clauses.low(at) in ("come", "gone") and clauses.has("particles", at + 1)
    ways: list[str] = []
    while clauses.has("particles", at) or clauses.low(at) in clauses.book.states:
        ways.append(clauses.low(at))
        at += 1
    if not ways or (apart and (is_be or not _is_end(clauses, at))):
        return None
    already = already or (is_be and clauses.low(at) == "already")
    return Outcome(tuple(ways), at, is_be, apart, doubtful, already)


def _is_between(clauses: Clauses, at: int) -> bool:
    """ "The bolts are *both now* tight"."""
    adverb = clauses.has("adverbs", at) or clauses.low(at) in ("both", "each")
    return adverb and not clauses.has("particles", at)


def _is_end(clauses: Clauses, at: int) -> bool:
    return clauses.low(at) in SIGNS


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
        return found if found is not None else None

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


_NOT_NOW = ("still",)
_REACH = 5
"""So many words behind a thing are looked at."""


def is_told_of(clauses: Clauses, thing: Thing) -> bool:
    """False for what is denied, was so before, stands behind "with", or tells which way round: "shiny side out"."""
    before = thing.start - 1
    while clauses.has("adverbs", before):
        before -= 1
    if "no" in (clauses.low(thing.start), clauses.low(before)) or clauses.low(before) == "with":
        return False
    if any(clauses.has("negations", at) for at in range(clauses.clause, thing.start)):
        return False
    behind = [clauses.low(at) for at in range(thing.end, thing.end + _REACH)]
    if behind[0] in ("was", "were") or (clauses.has("be", thing.end) and not set(_NOT_NOW).isdisjoint(behind)):
        return False
    return not _is_no_thing(clauses, thing)


def _is_no_thing(clauses: Clauses, thing: Thing) -> bool:
    """ "Pulses on and off", "clipped on", "shiny side out"."""
    book, last = clauses.book, thing.name.split()[-1] if thing.name else ""
    forms = book.forms.get(thing.name, ())
    is_done = bool(forms) and all(form is Form.PAST for _, form in forms)
    return is_done or book.has("results", thing.name) or book.has("faces", last) or _is_strange_plural(clauses, thing)


def _is_strange_plural(clauses: Clauses, thing: Thing) -> bool:
    """A word in -s that is no known thing may be what something does."""
    plain = thing.end == thing.start + 1 and thing.many and not thing.count
    return bool(thing.name) and plain and not clauses.book.knows(thing.name)
