"""What is told and not done: intended, avoided, usual, feared, or what a thing is for."""

from procbuilder.infer.hearing.clauses import Clauses

_COULD = ("should", "could", "would", "might", "must", "'d", "to", "ought")


def is_unreal(clauses: Clauses, at: int, verb: int) -> bool:
    """True where a token before a verb says so: "I was going to", "I should have", "I nearly", "I always"."""
    low = clauses.low(at)
    if low in ("going", "gonna"):
        return "was" in (before := (clauses.low(at - 1), clauses.low(at - 2)))
    if low in ("have", "'ve") and at < verb:
        return clauses.low(at - 1) in _COULD
    return _is_habit(clauses, at) or _is_threat(clauses, at, verb)


def _is_habit(clauses: Clauses, at: int) -> bool:
    """ "I always put the bolts back in their holes"; but "always tug it" tells what to do."""
    return clauses.low(at) == "always" and clauses.low(at - 1) in ("i", "we", "they")


def _is_threat(clauses: Clauses, at: int, verb: int) -> bool:
    """ "Don't force it, you'll strip the thread"."""
    return False


def is_what_it_does(clauses: Clauses, at: int) -> bool:
    """ "All it does is hold the cover on", "its job is to hold it": what a thing is for; not "what you do is"."""
    return False


def is_supposed(clauses: Clauses, at: int) -> bool:
    """ "Normally you'd": the word that says so stands before the doer; "would you undo it" asks for it."""
    return False
