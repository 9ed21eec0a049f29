"""Who does what a verb says: the technician, somebody else, the thing itself, or nobody."""

from dataclasses import dataclass, replace

from procbuilder.infer.clauses import Clauses
from procbuilder.infer.inflect import Form


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
        if clauses.has("negations", back) or (clauses.low(back) == "no" and clauses.low(back + 1) == "need"):
            found = replace(found, negated=True)
        elif _is_habit(clauses, back) or _is_unreal(clauses, back, at) or _is_threat(clauses, back, at) or (clauses.has("supposed", back) and form is not Form.PAST):
            found = replace(found, supposed=True)
        elif (clauses.low(back) == "to" and clauses.low(back - 1) == "used") or (clauses.low(back) == "to" and clauses.has("unreal", back - 1)):
            return replace(found, supposed=True)
        elif clauses.low(back) == "to" and not _is_wish(clauses, back - 1):
            negated = any(clauses.has("negations", each) for each in range(clauses.clause, back))
            return replace(found, purpose=True, negated=negated)
        elif clauses.has("others", back) or _is_what_it_does(clauses, back) or (clauses.low(back) == "'s" and clauses.has("others", back - 1) and _may_be_past(clauses, at)):
            return replace(found, other=True)
        elif clauses.has("doers", back) or (
            back == at - 1 and clauses.has("be", back) and clauses.low(at) in clauses.book.by_verb
        ):
            return replace(found, supposed=found.supposed or _is_supposed(clauses, back))
        elif clauses.has("one_pronouns", back) or clauses.has("many_pronouns", back):
            return replace(found, moves=True, other=clauses.low(back - 1) in ("let", "leave", "keep"))
        elif not any(clauses.has(kind, back) for kind in ("helpers", "adverbs", "openers", "and")):
            return replace(found, moves=True)
    return found


def _is_habit(clauses: Clauses, at: int) -> bool:
    """ "I always put the bolts back in their holes"; but "always tug it" tells what to do."""
    return clauses.low(at) == "always" and clauses.low(at - 1) in ("i", "we", "they")


def _is_unreal(clauses: Clauses, at: int, verb: int) -> bool:
    """ "I was going to take it off but", "I should have drained it", "I nearly dropped it": it was not done."""
    low = clauses.low(at)
    if low in ("going", "gonna"):
        return clauses.low(at - 1) in ("was", "were") or clauses.low(at - 2) in ("was", "were")
    if low in ("have", "'ve") and at < verb:
        return clauses.low(at - 1) in _COULD or (clauses.has("negations", at - 1) and clauses.low(at - 2) in _COULD)
    return clauses.has("unreal", at)


def _may_be_past(clauses: Clauses, at: int) -> bool:
    return any(form is Form.PAST for _, form in clauses.book.forms.get(clauses.low(at), ()))


def _is_threat(clauses: Clauses, at: int, verb: int) -> bool:
    """ "Don't force it, you'll strip the thread"."""
    if clauses.low(at) not in ("'ll", "will") or clauses.low(at - 1) != "you":
        return False
    harms = any(clauses.book.has("damages", one) for one, _ in clauses.book.forms.get(clauses.low(verb), ()))
    return harms and any(clauses.has("negations", each) or clauses.low(each) == "too" for each in range(at))


def _is_what_it_does(clauses: Clauses, at: int) -> bool:
    """ "All it does is hold the cover on", "its job is to hold it": what a thing is for; not "what you do is"."""
    if not clauses.has("be", at):
        return False
    if clauses.low(at - 1) in ("does", "did"):
        return not clauses.has("doers", at - 2)
    return clauses.low(at - 1) in ("job", "purpose") and clauses.low(at + 1) == "to"


_COULD = ("should", "could", "would", "might", "must", "'d", "to", "ought")


def _is_supposed(clauses: Clauses, at: int) -> bool:
    """ "Normally you'd": the word that says so stands before the doer; "would you undo it" asks for it."""
    asked = clauses.low(at) == "you" and clauses.low(at - 1) in ("would", "could") and clauses.begins(at - 1)
    return not asked and any(
        clauses.has("supposed", back) or clauses.has("unreal", back) for back in range(clauses.clause, at)
    )


def _is_wish(clauses: Clauses, at: int) -> bool:
    while clauses.has("adverbs", at) and at > clauses.clause:
        at -= 1
    return clauses.has("wishes", at) or at < clauses.clause
