"""The particle in front: "out they come", "off comes the cover", "out with the old seal"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.outcome import OUTWARD
from procbuilder.infer.hearing.told import Told

_COME = (
    "come",
    "comes",
    "go",
    "goes",
    "came",
    "went",
    "falls",
    "fall",
    "fell",
    "pops",
    "pop",
    "slides",
    "slide",
    "drops",
    "drop",
    "lifts",
    "lift",
    "slips",
    "rolls",
    "swings",
    "gets",
)
_FIRST = ("out", "off", "in", "on", "back")


def inverted(clauses: Clauses, at: int) -> Told | None:
    """ "Out they come", "off comes the cover", "out with the old seal": its particle first; None when not told so."""
    if not clauses.begins(at) or clauses.low(at) not in (*_FIRST, "up"):
        return None
    particles = []
    while clauses.low(at) in _FIRST or clauses.low(at) == "again":
        particles.append(clauses.low(at))
        at += 1
    verb = "take" if not OUTWARD.isdisjoint(particles) else "put"
    thing = (_comer(clauses, at) or None) if particles else None
    return Told(verb, Form.BASE, at - len(particles), thing.end, (thing,), tuple(particles)) if thing else None


def _comer(clauses: Clauses, at: int) -> Thing | None:
    """What comes out or goes on, before or behind its verb."""
    low, behind = clauses.low(at), clauses.low(at + 1)
    if low in ("it", "she", "he", "they") and behind in _COME:
        return Thing("", at, at + 2, many=low == "they", pointed=True)
    if low in _COME or low == "with":
        thing = read_thing(clauses.tokens, at + 1, clauses.book, governed=True)
        return thing if (thing is not None) else None
    return None
