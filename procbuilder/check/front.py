"""Rules about what must stand before the first step."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.facts import Blank, Line, facts
from procbuilder.model.problem import PAPER, Problem, Severity, answer

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
            yield Problem("empty-front-list", Severity.ASK, place, given, name, danger, name, order=PAPER)


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


def no_words_for_language(case: Case) -> Iterator[Problem]:
    """Nothing was looked for by words: silence of the other rules says nothing here."""
    front, rule = case.procedure.front, "no-words-for-language"
    if not case.lexicon.language:
        language = front["language"]
        given = facts(language=language, answer=answer(rule, language, case.front, "who-went-through", "Asked"))
        place = front.place("language", case.procedure.place)
        yield Problem(rule, Severity.ASK, place, given, danger=1, subject=language, blocks=True, order=-2)


def narration_not_read(case: Case) -> Iterator[Problem]:
    """A narration in a language whose spoken sentences nobody has taught us: no torque, no step is taken from it."""
    lexicon, narration = case.lexicon, case.procedure.front.narration
    if lexicon.language and not lexicon.heard and narration:
        front, rule = case.procedure.front, "narration-not-read"
        language = front["language"]
        given = facts(language=language, answer=answer(rule, language, case.front, "who-compared", "Asked"))
        place = front.place("narration", case.procedure.place)
        yield Problem(rule, Severity.ASK, place, given, danger=2, subject=language)
