"""Told as a result that is brought about: "get the nuts started", "I've got the cover unbolted"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.hearing.behind import read_verb
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.told import Told

_BRINGS_ABOUT = ("get", "gets", "getting", "got", "have", "had", "having", "want", "wants", "need", "needs", "like")
_BY_ACCIDENT = ("stick", "catch", "jam", "trap", "lose", "twist")
"""Nobody means these: "I got the bolt stuck"."""


def causative(clauses: Clauses, at: int) -> Told | None:
    """What is done to the thing behind "get" or "have", told by the form that stands behind it."""
    if clauses.low(at) not in _BRINGS_ABOUT:
        return None
    thing = read_thing(clauses.tokens, at + 1, clauses.book)
    if thing is None or thing.measure:
        return None
    behind = thing.end
    while clauses.has("adverbs", behind):
        behind += 1
    past = [verb for verb, form in clauses.book.forms.get(clauses.low(behind), ()) if form is Form.PAST]
    if not past or _is_damage(clauses, past[0]):
        return None
    return _done(clauses, past[0], behind, thing)


def _is_damage(clauses: Clauses, verb: str) -> bool:
    return clauses.book.has("damages", verb) or verb in _BY_ACCIDENT


def _done(clauses: Clauses, verb: str, at: int, thing: Thing) -> Told | None:
    """None where the form takes a thing of its own: "I got the cover and removed it"."""
    told = read_verb(clauses, verb, Form.PAST, at)
    if told.things and not told.things[0].measure and not clauses.has("particles", told.things[0].start - 1):
        return None
    return Told(verb, Form.BASE, at, told.end, (thing,), told.particles, told.means, where=told.where, so=told.so)
