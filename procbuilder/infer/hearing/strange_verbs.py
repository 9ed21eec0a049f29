"""Verbs that no list holds: "bevel the edge", "give it a wipe"; and looks, however they are told."""

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.outcomes import OUTWARD
from procbuilder.infer.hearing.verb_phrase import Told

_TO = (
    "at",
    "in",
    "into",
    "inside",
    "over",
    "round",
    "around",
    "along",
    "down",
    "of",
    "under",
    "behind",
    "through",
    "to",
)
_LONGEST = 3
"""Words between "a" and "look"."""


def looked_at(clauses: Clauses, at: int) -> Told | None:
    """The check of what somebody looks at; None where he looks at nothing of the item."""
    first = _behind_noun(clauses, at) or _behind_verb(clauses, at)
    if first is None or clauses.low(first) not in _TO:
        return None
    thing = read_thing(clauses.tokens, first + 1, clauses.book, governed=True)
    if thing is None or thing.measure or thing.pointed:
        return None
    return Told("inspect", Form.BASE, at, thing.end, (thing,))


def _behind_noun(clauses: Clauses, at: int) -> int | None:
    """ "Have a really good look": the token behind it; "cast an eye" and "run your eye" too."""
    if not clauses.has("takes_a_look", at) or clauses.low(at + 1) not in ("a", "another", "one"):
        return None
    places = range(at + 2, at + 2 + _LONGEST)
    return next((place + 1 for place in places if clauses.has("looks", place)), None)


def _behind_verb(clauses: Clauses, at: int) -> int | None:
    """ "Look closely into": only before a thing with its article, as "look over it" says no more than "look"."""
    low, before = clauses.low(at), clauses.low(at - 1)
    if not clauses.book.has("looking", low) or (
        low.endswith("ing") and at > clauses.clause and not clauses.book.has("is_doing", before)
    ):
        return None
    behind = at + 1
    while clauses.has("adverbs", behind):
        behind += 1
    shows = clauses.low(behind + 1) in ("this", "that", "these", "those")
    return behind if clauses.has("articles", behind + 1) and not shows else None


_SHORTEST = 3
"""Letters of a verb."""
_MOST_BETWEEN = 3
"""Words between "a" and the verb of "give it a really good clean"."""


def bare_command(clauses: Clauses, at: int) -> Told | None:
    """A word that can only be a verb: at the beginning of a clause before "the" and its like, or in "I beat it off"."""
    if not _is_strange(clauses, at) or not clauses.begins(at):
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
    pointed = clauses.has("pointing", behind) and goes_off
    if not (pointed or (clauses.has("strict_articles", behind) and (goes_off or clauses.begins(at)))):
        return None
    return Told(clauses.low(at), Form.BASE, at, thing.end, (thing,))


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
