"""Operations told by how a thing is now: ``washer off``, ``that's the cover back on``, ``the bolts are tight``."""

from dataclasses import replace

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.became import CLOSED, PASSING, verb_for
from procbuilder.infer.hearing.case import Case, Now
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.outcome import INWARD, OUTWARD, read_outcome
from procbuilder.infer.hearing.placed import placed
from procbuilder.infer.hearing.told import Told
from procbuilder.infer.hearing.told_of import is_told_of

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
