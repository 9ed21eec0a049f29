"""Questions that were answered before: what is asked, refused or downgraded with a reason is not asked again."""

from collections.abc import Iterable, Iterator

from procbuilder.model.fields import Field
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import Procedure

_BY_DOWNGRADE = "danger-proposed"
"""The rule whose proposals a ``Downgraded`` names by their hazard alone."""


def unsettled(procedure: Procedure, problems: Iterable[Problem]) -> Iterator[Problem]:
    """The problems that are still open: an answer settles the one rule and the one subject that it names."""
    answered = _answered(procedure.everywhere("Asked", "Refused"), "question", "answer")
    lowered = _answered(procedure.everywhere("Downgraded"), "what", "reason")
    for problem in problems:
        by_name = _folded(problem.question) in answered
        by_hazard = problem.rule == _BY_DOWNGRADE and _folded(problem.subject) in lowered
        if not problem.subject or not (by_name or by_hazard):
            yield problem


def _answered(fields: tuple[Field, ...], what: str, answer: str) -> frozenset[str]:
    return frozenset(_folded(entry.part(what)) for entry in fields if entry.part(answer))


def _folded(text: str) -> str:
    """Without the difference between ``Wrong-order:  X`` and ``wrong order: x``."""
    return " ".join(text.casefold().replace("-", " ").split())
