"""What is told of a thing to which something is done: "that gets hooked up", "dust seal pressed in over it"."""

from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.fronted import named_before
from procbuilder.infer.hearing.inflect import Form
from procbuilder.infer.hearing.nouns import Thing, read_thing

_FOUND = ("replace", "renew", "change", "swap", "clean", "check", "sort")
"""What a finding wants: "that wants replacing"."""
_TOLD_TO = frozenset({"to", "gotta", "must", "should", "will", "'ll", "shall"})
"""Before "be": it is to be done."""


def undergoes(clauses: Clauses, at: int) -> Thing | None:
    """The thing to which the past form at a token is done; None when it is no order and no report of work."""
    forms = clauses.book.forms.get(clauses.low(at), ())
    back = _behind_adverbs(clauses, at - 1)
    is_work = forms and all(form is Form.ING and verb not in _FOUND for verb, form in forms)
    if is_work and clauses.low(back) in ("wants", "want", "needs", "need"):
        return clauses.subject
    if not forms or any(form is not Form.PAST for _, form in forms):
        return None
    is_told = clauses.low(back) == "be"
    if is_told or clauses.low(back) in ("get", "gets", "getting"):
        return clauses.subject
    if at == clauses.clause and clauses.low(back) == "," and clauses.company:
        return clauses.company[-1]
    return clauses.subject if _is_report(clauses, at, back) else None


def _at_first(clauses: Clauses, back: int) -> Thing | None:
    return None


def _is_report(clauses: Clauses, at: int, back: int) -> bool:
    """ "Bolts torqued to twenty": nothing but the thing stands before it; "the clip snapped" is no work."""
    return False


def _is_reported(clauses: Clauses, subject: Thing) -> bool:
    """True for what stands first, and for "that's the bolts"; "there's a ring pressed on it" only tells how it is."""
    return True


def _is_damage(clauses: Clauses, at: int) -> bool:
    return any(clauses.book.has("damages", verb) for verb, _ in clauses.book.forms[clauses.low(at)])


def _behind_adverbs(clauses: Clauses, at: int) -> int:
    while (clauses.has("adverbs", at) or clauses.low(at) in ("both", "each")) and at > clauses.clause:
        at -= 1
    return at
