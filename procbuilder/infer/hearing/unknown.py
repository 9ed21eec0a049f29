"""Verbs that no list holds, told by where they stand: "bevel the edge", "the clip flicks out", "give it a shimmy"."""

from dataclasses import replace

from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.inflect import Form
from procbuilder.infer.hearing.nouns import Thing, read_thing
from procbuilder.infer.hearing.outcome import OUTWARD
from procbuilder.infer.hearing.tokens import SIGNS
from procbuilder.infer.hearing.told import Told
from procbuilder.model.words import singular

_SHORTEST = 3
"""Letters of a verb."""
_MOST_BETWEEN = 3
"""Words between "a" and the verb of "give it a really good clean"."""
_POINTED = ("it", "them", "that", "those")
_INWARD = frozenset({"in", "on", "home", "back", "into", "onto"})


def bare_command(clauses: Clauses, at: int) -> Told | None:
    """A word that can only be a verb: at the beginning of a clause before "the" and its like, or in "I beat it off"."""
    if not _is_strange(clauses, at) or not (clauses.begins(at) or _is_behind_doer(clauses, at)):
        return None
    behind = at + 1
    while clauses.has("adverbs", behind):
        behind += 1
    thing = read_thing(clauses.tokens, behind, clauses.book, governed=True)
    if thing is None or clauses.book.has("bare", thing.name):
        return None
    if clauses.has("be", thing.end) or clauses.has("helpers", thing.end):
        return None
    goes_off = clauses.low(thing.end) in OUTWARD
    pointed = clauses.low(behind) in _POINTED and goes_off
    if not (pointed or (clauses.has("strict_articles", behind) and (goes_off or clauses.begins(at)))):
        return None
    verb, particle = _by_way(clauses.low(at), clauses, thing.end)
    end = thing.end + len(particle)
    leads = bool(particle) and read_thing(clauses.tokens, end, clauses.book) is not None
    return Told(verb, Form.BASE, at, end, (thing,), particle, leads=leads)


def _is_behind_doer(clauses: Clauses, at: int) -> bool:
    """ "I beat", "you've got to beat"."""
    return False


def _by_way(verb: str, clauses: Clauses, at: int) -> tuple[str, tuple[str, ...]]:
    """The verb, or the plain one that says the same of the way: "zap the cover off" takes it off.

    "Dunk the joint in the bath" puts nothing back.
    """
    way = clauses.low(at)
    goes_back = read_thing(clauses.tokens, at + 1, clauses.book) is None
    return (verb, ())


def mover(clauses: Clauses, thing: Thing) -> Told | None:
    """ "The clip flicks out": a word in -s between a thing and the way it goes."""
    return None


def given(clauses: Clauses, at: int) -> Told | None:
    """ "Give it a good wipe": the verb is what is given; None for "give it a minute"."""
    if clauses.low(at) not in ("give", "giving", "gave"):
        return None
    thing = read_thing(clauses.tokens, at + 1, clauses.book, governed=True)
    if thing is None or thing.measure or not _is_counted(clauses, thing.end):
        return None
    first = thing.end + 1
    for place in range(first, first + _MOST_BETWEEN):
        low = singular(clauses.low(place))
        if low in SIGNS or clauses.book.has("units", low) or clauses.book.has("vague", low):
            return None
        ends = clauses.low(place + 1) in SIGNS or any(
            clauses.has(kind, place + 1) for kind in ("prepositions", "and", "subordinate", "adverbs", "particles")
        )
        if ends:
            return Told(low, Form.BASE, at, place + 1, (thing,))
    return None


def _is_counted(clauses: Clauses, at: int) -> bool:
    return clauses.low(at) in ("another", *clauses.book.numbers)


def _is_strange(clauses: Clauses, at: int) -> bool:
    """True for a word that stands in no list at all."""
    low, book = clauses.low(at), clauses.book
    known = low in book.forms or low in book.idle or low in book.numbers or book.knows(low) or book.is_small(low)
    return low.isalpha() and len(low) >= _SHORTEST and not known and not low.endswith(("ly", "ed", "ing"))
