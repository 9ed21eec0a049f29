"""Told as a result that is brought about: "get the nuts started", "I've got the cover unbolted"."""

from procbuilder.infer.hearing.behind import read_verb
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.inflect import Form
from procbuilder.infer.hearing.nouns import Thing, read_thing
from procbuilder.infer.hearing.told import Told

_BRINGS_ABOUT = ("get", "gets", "getting", "got", "have", "had", "having", "want", "wants", "need", "needs", "like")
_BY_ACCIDENT = ("stick", "catch", "jam", "trap", "lose", "twist")
"""Nobody means these: "I got the bolt stuck"."""


def causative(clauses: Clauses, at: int) -> Told | None:
    """What is done to the thing behind "get" or "have", told by the form that stands behind it."""
    return None


def _is_damage(clauses: Clauses, verb: str) -> bool:
    return False


def _done(clauses: Clauses, verb: str, at: int, thing: Thing) -> Told | None:
    """None where the form takes a thing of its own: "I got the cover and removed it"."""
    told = read_verb(clauses, verb, Form.PAST, at)
    return Told(verb, Form.BASE, at, told.end, (thing,), told.particles, told.means, where=told.where, so=told.so)
