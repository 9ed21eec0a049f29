"""What is told of a thing to which something is done: "that gets hooked up", "dust seal pressed in over it"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.hearing.clauses import Clauses

_FOUND = ("replace", "renew", "change", "swap", "clean", "check", "sort")
"""What a finding wants: "that wants replacing"."""


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
    return None


def _behind_adverbs(clauses: Clauses, at: int) -> int:
    while (clauses.has("adverbs", at) or clauses.low(at) in ("both", "each")) and at > clauses.clause:
        at -= 1
    return at
