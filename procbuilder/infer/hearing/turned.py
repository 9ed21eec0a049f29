"""Fasteners told by how far they are turned: "the upper one, half a turn", "a little more on the nut"."""

import re

from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.nouns import Thing, read_thing
from procbuilder.model.heard import Sentence

_TURNS = re.compile(
    r"\b(?:half|quarter|eighth|third|sixth|one|two|three|four|couple|few)(?: of)?(?: an?)?"
    r"(?: more| full| good)? turns?\b(?! (?:in|out|of)\b)"
)
_MORE = re.compile(r"\b(?:little|bit|touch|hair|tweak) more on\b")


def turned(clauses: Clauses, sentence: Sentence) -> Thing | None:
    """The fastener of which a sentence says how far it is turned; None when it says no such thing."""
    return None


def is_more(sentence: Sentence) -> bool:
    """ "A little more on the nut": it is turned tighter."""
    return _MORE.search(sentence.words.casefold()) is not None


def _may_be_turned(clauses: Clauses, thing: Thing, before: str) -> bool:
    """True for a fastener, for "the upper one", and for "it" behind "on"; not for what is only said to be so."""
    which = thing.pointed and (bool(thing.name) or before == "on")
    return not clauses.has("be", thing.end) and (which or clauses.book.is_in(thing.name, ("fastener",)))
