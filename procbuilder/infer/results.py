"""Operations told without a verb: ``washer off``, ``the cover's back on``, ``then the rear pins``."""

from procbuilder.infer.clauses import Clauses
from procbuilder.infer.inflect import Form
from procbuilder.infer.nouns import Thing, read_thing
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


def result(clauses: Clauses, thing: Thing, *, off: bool = False, late: bool = False, shut: bool = False) -> Told | None:
    """What became of a thing, as if a verb had said it; None when nothing did. ``off``: it is off now.

    ``late``: things are being put back. ``shut``: it is switched or shut off now.
    """
    if thing.measure or (thing.pointed and not thing.name and not thing.count) or not _is_told_of(clauses, thing):
        return None
    at, is_be = thing.end, False
    while clauses.has("be", at) or (clauses.has("adverbs", at) and not clauses.has("particles", at)):
        is_be = is_be or clauses.has("be", at)
        at += 1
    particles: list[str] = []
    while clauses.has("particles", at) or clauses.low(at) in _VERBS:
        particles.append(clauses.low(at))
        at += 1
    way = at - len(particles)
    if len(particles) < 2 and not is_be and clauses.stands_first(thing.start) and _lies_there(clauses, thing, way):
        return Told("put", Form.BASE, thing.start, way + 1, (thing,), (clauses.low(way),), leads=True)
    if clauses.stands_first(thing.start) and _is_put_on(clauses, thing, at - len(particles)):
        return Told("put", Form.BASE, thing.start, at - len(particles) + 1, (thing,), ("on",), leads=True)
    if "tight" in particles and not (off and not is_be):
        return None
    if is_be and "free" in particles:
        return None
    verb = _verb(clauses, thing, particles, shut=shut, off=off)
    if not verb and off and not is_be and not _PASSING.isdisjoint(particles):
        verb = "put"
    fits = thing.new or (off and _may_lead(clauses, thing, particles, late))
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
    return plain and not thing.new and not thing.old and not clauses.book.knows(thing.name)


_COME = ("come", "comes", "go", "goes", "came", "went")
_ONTO = ("on", "in", "into", "onto", "over", "round", "around", "along", "down", "behind", "inside", "to", "between")
_UNDER = ("under", "underneath", "beneath", "between", "behind", "below")
_FIRST = ("out", "off", "in", "on", "back")


def inverted(clauses: Clauses, at: int) -> Told | None:
    """ "Out they come", "off comes the cover", "out with the old seal": its particle first; None when not told so."""
    if not clauses.begins(at) or clauses.low(at) not in _FIRST:
        return None
    particles = []
    while clauses.low(at) in _FIRST or clauses.low(at) == "again":
        particles.append(clauses.low(at))
        at += 1
    verb = "take" if not OUTWARD.isdisjoint(particles) else "put"
    thing = _comer(clauses, at)
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


def _verb(clauses: Clauses, thing: Thing, particles: list[str], *, shut: bool, off: bool) -> str:
    found = set(particles)
    for word, verb in _VERBS.items():
        if word in found:
            return verb
    if clauses.book.is_in(thing.name, ("brake",)) and found & {"on", "off"}:
        return "apply" if "on" in found else "release"
    if found & {"down", "under", "underneath", "in", "over"} and clauses.book.is_in(thing.name, ("temporary",)):
        return "put"
    switched = shut or (not thing.new and clauses.book.is_in(thing.name, ("switched", "driven", "valve")))
    if found & {"off"} and switched:
        return "turn"
    if found & OUTWARD:
        return "take"
    if "together" in found and off:
        return "put"
    if found & _INWARD:
        return "turn" if switched and "on" in found else "put"
    return "take" if "down" in found and clauses.book.is_in(thing.name, ("support",)) else ""


def _is_put_on(clauses: Clauses, thing: Thing, at: int) -> bool:
    """ "A smear of grease on the lip": what is put on, and where."""
    is_dab = any(clauses.has("dabs", each) for each in range(thing.start, thing.end))
    if not (is_dab or clauses.book.is_in(thing.name, ("paste",))) or clauses.low(at) not in _ONTO:
        return False
    place = read_thing(clauses.tokens, at + 1, clauses.book)
    return (
        place is not None and not place.measure and clauses.low(thing.start) != "the" and not _does(clauses, place.end)
    )


def _does(clauses: Clauses, at: int) -> bool:
    """ "Grease on the end keeps it off": a verb follows."""
    return clauses.low(at) in clauses.book.idle or clauses.has("be", at) or bool(clauses.verb_at(at))


def _lies_there(clauses: Clauses, thing: Thing, at: int) -> bool:
    """ "Tray under it": what is fitted for the job only, and where."""
    place = read_thing(clauses.tokens, at + 1, clauses.book)
    fitted = clauses.book.is_in(thing.name, ("temporary", "support")) and clauses.low(at) in _UNDER
    fitted = fitted or (clauses.book.is_in(thing.name, ("lock",)) and clauses.low(at) == "on")
    return fitted and place is not None and not place.measure


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
