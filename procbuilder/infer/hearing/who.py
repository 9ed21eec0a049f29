"""Who does what a verb says: the technician, somebody else, the thing itself, or nobody."""

from dataclasses import dataclass, replace

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.unreal import is_unreal


@dataclass(frozen=True, slots=True)
class Before:
    """What stands before a verb in its clause."""

    negated: bool = False
    purpose: bool = False
    """It tells what for: "to release the tab"."""
    other: bool = False
    """Somebody else does it."""
    moves: bool = False
    """The thing does it by itself, or it is named before: "the cover lifts off"."""
    supposed: bool = False
    """It is only thought of, or what is usual: "you'd normally take it off"."""


def before(clauses: Clauses, at: int, form: Form) -> Before:
    """What stands between the beginning of the clause and its verb."""
    found = Before()
    for back in range(at - 1, clauses.clause - 1, -1):
        if clauses.has("negations", back) or (clauses.low(back), clauses.low(back + 1)) == ("no", "need"):
            found = replace(found, negated=True)
        elif is_unreal(clauses, back, at) or (clauses.has("supposed", back) and form is not Form.PAST):
            found = replace(found, supposed=True)
        elif (known := _known_by(clauses, back, at, found)) is not None:
            return known
    return found


def _known_by(clauses: Clauses, back: int, at: int, found: Before) -> Before | None:
    """What the token says at last of the verb; None to look further back."""
    if clauses.low(back) == "to" and (told_to := _behind_to(clauses, back, found)) is not None:
        return told_to
    if clauses.has("others", back) or _has_done(clauses, back, at):
        return replace(found, other=True)
    if clauses.has("tasks", back) and clauses.has("be", back + 1):
        return found
    if clauses.has("doers", back) or _is_done_to(clauses, back, at):
        return replace(found, supposed=found.supposed)
    if clauses.has("one_pronouns", back) or clauses.has("many_pronouns", back):
        return replace(found, moves=True, other=clauses.low(back - 1) in ("let", "leave", "keep"))
    passed_over = any(clauses.has(kind, back) for kind in ("helpers", "adverbs", "openers", "and"))
    return None if passed_over else replace(found, moves=True)


def _behind_to(clauses: Clauses, at: int, found: Before) -> Before | None:
    """ "Used to take", "tempted to take", and "to get it out", which tells what for; None for "want to take"."""
    if clauses.low(at - 1) == "used" or clauses.has("unreal", at - 1):
        return replace(found, supposed=True)
    if _is_wish(clauses, at - 1):
        return None
    negated = any(clauses.has("negations", each) for each in range(clauses.clause, at))
    return replace(found, purpose=True, negated=negated)


def _has_done(clauses: Clauses, at: int, verb: int) -> bool:
    """ "She's put a bulb in"."""
    past = any(form is Form.PAST for _, form in clauses.book.forms.get(clauses.low(verb), ()))
    return clauses.low(at) == "'s" and clauses.has("others", at - 1) and past


def _is_done_to(clauses: Clauses, at: int, verb: int) -> bool:
    return at == verb - 1 and clauses.has("be", at) and clauses.low(verb) in clauses.book.by_verb


def _is_wish(clauses: Clauses, at: int) -> bool:
    while clauses.has("adverbs", at) and at > clauses.clause:
        at -= 1
    return clauses.has("wishes", at) or 0 <= at < clauses.clause
