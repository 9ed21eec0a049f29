"""Questions that the procedure has already dealt with."""

from procbuilder.check.case import Case
from procbuilder.model.words import thing


def is_answered(question: str, case: Case) -> bool:
    """True when an Asked or Refused line answers just this question: one answer about a thing settles no other one."""
    settled = case.procedure.everywhere("Asked", "Refused")
    return any(thing(entry.part("question")) == thing(question) for entry in settled)
