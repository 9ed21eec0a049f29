"""Fasteners told by how far they are turned: "the upper one, half a turn", "a little more on the nut"."""

import re

from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.model.heard import Sentence

_TURNS = re.compile(
    r"\b(?:half|quarter|eighth|third|sixth|one|two|three|four|couple|few)(?: of)?(?: an?)?"
    r"(?: more| full| good)? turns?\b(?! (?:in|out|of)\b)"
)
_MORE = re.compile(r"\b(?:little|bit|touch|hair|tweak) more on\b")


def turned(clauses: Clauses, sentence: Sentence) -> Thing | None:
    """The fastener of which a sentence says how far it is turned; None when it says no such thing."""
    words = sentence.words.casefold()
    if _TURNS.search(words) is None and _MORE.search(words) is None:
        return None
    for at in range(len(clauses.tokens)):
        before = clauses.low(at - 1) if at else ""
        if at and not (before in ("on", "in") or clauses.has("openers", at - 1)):
            continue
        thing = read_thing(clauses.tokens, at, clauses.book)
        if thing is not None and not thing.measure and _may_be_turned(clauses, thing, before):
            return thing
    return None


def is_more(sentence: Sentence) -> bool:
    """ "A little more on the nut": it is turned tighter."""
    return _MORE.search(sentence.words.casefold()) is not None


def _may_be_turned(clauses: Clauses, thing: Thing, before: str) -> bool:
    """True for a fastener, for "the upper one", and for "it" behind "on"; not for what is only said to be so."""
    which = thing.pointed and (bool(thing.name) or before == "on")
    return not clauses.has("be", thing.end) and (which or clauses.book.is_in(thing.name, ("fastener",)))
