"""Counts said behind a thing: ``, all four of them``, ``one on each side``, ``, both of them``."""

from decimal import Decimal

from procbuilder.infer.dictionary.nouns import read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses


def count_behind(clauses: Clauses, at: int, *, many: bool) -> Decimal | None:
    """The count that follows a thing in the rest of its sentence, before the next verb; None when none does."""
    if not many:
        return None
    if (spread := _spread(clauses, at)) is not None:
        return spread
    while at < len(clauses.tokens) and clauses.low(at) not in SIGNS:
        if clauses.verb_at(at) or clauses.has("subordinate", at):
            return None
        at += 1
    at += 1
    while clauses.low(at) in ("all", "that", "'s", "there", "'re", "are", "the"):
        at += 1
    thing = read_thing(clauses.tokens, at, clauses.book)
    if thing is None or thing.count is None or thing.measure or thing.name:
        return None
    return thing.count if clauses.low(thing.end) in SIGNS or clauses.low(thing.end) == "of" else None


def _spread(clauses: Clauses, at: int) -> Decimal | None:
    words = " " + " ".join(token.low for token in clauses.tokens[at : at + 12]) + " "
    for phrase, number in clauses.book.grammar["spread"].items():
        if f" one {phrase} " in words or (f", {phrase} " in words and phrase == "top and bottom"):
            return Decimal(number)
    return None
