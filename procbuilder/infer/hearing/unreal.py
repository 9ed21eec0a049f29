"""What is told and not done: intended, avoided, usual, feared, or what a thing is for."""

from procbuilder.infer.hearing.clauses import Clauses

_COULD = ("should", "could", "would", "might", "must", "'d", "to", "ought")


def is_unreal(clauses: Clauses, at: int, verb: int) -> bool:
    """True where a token before a verb says so: "I was going to", "I should have", "I nearly", "I always"."""
    low = clauses.low(at)
    if low in ("going", "gonna"):
        return "was" in (clauses.low(at - 1), clauses.low(at - 2))
    if low in ("have", "'ve") and at < verb:
        return clauses.low(at - 1) in _COULD
    return clauses.has("unreal", at) or _is_habit(clauses, at)


def _is_habit(clauses: Clauses, at: int) -> bool:
    """ "I always put the bolts back in their holes"; but "always tug it" tells what to do."""
    return clauses.low(at) == "always" and clauses.low(at - 1) in ("i", "we", "they")
