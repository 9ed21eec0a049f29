"""Questions that were answered before: what is refused or downgraded with a reason is not asked again."""

import re
from collections.abc import Iterable, Iterator

from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Procedure

_NUMBERS = re.compile(r"\b(?:steps?|line)\s+\d+(?:(?:,| and)\s+\d+)*")
_WORD = re.compile(r"[^\W_]+")
_ENOUGH = 3
"""Words of a question by which it is known, where they are not all of it."""
_LONGEST = 60
"""Words of a question among which an answer may quote."""
_MUST_BE_ANSWERED = frozenset({"dangers-not-confirmed"})
_BY_DOWNGRADE = frozenset({"danger-proposed"})

Words = tuple[str, ...]


def unsettled(procedure: Procedure, problems: Iterable[Problem]) -> Iterator[Problem]:
    """The problems that are still open. A stop is never settled by words, and nor is the list of all dangers.

    ``Refused`` and ``Asked`` name the question by its subject or by some words of it; the numbers of steps
    do not count, because steps move.
    """
    asked = procedure.everywhere("Asked", "Refused")
    answered = {_words(entry.part("question")) for entry in asked if entry.part("answer")}
    lowered = {_words(entry.part("what")) for entry in procedure.everywhere("Downgraded") if entry.part("reason")}
    for problem in problems:
        answers = answered | lowered if problem.rule in _BY_DOWNGRADE else answered
        fixed = problem.severity is Severity.STOP or problem.rule in _MUST_BE_ANSWERED
        if fixed or not answers or answers.isdisjoint(_names(problem)):
            yield problem


def _names(problem: Problem) -> Iterator[Words]:
    """All that names a problem: its subject, its sentence, and any three or more words of them behind one another."""
    for text in filter(None, (problem.subject, problem.what)):
        said = _words(text)
        yield said
        said = said[:_LONGEST]
        for first in range(len(said)):
            for behind in range(first + _ENOUGH, len(said) + 1):
                yield said[first:behind]


def _words(text: str) -> Words:
    return tuple(_WORD.findall(_NUMBERS.sub("", text).casefold()))
