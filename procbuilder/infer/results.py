"""Operations told without a verb: ``washer off``, ``the cover's back on``, ``then the rear pins``."""

from dataclasses import dataclass

from procbuilder.infer.clauses import Clauses
from procbuilder.infer.inflect import Form
from procbuilder.infer.nouns import Thing, read_thing
from procbuilder.infer.placed import placed
from procbuilder.infer.tokens import SIGNS
from procbuilder.infer.told import Told

OUTWARD = frozenset({"off", "out", "away", "apart", "clear", "free"})
_PASSING = frozenset({"through", "over", "under", "round", "around", "up", "down", "across", "into", "onto"})
"""Ways in which something that is off goes back."""
_INWARD = frozenset({"on", "in", "back", "home", "over"})
_VERBS = {
    "unplugged": "unplug",
    "disconnected": "disconnect",
    "drained": "drain",
    "isolated": "isolate",
    "open": "open",
    "shut": "close",
    "closed": "close",
    "loose": "loosen",
    "tight": "tighten",
    "undone": "undo",
    "done": "do",
}


@dataclass(frozen=True, slots=True)
class Now:
    """What is known of a thing when it is told what became of it."""

    off: bool = False
    """It is off."""
    late: bool = False
    """Things are being put back."""
    shut: bool = False
    """It is switched or shut off."""


def result(clauses: Clauses, thing: Thing, now: Now) -> Told | None:
    """What became of a thing, as if a verb had said it; None when nothing did."""
    nameless = thing.pointed and not thing.name and not thing.count
    if thing.measure or (nameless and not _is_all_off(clauses, thing)) or not _is_told_of(clauses, thing):
        return None
    return placed(clauses, thing) or _became(clauses, thing, now)


def _is_all_off(clauses: Clauses, thing: Thing) -> bool:
    """ "Two screws in the frame, those out"."""
    ends = clauses.low(thing.end) in OUTWARD and clauses.low(thing.end + 1) in SIGNS
    return thing.many and clauses.begins(thing.start) and ends


def _became(clauses: Clauses, thing: Thing, now: Now) -> Told | None:
    """ "Washer off", "the cover's back on"."""
    at, is_be = thing.end, False
    while clauses.has("be", at) or (clauses.has("adverbs", at) and not clauses.has("particles", at)):
        is_be = is_be or clauses.has("be", at)
        at += 1
    particles: list[str] = []
    while clauses.has("particles", at) or clauses.low(at) in _VERBS:
        particles.append(clauses.low(at))
        at += 1
    if ("tight" in particles and (is_be or not now.off)) or (is_be and "free" in particles):
        return None
    verb = _verb(clauses, thing, particles, now)
    goes_back = now.off or thing.new or (now.late and not {"into", "onto"}.isdisjoint(particles))
    if not verb and goes_back and not is_be and not _PASSING.isdisjoint(particles):
        verb = "put"
    into = now.late and not {"into", "onto"}.isdisjoint(particles)
    fits = thing.new or into or (now.off and _may_lead(clauses, thing, particles, now.late))
    if not verb or not _ends(clauses, at, is_be or verb == "turn", particles, fits):
        return None
    return Told(verb, Form.BASE, thing.start, at, (thing,), tuple(particles), means=_means(clauses, at))


def _may_lead(clauses: Clauses, thing: Thing, particles: list[str], late: bool) -> bool:
    """True when a place may follow: "leg up through the yoke", and, while things are put back, "cap on the cable"."""
    return _leads(particles) or (late and not clauses.has("be", thing.start - 1))


def _is_told_of(clauses: Clauses, thing: Thing) -> bool:
    """False for "no grease in there", "the bulb was out", "shiny side out" and what stands behind "with"."""
    before = thing.start - 1
    while clauses.has("adverbs", before):
        before -= 1
    if "no" in (clauses.low(thing.start), clauses.low(before)) or clauses.low(before) == "with":
        return False
    if clauses.book.has("results", thing.name) or _is_strange_plural(clauses, thing):
        return False
    if clauses.has("be", thing.end) and any(
        clauses.low(at) in ("already", "still") for at in range(thing.end, thing.end + 5)
    ):
        return False
    return clauses.low(thing.end) not in ("was", "were") and not clauses.book.has(
        "faces", thing.name.split()[-1] if thing.name else ""
    )


def _is_strange_plural(clauses: Clauses, thing: Thing) -> bool:
    """ "Pulses on and off": a word in -s that is no known thing may be what something does."""
    plain = thing.end == thing.start + 1 and thing.many and not thing.count
    return bool(thing.name) and plain and not thing.new and not thing.old and not clauses.book.knows(thing.name)


_COME = ("come", "comes", "go", "goes", "came", "went")
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
    thing = _comer(clauses, at) if particles else None
    return Told(verb, Form.BASE, at - len(particles), thing.end, (thing,), tuple(particles)) if thing else None


def _comer(clauses: Clauses, at: int) -> Thing | None:
    """What comes out or goes on, before or behind its verb."""
    low, behind = clauses.low(at), clauses.low(at + 1)
    if low in ("it", "she", "they") and behind in _COME:
        return Thing("", at, at + 2, many=low == "they", pointed=True)
    if low in _COME or low == "with":
        thing = read_thing(clauses.tokens, at + 1, clauses.book, governed=True)
        return thing if thing is not None and not thing.measure else None
    return None


def _means(clauses: Clauses, at: int) -> Thing | None:
    return read_thing(clauses.tokens, at + 1, clauses.book) if clauses.low(at) == "with" else None


def _verb(clauses: Clauses, thing: Thing, particles: list[str], now: Now) -> str:
    found = set(particles)
    for word, verb in _VERBS.items():
        if word in found:
            return verb
    if clauses.book.is_in(thing.name, ("brake",)) and found & {"on", "off"}:
        return "apply" if "on" in found else "release"
    if found & {"down", "under", "underneath", "in", "over"} and clauses.book.is_in(thing.name, ("temporary",)):
        return "put"
    switched = now.shut or (
        not thing.new and not now.off and clauses.book.is_in(thing.name, ("switched", "driven", "valve"))
    )
    if found & {"off"} and switched:
        return "turn"
    if found & OUTWARD:
        return "take"
    if "together" in found and now.off:
        return "put"
    if found & _INWARD:
        return "turn" if switched and "on" in found else "put"
    return "take" if "down" in found and clauses.book.is_in(thing.name, ("support",)) else ""


def _leads(particles: list[str]) -> bool:
    """True for "through", "over" and "back in": ways to a place, and no place."""
    return not _PASSING.isdisjoint(particles) or len(particles) > 1


def _ends(clauses: Clauses, at: int, is_be: bool, particles: list[str], fits: bool) -> bool:
    """True when the clause ends behind the particles, so that they are no prepositions; if it ``fits`` they may be."""
    low = clauses.low(at)
    if low in SIGNS or low in ("and", "with", "at") or clauses.has("adverbs", at) or clauses.has("results", at):
        return True
    measure = read_thing(clauses.tokens, at, clauses.book)
    if measure is not None and measure.measure:
        return True
    plain = not is_be and (fits or not {"off", "out", "back"}.isdisjoint(particles))
    if plain and (read_thing(clauses.tokens, at, clauses.book) is not None or clauses.has("prepositions", at)):
        return True
    return not is_be and low in ("from", "of", "to", "until", "till", "before")
