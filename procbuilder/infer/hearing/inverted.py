"""The particle in front: "out they come", "off comes the cover", "out with the old seal"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
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
    if clauses.low(at) == "up" and clauses.low(at + 1) == "with":
        raised = _comer(clauses, at + 1)
        return Told("raise", Form.BASE, at, raised.end, (raised,), ("up",)) if raised else None
    particles = []
    while clauses.low(at) in _FIRST or clauses.low(at) == "again":
        particles.append(clauses.low(at))
        at += 1
    verb = "take" if not OUTWARD.isdisjoint(particles) else "put"
    thing = (_comer(clauses, at) or _finished(clauses, at, particles)) if particles else None
    return Told(verb, Form.BASE, at - len(particles), thing.end, (thing,), tuple(particles)) if thing else None


def _finished(clauses: Clauses, at: int, particles: list[str]) -> Thing | None:
    """ "Snip it, off": the end of what was done to a thing just named."""
    before = at - len(particles) - 1
    while clauses.low(before) in (",", "and"):
        before -= 1
    pronoun = clauses.low(before)
    if particles not in (["off"], ["out"]) or clauses.low(at) not in SIGNS or before < 1:
        return None
    if pronoun not in ("it", "them", "those", "that", "him"):
        return None
    return Thing("", before, at, many=pronoun in ("them", "those"), pointed=True)


def _slides(clauses: Clauses, at: int) -> bool:
    """ "Off slides the collar"."""
    entries = clauses.book.forms.get(clauses.low(at), ())
    return any(form is Form.S and clauses.book.has("moving", verb) for verb, form in entries)


def _comer(clauses: Clauses, at: int) -> Thing | None:
    """What comes out or goes on, before or behind its verb."""
    low, behind = clauses.low(at), clauses.low(at + 1)
    if low in ("it", "she", "he", "they") and behind in _COME:
        return Thing("", at, at + 2, many=low == "they", pointed=True)
    if low in _COME or low == "with" or _slides(clauses, at):
        thing = read_thing(clauses.tokens, at + 1, clauses.book, governed=True)
        return thing if thing is not None and not thing.measure else None
    return None
