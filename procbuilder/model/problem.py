"""What is wrong or missing in a procedure: facts, collected and shown all at once."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from procbuilder.model.facts import Blank, Facts, Line, StepRef, every
from procbuilder.model.ledger import Moment
from procbuilder.model.origin import Place
from procbuilder.model.signal import Signal


class Severity(StrEnum):
    """How far a problem lets a procedure go."""

    STOP = "stop"
    """It must not be approved or worked by."""
    ASK = "ask"
    """The technician has to say what is meant."""
    ADVICE = "advice"
    """It would read or work better."""


RESERVED = "reserved"
"""The rule and form of a problem of which this reader is told only that there is one."""

PAPER = 2 * len(Signal)
"""The order of what only somebody's word or a list lacks, behind every danger by name."""

RANK = {severity: rank for rank, severity in enumerate(Severity)}


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong, and where it stands. What it says is worded in ``publish/wording``."""

    rule: str
    """Name of the rule that found it."""
    severity: Severity
    place: Place
    facts: Facts = ()
    """What the sentences of the rule are filled with."""
    form: str = ""
    """Which of its sentences, where it has several."""
    danger: int = 5
    """1 someone could be hurt, 2 the item could fail later, 3 somebody's rights,
    4 the reader would get stuck, 5 time, 6 style."""
    subject: str = ""
    """What it is about. An answer settles one rule about one subject; empty: no answer settles it."""
    blocks: bool = False
    """It is asked, and nobody may approve the procedure before it is answered."""
    order: int = 0
    """Among the same danger, the lower comes first."""

    @property
    def question(self) -> str:
        """What stands behind ``Asked:`` or ``Refused:`` to settle exactly this; empty when no answer does."""
        return question(self.rule, self.subject) if self.subject else ""

    @property
    def steps(self) -> frozenset[str]:
        """Ids of the steps of which it speaks; its place may lie in one more."""
        said = tuple(every(self.facts))
        return frozenset(
            {value.id for value in said if isinstance(value, StepRef)}
            | {value.step for value in said if isinstance(value, Moment)}
        )

    @property
    def lines(self) -> tuple[Line, ...]:
        """The lines that it proposes."""
        return tuple(value for value in every(self.facts) if isinstance(value, Line))


def question(rule: str, subject: str) -> str:
    """How an answer names a rule and its subject: ``wrong order: support the gearbox before it comes out``."""
    return f"{rule.replace('-', ' ')}: {subject}"


def answer(rule: str, subject: str, place: Place | None, why: str = "why-not", field: str = "Refused") -> Line:
    """The line that settles it, below the heading of its step; the technician fills in why."""
    return Line(field, (question(rule, subject), Blank(why)), place=place)


def answerable(severity: Severity, subject: str) -> str:
    """The subject of a question; a stop has none, so that no answer settles it."""
    return "" if severity is Severity.STOP else subject


def worst_first(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Stops before questions before advice, the most dangerous first, then by place; no doubles."""
    return tuple(sorted(dict.fromkeys(problems), key=lambda p: (RANK[p.severity], p.danger, p.order, p.place)))


def stops(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Only those that make it a draft."""
    return tuple(problem for problem in problems if problem.severity is Severity.STOP)


def blocking(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Those that must be settled before anyone may approve."""
    return tuple(problem for problem in problems if problem.severity is Severity.STOP or problem.blocks)
