"""Told as a result that is brought about: "get the nuts started", "I've got the cover unbolted"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.hearing.behind import read_verb
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.told import Told


def _done(clauses: Clauses, verb: str, at: int, thing: Thing) -> Told | None:
    """None where the form takes a thing of its own: "I got the cover and removed it"."""
    told = read_verb(clauses, verb, Form.PAST, at)
    return Told(verb, Form.BASE, at, told.end, (thing,), told.particles, told.means, where=told.where, so=told.so)
