"""What is wrong or missing in a procedure: data, collected and shown all at once."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from procbuilder.model.origin import Place


class Severity(StrEnum):
    """How far a problem lets a procedure go."""

    STOP = "stop"
    """It must not be approved or worked by."""
    ASK = "ask"
    """The technician has to say what is meant."""
    ADVICE = "advice"
    """It would read or work better."""


RANK = {severity: rank for rank, severity in enumerate(Severity)}


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong, where it stands, and what to write instead."""

    severity: Severity
    place: Place
    what: str
    instead: str
    rule: str
    """Name of the rule that found it."""
    danger: int = 5
    """1 someone could be hurt, 2 the item could fail later, 3 somebody's rights,
    4 the reader would get stuck, 5 time, 6 style."""
    blocks: bool = False
    """It is asked, and nobody may approve the procedure before it is answered."""
    subject: str = ""
    """The question that one ``Asked``, ``Refused`` or ``Downgraded`` settles, even where it stops."""
    order: int = 0
    """Among the same danger, the lower comes first."""

    def __str__(self) -> str:
        return f"{self.place}: {self.what} – {self.instead}"


def worst_first(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Stops before questions before advice, the most dangerous first, then by place; no doubles."""
    return tuple(sorted(dict.fromkeys(problems), key=lambda p: (RANK[p.severity], p.danger, p.order, p.place)))


def stops(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Only those that make it a draft."""
    return tuple(problem for problem in problems if problem.severity is Severity.STOP)


def blocking(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Those that must be settled before anyone may approve."""
    return tuple(problem for problem in problems if problem.severity is Severity.STOP or problem.blocks)
