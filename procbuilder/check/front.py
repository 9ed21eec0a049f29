"""Rules about what must stand before the first step."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.languages import WRITTEN, is_written
from procbuilder.model.problem import Problem, Severity, worded

_LISTS = (
    ("Tool", "no tool is listed", 4),
    ("Supply", "no supply is listed", 4),
    ("Part", "no part is listed", 4),
    ("Condition", "no condition is listed that must be met before the start", 1),
    ("Wear", "no protective equipment is listed", 1),
)
"""Field, what is wrong, how dangerous it is to leave it out."""
_IDENTITY = (("number", Severity.ASK), ("revision", Severity.ASK), ("author", Severity.ADVICE))


def empty_front_list(case: Case) -> Iterator[Problem]:
    """A list that is empty without saying ``none``: nobody can tell whether it was forgotten.

    What steps name counts too, except for conditions.
    """
    before = next((section.place for section in case.procedure.sections), case.procedure.place)
    for name, what, danger in _LISTS:
        named = case.procedure.listed(name) if name == "Condition" else case.procedure.everywhere(name)
        if not named:
            yield worded(
                Severity.ASK,
                before,
                what,
                f'add "- {name}: …" before the first step, or "- {name}: none"',
                "empty-front-list",
                danger,
            )


def no_steps(case: Case) -> Iterator[Problem]:
    """A procedure without a single step."""
    if not case.procedure.steps:
        yield worded(
            Severity.STOP,
            case.procedure.place,
            "the procedure has no step",
            'write each as a heading: "### 0:42-1:15 Prise off the dust cap"',
            "no-steps",
            4,
        )


def unnamed_procedure(case: Case) -> Iterator[Problem]:
    """No number, revision or author: a printed copy could not be told from an older one."""
    front = case.procedure.front
    for key, severity in _IDENTITY:
        if not front[key]:
            yield worded(
                severity,
                front.place(key, case.procedure.place),
                f"the procedure has no {key}",
                f'write "{key}: …" between the --- lines at the top',
                "unnamed-procedure",
                5,
            )


def language_without_words(case: Case) -> Iterator[Problem]:
    """A language in which page and PDF cannot speak for themselves: what nobody typed is then in English."""
    front = case.procedure.front
    known = " or ".join(f'"language: {code}"' for code in WRITTEN)
    if not is_written(front["language"]):
        yield worded(
            Severity.ADVICE,
            front.place("language", case.procedure.place),
            f'there are no words for the language "{front["language"]}": headings and sentences of page and PDF are '
            "in English",
            f"write {known}; what you typed stays as it is",
            "language-without-words",
            4,
        )
