"""A look that is told as a noun or with its direction: "have a good look at the pipe ends", "look into the bore"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import read_thing
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.told import Told

_TAKES = ("have", "had", "having", "take", "took", "taking", "get", "got", "getting", "give", "gave", "giving", "do")
_LOOKS = ("look", "feel", "listen", "peek", "peep", "squint", "glance", "gander")
_LOOKING = frozenset(
    f"{verb}{end}" for verb in ("look", "peer", "peek", "squint", "glance") for end in ("", "s", "ed", "ing")
)
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
_IS_DOING = ("'m", "am", "'re", "are", "and", "just", "then", "now")
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
    if clauses.low(at) not in _TAKES or clauses.low(at + 1) not in ("a", "another", "one"):
        return None
    places = range(at + 2, at + 2 + _LONGEST)
    return next((place + 1 for place in places if clauses.low(place) in _LOOKS), None)


def _behind_verb(clauses: Clauses, at: int) -> int | None:
    """ "Look closely into": only before a thing with its article, as "look over it" says no more than "look"."""
    low, before = clauses.low(at), clauses.low(at - 1)
    if low not in _LOOKING or (low.endswith("ing") and at > clauses.clause and before not in _IS_DOING):
        return None
    behind = at + 1
    while clauses.has("adverbs", behind):
        behind += 1
    shows = clauses.low(behind + 1) in ("this", "that", "these", "those")
    return behind if clauses.has("articles", behind + 1) and not shows else None
