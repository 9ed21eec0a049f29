"""Reads how a thing is then, from the words behind it: "off", "'s back on", "are tight at last", ", out"."""

from dataclasses import dataclass

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
