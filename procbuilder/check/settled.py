"""Questions that were answered before: what is refused or downgraded with a reason is not asked again."""

import re
from collections.abc import Iterable, Iterator

from procbuilder.model.fields import Field
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Procedure
from procbuilder.model.words import mentioned

_NUMBERS = re.compile(r"\b(?:steps?|line)\s+\d+(?:(?:,| and)\s+\d+)*")
_ENOUGH = 3
"""Words of a question by which it is known, where they are not all of it."""
_MUST_BE_ANSWERED = frozenset({"dangers-not-confirmed"})
_BY_DOWNGRADE = frozenset({"danger-proposed"})


def unsettled(procedure: Procedure, problems: Iterable[Problem]) -> Iterator[Problem]:
    """The problems that are still open. A stop is never settled by words, and nor is the list of all dangers.

    ``Refused`` and ``Asked`` name the question by its subject or by some words of it; the numbers of steps
    do not count, because steps move.
    """
    answered = [_plain(entry.part("question")) for entry in procedure.everywhere("Asked", "Refused") if _has(entry)]
    lowered = [_plain(entry.part("what")) for entry in procedure.everywhere("Downgraded") if entry.part("reason")]
    for problem in problems:
        settled_by = answered + (lowered if problem.rule in _BY_DOWNGRADE else [])
        fixed = problem.severity is Severity.STOP or problem.rule in _MUST_BE_ANSWERED
        if fixed or not any(_names(question, problem) for question in settled_by):
            yield problem


def _has(entry: Field) -> bool:
    return bool(entry.part("question") and entry.part("answer"))


def _names(question: str, problem: Problem) -> bool:
    for text in filter(None, (problem.subject, problem.what)):
        said = _plain(text)
        if question == said or (len(question.split()) >= _ENOUGH and mentioned(said, [question])):
            return True
    return False


def _plain(text: str) -> str:
    return " ".join(_NUMBERS.sub("", text).casefold().split())
