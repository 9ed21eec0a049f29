"""Operations told by how a thing is now: ``washer off``, ``that's the cover back on``, ``the bolts are tight``."""

from dataclasses import replace

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.outcomes import INWARD, OUTWARD, Case, Now, is_told_of, read_outcome
from procbuilder.infer.hearing.verb_phrase import Told

PASSING = frozenset({"through", "over", "under", "round", "around", "up", "down", "across", "into", "onto"})
"""Ways in which something that is off goes back."""
CLOSED = ("tighten", "torque", "do")
"""Verbs by which a fastener is said to be tight."""


def verb_for(case: Case) -> str:
    """The verb that says the same; empty when it only tells how the thing was found, or where it is."""
    states = case.clauses.book.states
    if state := next((states[word] for word in states if word in case.ways), ""):
        return state if _became_so(case, state) else ""
    return _by_kind(case) or _by_way(case) or ("put" if _passes(case) else "")


def _became_so(case: Case, verb: str) -> bool:
    """False where the state may be how the thing was found: "the bolts are tight", "the chain's loose"."""
    now, thing, is_be = case.now, case.thing, case.outcome.is_be
    turned = case.is_in("fastener", "clip")
    if verb == "torque" and case.outcome.apart:
        return now.slack
    if verb in CLOSED:
        valued = turned and not is_be and case.clauses.has("torque_units", case.outcome.end - 1)
        open_now = now.slack or (now.late and (turned or now.off))
        return (valued or open_now) and verb != "do"
    match verb:
        case "take":
            hangs = is_be and now.begun
            return hangs and not case.ways.isdisjoint({"hanging", "dangling"})
        case "fit":
            return now.off or thing.new
        case "loosen":
            return not is_be
    return True


def _by_kind(case: Case) -> str:
    """What "on", "off" and "down" mean for brakes, switches, props and what is fitted for the job."""
    found = case.ways
    if case.is_in("brake"):
        return "apply" if "on" in found else "release"
    if case.is_in("temporary") and found & {"down", "under", "underneath", "in", "over"}:
        return "put"
    if _is_switched(case) and found & {"on", "off"}:
        return "turn"
    return "take" if ("down" in found and case.is_in("support")) else ""


def _is_switched(case: Case) -> bool:
    thing, now = case.thing, case.now
    part = case.is_in("part") and now.begun
    return now.shut or (not part and not thing.new and not now.off and case.is_in("switched", "driven", "valve"))


def _by_way(case: Case) -> str:
    found, now = case.ways, case.now
    inward = INWARD - {"over"} if case.outcome.is_be else INWARD
    if found & OUTWARD:
        return "take"
    if "on" in found and not now.off and _is_lit(case):
        return ""
    return "put" if (found & inward) else ""


def _is_lit(case: Case) -> bool:
    """ "The red light's on", "front brake on": nothing is fitted."""
    last = singular(case.thing.name.split()[-1]) if case.thing.name else ""
    return last == "brake" or case.clauses.book.has("lights", last)


def _passes(case: Case) -> bool:
    """ "Stub through the hub", "the faceplate's over them": what is off or new goes back."""
    now, found = case.now, case.ways
    into = now.late and not found.isdisjoint({"into", "onto"})
    back = now.gone or (now.back and not found <= {"up", "down"})
    return (back or case.thing.new or into) and not found.isdisjoint(PASSING)


_ONTO = ("on", "in", "into", "onto", "over", "round", "around", "along", "down", "behind", "inside", "to", "between")

_UNDER = ("under", "underneath", "beneath", "between", "behind", "below")
_THERE = (*_UNDER, "in", "into", "on", "onto", "over", "across", "around", "round", "through", "against")
"""Ways to the place of a thing that is fitted for the job only."""


def placed(clauses: Clauses, thing: Thing, *, is_open: bool) -> Told | None:
    """What is fitted for now or put on, as if a verb had said it; None for anything else."""
    if not (clauses.stands_first(thing.start) or _is_announced(clauses, thing)):
        return None
    at = thing.end
    if _lies_there(clauses, thing, at, is_open=is_open):
        leads = clauses.low(at + 1) != "what"
        return Told("put", Form.BASE, thing.start, at + 1, (thing,), (clauses.low(at),), leads=leads)
    if _is_put_on(clauses, thing, at):
        return Told("put", Form.BASE, thing.start, at + 1, (thing,), ("on",), leads=True)
    return None


def _is_announced(clauses: Clauses, thing: Thing) -> bool:
    """ "Second thing is a strap round the mast"."""
    before = range(clauses.clause, thing.start)
    return all(clauses.has("be", at) or clauses.has("openers", at) for at in before)


def _is_put_on(clauses: Clauses, thing: Thing, at: int) -> bool:
    """ "A smear of grease on the lip": what is put on, and where."""
    is_dab = any(clauses.has("dabs", each) for each in range(thing.start, thing.end))
    if not (is_dab or clauses.book.is_in(thing.name, ("paste",))) or clauses.low(at) not in _ONTO:
        return False
    place = read_thing(clauses.tokens, at + 1, clauses.book)
    return place is not None and clauses.low(thing.start) != "the" and not _does(clauses, place.end)


def _does(clauses: Clauses, at: int) -> bool:
    """ "Grease on the end keeps it off", "a bit of oil on it would help": a verb follows."""
    rest = range(at, len(clauses.tokens))
    ends = next((each for each in rest if clauses.low(each) in SIGNS), len(clauses.tokens))
    if any(clauses.has("supposed", each) for each in range(at, ends)):
        return True
    return clauses.goes_on_to_do(at)


def _lies_there(clauses: Clauses, thing: Thing, at: int, *, is_open: bool) -> bool:
    """ "Tray under it", "rag in the intake": what is fitted for the job only, and where."""
    low, book = clauses.low(at), clauses.book
    if low in ("underneath", "under", "below") and clauses.low(at + 1) in SIGNS:
        return book.is_in(thing.name, ("temporary", "support", "catching"))
    place = read_thing(clauses.tokens, at + 1, book)
    if clauses.low(at + 1) == "what":
        return low in _THERE and not is_open
    if place is None or place.measure:
        return False
    does = _does(clauses, place.end)
    under = book.is_in(thing.name, ("temporary", "support", "catching")) and low in _UNDER and not does
    locked = book.is_in(thing.name, ("lock",)) and low in ("on", "through")
    laid = book.is_in(place.name, ("place", "body")) or book.has("positions", place.name)
    laid = laid or is_open or clauses.low(thing.start) == "the"
    laid = laid or thing.partial
    there = book.is_in(thing.name, ("temporary", "support")) and low in _THERE
    return under or locked or (there and not laid and not does)


_PARTICLES = {"do": ("up",), "take": ("off",)}
"""What a verb needs that was found by a state: "done up"."""
_PARTS = ("fastener", "clip", "seal", "part", "electrical", "pipe", "spring", "battery", "vessel", "lid", "switched")
_LOOSE = ("fluid", "paste", "body", "worn", "dirt", "pressure")
_HAND = ("hand", "palm", "lap")


def result(clauses: Clauses, thing: Thing, now: Now) -> Told | None:
    """What became of a thing, as if a verb had said it; None when nothing did."""
    nameless = thing.pointed and not thing.name and not thing.count
    if thing.measure or nameless or not is_told_of(clauses, thing):
        return None
    return placed(clauses, thing, is_open=now.off) or _became(clauses, thing, now)


def pointed_result(clauses: Clauses, thing: Thing, now: Now) -> Told | None:
    """ "There, he's out", "now they're all at five": what became of something that is only pointed at."""
    outcome = read_outcome(clauses, thing.end)
    if outcome is None or outcome.apart or outcome.doubtful:
        return None
    told = Told("take", Form.BASE, thing.start, outcome.end, (thing,), ("off",))
    if not _is_all(clauses, outcome.end):
        return None
    ways, states = set(outcome.ways), clauses.book.states
    verb = next((states[word] for word in outcome.ways if states.get(word) in CLOSED), "")
    verb = verb or ("take" if (ways & OUTWARD) else "put" if now.late and ways & INWARD else "")
    those = thing.many and clauses.begins(thing.start) and (verb == "take")
    reported = clauses.has("be", thing.start - 1)
    plain = outcome.is_be or those or reported
    return replace(told, verb=verb, particles=outcome.ways) if verb and plain else None


def _is_all(clauses: Clauses, at: int) -> bool:
    """True when no place follows that would only tell where it is; "out in three pieces" does not."""
    while clauses.has("adverbs", at):
        at += 1
    return clauses.low(at) in SIGNS or clauses.low(at) in ("and", "with", "then")


def _became(clauses: Clauses, thing: Thing, now: Now) -> Told | None:
    """ "Washer off", "the cover's back on", "last screw, out"."""
    outcome = read_outcome(clauses, thing.end) or None
    if outcome is None or (outcome.apart and not clauses.heads(thing)):
        return None
    case = Case(clauses, thing, outcome, now)
    verb = verb_for(case)
    in_hand = "in" in case.ways and case.is_at(*_HAND)
    if not verb or (outcome.is_be and not in_hand and _is_found(case, verb)):
        return None
    form = Form.PAST if outcome.already else Form.BASE
    told = Told(verb, form, thing.start, outcome.end, (thing,), _PARTICLES.get(verb, outcome.ways))
    off = replace(told, verb="take", particles=("off",))
    if in_hand:
        return None
    return _put(case, told, off) if verb == "put" else told if _stands(case, told) else None


def _is_found(case: Case, verb: str) -> bool:
    """ "It's still in", "the caliper's off" long after that, "the cover's on with two screws", "my back's out"."""
    now, thing, book = case.now, case.thing, case.clauses.book
    if "free" in case.ways:
        return True
    if verb == "take":
        known = book.knows(thing.name)
        loose = case.is_in(*_LOOSE)
        return now.gone or not known or loose
    several = case.clauses.has("many_pronouns", thing.start - 2)
    fitted = case.is_in("temporary", "support", "lock") and now.begun
    return verb == "put" and not (now.back or now.late or thing.new or several or fitted)


def _put(case: Case, told: Told, off: Told) -> Told | None:
    """What goes on or in, perhaps to a place; what was fitted for the job and is laid somewhere comes out by that."""
    if case.outcome.is_be and _is_back(case):
        return off if case.now.temporary else replace(told, leads=True)
    if "back" not in case.ways and case.is_at("place"):
        return None
    single = case.thing.count == 1 and case.clauses.low(case.thing.start) == "one"
    if (single and case.behind not in SIGNS) or not _stands(case, told):
        return None
    if PASSING.issuperset(told.particles):
        return replace(told, particles=("on", *told.particles), leads=True)
    return told if told.means is not None else replace(told, means=_means(case))


def _is_back(case: Case) -> bool:
    """ "The fork's back up where it lives", "the belt's in its groove": what is off, and not only laid there."""
    now, back, place = case.now, "back" in case.ways, case.place
    if now.temporary:
        return back or case.is_at("place")
    if case.behind == "where":
        return back and now.back
    says_so = back and now.begun
    if place is None or not (now.back or says_so):
        return False
    return not case.is_at("place", "body")


def _means(case: Case) -> Thing | None:
    at = case.outcome.end
    return read_thing(case.clauses.tokens, at + 1, case.clauses.book) if case.behind == "with" else None


def _stands(case: Case, told: Told) -> bool:
    """True when the clause ends behind the particles, so that they are no prepositions, or when these may be."""
    if not case.ways.isdisjoint({"hanging", "dangling"}):
        return "off" in case.ways
    clauses, is_be = case.clauses, case.outcome.is_be
    ends = case.behind in SIGNS or case.behind in ("and", "with", "at", "but")
    at = case.outcome.end
    measure = read_thing(clauses.tokens, at, clauses.book)
    if ends or clauses.has("adverbs", at) or clauses.has("results", at) or (measure is not None and measure.measure):
        return True
    if is_be or told.verb == "turn":
        return False
    if _may_lead(case) or not case.ways.isdisjoint({"off", "out", "back", "clear"}):
        if case.place is not None:
            return not clauses.goes_on_to_do(case.place.end)
        if clauses.has("prepositions", at):
            return True
    return case.behind in ("from", "of", "to", "until", "till", "before")


def _may_lead(case: Case) -> bool:
    """True when a place may follow: "leg up through the yoke", and, while things are put back, "cap on the cable"."""
    now, particles = case.now, case.outcome.ways
    into = now.late and not case.ways.isdisjoint({"into", "onto"})
    leads = not PASSING.isdisjoint(particles) or len(particles) > 1
    plain = (now.late or (now.gone and case.thing.count is None)) and not case.clauses.has("be", case.thing.start - 1)
    return case.thing.new or into or (now.back and (leads or plain))
