"""The verb of work that says the same as how a thing is now: "the bolts are tight" tightens them."""

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.hearing.case import Case
from procbuilder.infer.hearing.outcome import INWARD, OUTWARD

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
