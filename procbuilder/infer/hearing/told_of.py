"""Whether a thing is one of which it may be told what became of it: not "no grease in there", "the bulb was out"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.hearing.clauses import Clauses

_NOT_NOW = ("still",)
_REACH = 5
"""So many words behind a thing are looked at."""


def is_told_of(clauses: Clauses, thing: Thing) -> bool:
    """False for what is denied, was so before, stands behind "with", or tells which way round: "shiny side out"."""
    before = thing.start - 1
    while clauses.has("adverbs", before):
        before -= 1
    if "no" in (clauses.low(thing.start), clauses.low(before)) or clauses.low(before) == "with":
        return False
    if any(clauses.has("negations", at) for at in range(clauses.clause, thing.start)):
        return False
    behind = [clauses.low(at) for at in range(thing.end, thing.end + _REACH)]
    if behind[0] in ("was", "were") or (clauses.has("be", thing.end) and not set(_NOT_NOW).isdisjoint(behind)):
        return False
    return not _is_no_thing(clauses, thing)


def _is_no_thing(clauses: Clauses, thing: Thing) -> bool:
    """ "Pulses on and off", "clipped on", "shiny side out"."""
    book, last = clauses.book, thing.name.split()[-1] if thing.name else ""
    forms = book.forms.get(thing.name, ())
    is_done = bool(forms) and all(form is Form.PAST for _, form in forms)
    return is_done or book.has("results", thing.name) or book.has("faces", last) or _is_strange_plural(clauses, thing)


def _is_strange_plural(clauses: Clauses, thing: Thing) -> bool:
    """A word in -s that is no known thing may be what something does."""
    plain = thing.end == thing.start + 1 and thing.many and not thing.count
    return bool(thing.name) and plain and not clauses.book.knows(thing.name)
