"""Operations told by how a thing is then: ``washer off``, ``that's the cover back on``, ``the bolts are tight``."""

from dataclasses import dataclass

from procbuilder.infer.clauses import Clauses
from procbuilder.infer.inflect import Form
from procbuilder.infer.nouns import Thing, read_thing
from procbuilder.infer.outcome import INWARD, OUTWARD, Outcome, read_outcome
from procbuilder.infer.placed import placed
from procbuilder.infer.tokens import SIGNS
from procbuilder.infer.told import Told
from procbuilder.model.words import singular

_PASSING = frozenset({"through", "over", "under", "round", "around", "up", "down", "across", "into", "onto"})
"""Ways in which something that is off goes back."""
_TURNED = ("fastener", "clip")
_PARTICLES = {"do": ("up",), "take": ("off",)}
_CLOSED = ("tighten", "torque", "do")
"""Verbs by which a fastener is said to be tight."""


@dataclass(frozen=True, slots=True)
class Now:
    """What is known of a thing when it is told what became of it."""

    off: bool = False
    """It is off, or slack."""
    gone: bool = False
    """It was said to be off."""
    slack: bool = False
    back: bool = False
    """It may go on now: it is off, or was spoken of while things were taken off."""
    late: bool = False
    """Things are being put back."""
    shut: bool = False
    """It is switched or shut off."""
    raised: str = ""
    """The state it is in: open, raised or tilted."""
    begun: bool = False
    """Something has been moved."""
    temporary: bool = False
    """It was fitted for the job only."""


def result(clauses: Clauses, thing: Thing, now: Now) -> Told | None:
    """What became of a thing, as if a verb had said it; None when nothing did."""
    nameless = thing.pointed and not thing.name and not thing.count
    if thing.measure or nameless or not _is_told_of(clauses, thing):
        return None
    return placed(clauses, thing, is_open=now.off) or _became(clauses, thing, now)


def pointed_result(clauses: Clauses, thing: Thing, *, late: bool) -> Told | None:
    """ "There, he's out", "now they're all at five": what became of something that is only pointed at."""
    outcome = read_outcome(clauses, thing.end)
    if outcome is None or outcome.apart or outcome.doubtful:
        return None
    if outcome.is_be and outcome.ways == ("in",) and _is_in_hand(clauses, outcome.end):
        return Told("take", Form.BASE, thing.start, outcome.end, (thing,), ("off",))
    if not _is_done_here(clauses, outcome.end):
        return None
    ways = set(outcome.ways)
    states = clauses.book.states
    verb = next((states[word] for word in outcome.ways if states.get(word) in _CLOSED), "")
    verb = verb or ("take" if ways & OUTWARD and not ways & INWARD else "put" if late and ways & INWARD else "")
    those = thing.many and clauses.begins(thing.start) and verb == "take"
    reported = clauses.has("be", thing.start - 1) and clauses.heads(thing)
    plain = outcome.is_be or those or reported
    return Told(verb, Form.BASE, thing.start, outcome.end, (thing,), outcome.ways) if verb and plain else None


def _is_done_here(clauses: Clauses, at: int) -> bool:
    """True when no place follows that would only tell where it is; "out in three pieces" does not."""
    pieces = read_thing(clauses.tokens, at + 1, clauses.book) if clauses.low(at) == "in" else None
    if pieces is not None and pieces.count is not None and not pieces.measure:
        return True
    while clauses.has("adverbs", at):
        at += 1
    return clauses.low(at) in SIGNS or clauses.low(at) in ("and", "with", "then")


def _became(clauses: Clauses, thing: Thing, now: Now) -> Told | None:
    """ "Washer off", "the cover's back on", "last screw, out"."""
    outcome = read_outcome(clauses, thing.end) or _behind_its_place(clauses, thing)
    if outcome is None or (outcome.apart and not clauses.heads(thing)):
        return None
    is_be, at = outcome.is_be, outcome.end
    verb = _verb(clauses, thing, outcome, now)
    particles = _PARTICLES.get(verb, outcome.ways)
    if not verb or (is_be and ("free" in particles or outcome.doubtful or _is_known(clauses, thing, verb, now))):
        return None
    if verb == "take" and is_be and not _is_solid(clauses, thing, now):
        return None
    if "in" in particles and _is_in_hand(clauses, at):
        came_off = not now.gone and not now.late and clauses.book.is_in(thing.name, _PARTS)
        return Told("take", Form.BASE, thing.start, at, (thing,), ("off",)) if came_off else None
    if is_be and now.begun and {"off", "out"} & set(particles) and _is_out_of(clauses, at):
        return Told(verb, Form.BASE, thing.start, at, (thing,), particles)
    if is_be and verb == "put" and _is_back(clauses, thing, outcome, now):
        verb, particles = ("take", ("off",)) if now.temporary else (verb, particles)
        return Told(verb, Form.BASE, thing.start, at, (thing,), particles, leads=not now.temporary)
    if verb == "put" and "back" not in particles and _is_laid(clauses, at):
        return Told("take", Form.BASE, thing.start, at, (thing,), ("off",)) if now.temporary else None
    if thing.count == 1 and clauses.low(thing.start) == "one" and verb == "put" and not _is_end(clauses, at):
        return None
    into = now.late and not {"into", "onto"}.isdisjoint(particles)
    fits = thing.new or into or (now.back and _may_lead(clauses, thing, particles, now.late))
    if not _ends(clauses, at, is_be or verb == "turn", particles, fits):
        return None
    if verb == "put" and _PASSING.issuperset(particles):
        return Told(verb, Form.BASE, thing.start, at, (thing,), ("on", *particles), leads=True)
    return Told(verb, Form.BASE, thing.start, at, (thing,), particles, means=_means(clauses, at))


def _behind_its_place(clauses: Clauses, thing: Thing) -> Outcome | None:
    """ "Clip under it, out", "the bolt at the back off": told where it is, and then what became of it."""
    at = clauses.behind_place(thing.end)
    outcome = read_outcome(clauses, at) if at > thing.end and clauses.heads(thing) else None
    ends = outcome is not None and not outcome.is_be and clauses.low(outcome.end) in SIGNS
    return outcome if ends else None


def _is_end(clauses: Clauses, at: int) -> bool:
    return clauses.low(at) in SIGNS or clauses.low(at) == "and"


def _is_laid(clauses: Clauses, at: int) -> bool:
    """ "Old belt in the bin": a place where things are laid follows."""
    place = read_thing(clauses.tokens, at, clauses.book)
    return place is not None and clauses.book.is_in(place.name, ("place",))


_PARTS = ("fastener", "clip", "seal", "part", "electrical", "pipe", "spring", "battery", "vessel", "lid")
_LOOSE = ("fluid", "paste", "body", "worn", "dirt", "pressure")


def _is_solid(clauses: Clauses, thing: Thing, now: Now) -> bool:
    """False for "my back's out" and "the oil's off", and for "the deal's off" before anything is."""
    known = clauses.book.knows(thing.name) or (now.begun and thing.name not in clauses.book.cues["everyday"])
    bare = clauses.book.has("positions", thing.name)
    return known and not bare and not clauses.book.is_in(thing.name, _LOOSE)


def _is_in_hand(clauses: Clauses, at: int) -> bool:
    """ "The panel's in my hands"."""
    place = read_thing(clauses.tokens, at, clauses.book)
    return place is not None and clauses.book.is_in(place.name, ("hand", "palm", "lap"))


def _is_out_of(clauses: Clauses, at: int) -> bool:
    """ "The hub's off the spindle": the place of a known part, and no more said."""
    at += clauses.low(at) in ("of", "from")
    place = read_thing(clauses.tokens, at, clauses.book)
    if place is None or not clauses.has("strict_articles", place.start) or clauses.low(place.start) in ("a", "an"):
        return False
    return (
        clauses.low(place.end) in SIGNS if not clauses.book.knows(place.name) else not clauses.goes_on_to_do(place.end)
    )


def _is_known(clauses: Clauses, thing: Thing, verb: str, now: Now) -> bool:
    """ "The caliper's off" when it has been off for long, "the cover's on with two screws" before it was ever off."""
    if verb == "take":
        return now.gone
    return verb == "put" and not (now.back or now.late or thing.new or clauses.has("many_pronouns", thing.start - 2))


def _is_back(clauses: Clauses, thing: Thing, outcome: Outcome, now: Now) -> bool:
    """ "The fork's back up where it lives", "the belt's in its groove": what is off, and not only laid there."""
    back = "back" in outcome.ways
    place = read_thing(clauses.tokens, outcome.end, clauses.book)
    if now.temporary:
        return back or (place is not None and clauses.book.is_in(place.name, ("place",)))
    if clauses.low(outcome.end) == "where":
        return back and now.back
    says_so = back and now.begun and clauses.book.is_in(thing.name, _PARTS)
    if place is None or place.measure or not (now.back or says_so) or not (back or now.late):
        return False
    head = place.name.split()[-1] if place.name else ""
    return not clauses.book.is_in(place.name, ("place", "body")) and not clauses.book.has("positions", head)


def _may_lead(clauses: Clauses, thing: Thing, particles: tuple[str, ...], late: bool) -> bool:
    """True when a place may follow: "leg up through the yoke", and, while things are put back, "cap on the cable"."""
    return _leads(particles) or (late and not clauses.has("be", thing.start - 1))


def _is_told_of(clauses: Clauses, thing: Thing) -> bool:
    """False for "no grease in there", "the bulb was out", "shiny side out" and what stands behind "with"."""
    before = thing.start - 1
    while clauses.has("adverbs", before):
        before -= 1
    if "no" in (clauses.low(thing.start), clauses.low(before)) or clauses.low(before) == "with":
        return False
    if any(clauses.has("negations", at) for at in range(clauses.clause, thing.start)):
        return False
    forms = clauses.book.forms.get(thing.name, ())
    if forms and all(form is Form.PAST for _, form in forms):
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


def _means(clauses: Clauses, at: int) -> Thing | None:
    return read_thing(clauses.tokens, at + 1, clauses.book) if clauses.low(at) == "with" else None


def _verb(clauses: Clauses, thing: Thing, outcome: Outcome, now: Now) -> str:
    """The verb of work that says the same; empty when it only tells how the thing was found."""
    states = clauses.book.states
    state = next((states[word] for word in states if word in outcome.ways), "")
    if state == "do" and outcome.apart:
        return ""
    if state:
        return state if _became_so(clauses, thing, state, outcome, now) else ""
    particles = frozenset(outcome.ways)
    if verb := _by_way(clauses, thing, particles - {"over"} if outcome.is_be else particles, now):
        return verb
    into = now.late and not {"into", "onto"}.isdisjoint(particles)
    back = now.gone or (now.back and not particles <= {"up", "down"})
    goes_back = (back or thing.new or into) and not _PASSING.isdisjoint(particles)
    over = now.back and now.late and "over" in particles
    return "put" if goes_back and (over or not outcome.is_be or "back" in particles) else ""


def _became_so(clauses: Clauses, thing: Thing, verb: str, outcome: Outcome, now: Now) -> bool:
    """False where the state may be how the thing was found: "the bolts are tight", "the chain's loose"."""
    turned = clauses.book.is_in(thing.name, _TURNED)
    if verb in _CLOSED:
        if outcome.apart and verb == "torque":
            return now.slack or (turned and now.late and not now.gone)
        has_unit = clauses.has("torque_units", outcome.end - 1) and turned and not outcome.is_be
        return has_unit or now.slack or (now.late and (turned or now.off)) or (now.off and not outcome.is_be)
    if verb == "take":
        return now.temporary
    if verb == "fit":
        return now.off or thing.new
    return verb != "loosen" or not outcome.is_be or (turned and not now.off and not now.late)


def _by_way(clauses: Clauses, thing: Thing, found: frozenset[str], now: Now) -> str:
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
    if not (now.off or now.shut) and found & {"on"} and _is_switched_on(clauses, thing):
        return ""
    if "down" in found and now.raised in ("open", "raised", "tilted"):
        return "close" if now.raised == "open" else "lower"
    if "together" in found and now.off:
        return "put"
    if found & INWARD:
        return "turn" if switched and "on" in found else "put"
    return "take" if "down" in found and clauses.book.is_in(thing.name, ("support",)) else ""


def _is_switched_on(clauses: Clauses, thing: Thing) -> bool:
    """ "The red light's on", "front brake on": nothing is fitted."""
    last = singular(thing.name.split()[-1]) if thing.name else ""
    return last == "brake" or clauses.book.has("lights", last)


def _leads(particles: tuple[str, ...]) -> bool:
    """True for "through", "over" and "back in": ways to a place, and no place."""
    return not _PASSING.isdisjoint(particles) or len(particles) > 1


def _ends(clauses: Clauses, at: int, is_be: bool, particles: tuple[str, ...], fits: bool) -> bool:
    """True when the clause ends behind the particles, so that they are no prepositions; if it ``fits`` they may be."""
    low = clauses.low(at)
    if low in SIGNS or low in ("and", "with", "at") or clauses.has("adverbs", at) or clauses.has("results", at):
        return True
    measure = read_thing(clauses.tokens, at, clauses.book)
    if measure is not None and measure.measure:
        return True
    plain = not is_be and (fits or not {"off", "out", "back"}.isdisjoint(particles))
    place = read_thing(clauses.tokens, at, clauses.book)
    if plain and place is not None and clauses.goes_on_to_do(place.end):
        return False
    if plain and (place is not None or clauses.has("prepositions", at) or low in ("everything", "itself")):
        return True
    return not is_be and low in ("from", "of", "to", "until", "till", "before")
