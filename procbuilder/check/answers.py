"""Questions that the procedure has already dealt with."""

from procbuilder.check.case import Case
from procbuilder.model.words import mentioned


def is_answered(name: str, case: Case) -> bool:
    """True when an Asked or Refused line is about this thing."""
    settled = case.procedure.everywhere("Asked", "Refused")
    return any(mentioned(entry.part("question"), [name]) for entry in settled)
