"""Rules about what must stand before the first step."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.facts import Blank, Line, facts
from procbuilder.model.languages import WRITTEN, is_written
from procbuilder.model.problem import Problem, Severity

_LISTS = (("Tool", 4), ("Supply", 4), ("Part", 4), ("Condition", 1), ("Wear", 1))
"""Field, and how dangerous it is to leave it out."""
_IDENTITY = (("number", Severity.ASK), ("revision", Severity.ASK), ("author", Severity.ADVICE))


def empty_front_list(case: Case) -> Iterator[Problem]:
    """A list that is empty without saying ``none``: nobody can tell whether it was forgotten.

    What steps name counts too, except for conditions.
    """
    for name, danger in _LISTS:
        named = case.procedure.listed(name) if name == "Condition" else case.procedure.everywhere(name)
        if not named:
            given = facts(
                line=Line(name, (Blank("…"),), place=case.front), none=Line(name, ("none",), place=case.front)
            )
            place = case.front or case.procedure.place
            yield Problem("empty-front-list", Severity.ASK, place, given, name, danger, name)


def no_steps(case: Case) -> Iterator[Problem]:
    """A procedure without a single step."""
    if not case.procedure.steps:
        yield Problem("no-steps", Severity.STOP, case.procedure.place, danger=4)


def unnamed_procedure(case: Case) -> Iterator[Problem]:
    """No number, revision or author: a printed copy could not be told from an older one."""
    front = case.procedure.front
    for key, severity in _IDENTITY:
        if not front[key]:
            place = front.place(key, case.procedure.place)
            yield Problem("unnamed-procedure", severity, place, facts(key=key), key, 5, key)


def language_without_words(case: Case) -> Iterator[Problem]:
    """A language in which page and PDF cannot speak for themselves: what nobody typed is then in English."""
    front = case.procedure.front
    if not is_written(front["language"]):
        given = facts(language=front["language"], known=tuple(Line("", (f"language: {code}",)) for code in WRITTEN))
        place = front.place("language", case.procedure.place)
        yield Problem("language-without-words", Severity.ADVICE, place, given, "", 4, front["language"])
