"""Questions that were answered before: what is asked, refused or downgraded with a reason is not asked again."""

import re
from collections.abc import Iterable, Iterator

from procbuilder.model.fields import Field
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Procedure
from procbuilder.model.words import thing

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
    """The problems that are still open. The list of all dangers is never settled by words.

    An answer that names the subject of a question settles this question, even one that stops, and no
    other. Any other answer settles what it quotes, in some words of it, but never a stop; the numbers
    of steps do not count, because steps move.
    """
    found = tuple(problems)
    subjects = {thing(problem.subject) for problem in found}
    answered = _answered(procedure.everywhere("Asked", "Refused"), "question", "answer")
    lowered = answered | _answered(procedure.everywhere("Downgraded"), "what", "reason")
    for problem in found:
        answers = lowered if problem.rule in _BY_DOWNGRADE else answered
        settled = _is_named(problem, answers) or _is_quoted(problem, answers, subjects)
        if not settled or problem.rule in _MUST_BE_ANSWERED:
            yield problem


def _answered(fields: tuple[Field, ...], what: str, answer: str) -> frozenset[str]:
    return frozenset(entry.part(what) for entry in fields if entry.part(answer))


def _is_named(problem: Problem, answers: frozenset[str]) -> bool:
    return bool(problem.subject) and thing(problem.subject) in {thing(answer) for answer in answers}


def _is_quoted(problem: Problem, answers: frozenset[str], subjects: set[str]) -> bool:
    if problem.severity is Severity.STOP:
        return False
    quotes = {_words(answer) for answer in answers if thing(answer) not in subjects}
    return bool(quotes) and not quotes.isdisjoint(_parts(problem))


def _parts(problem: Problem) -> Iterator[Words]:
    """Subject and sentence of a problem, and any three or more words of them behind one another."""
    for text in filter(None, (problem.subject, problem.what)):
        said = _words(text)
        yield said
        said = said[:_LONGEST]
        for first in range(len(said)):
            for behind in range(first + _ENOUGH, len(said) + 1):
                yield said[first:behind]


def _words(text: str) -> Words:
    return tuple(_WORD.findall(_NUMBERS.sub("", text).casefold()))
