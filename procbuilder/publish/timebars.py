"""The minutes of each step as a table with a bar beside each row; page and PDF draw the same bars."""

from dataclasses import dataclass
from decimal import Decimal

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Basis, Evidence, StepTime
from procbuilder.publish.words import BASIS_WORDS


@dataclass(frozen=True, slots=True)
class Bar:
    """One step of the table. Places on the bar are percent of the longest one."""

    number: int
    id: str
    command: str
    minutes: str
    """``4–10, likely 6``."""
    source: str
    """What the minutes come from, and what else there is."""
    start: float
    """0 for a single figure, so that it is a bar too."""
    likely: float
    end: float
    unsure: bool
    """The minutes are a lower bound, or nothing is known: drawn with a dashed edge."""


def bars(edition: Edition) -> tuple[Bar, ...]:
    """One bar for each step, in order."""
    times = {time.step: time for time in edition.estimate.steps}
    longest = max((time.high for time in times.values()), default=Decimal(0))
    return tuple(
        _bar(step.number, step.command, times[step.id], step.only_if, longest)
        for step in edition.steps
        if step.id in times
    )


def _bar(number: int, command: str, time: StepTime, only_if: str, longest: Decimal) -> Bar:
    start, likely, end = (_percent(minutes, longest) for minutes in (time.low, time.likely, time.high))
    start = 0.0 if time.low == time.high else start
    unsure = time.basis not in (Basis.LOG, Basis.TYPED)
    extra = f"only if {only_if}: not in the total" if time.extra else ""
    crew = f"{time.people} people" if time.people > 1 else ""
    source = "; ".join(filter(None, (_source(time), crew, extra)))
    return Bar(number, time.step, command, _minutes(time), source, start, likely, end, unsure)


def _percent(minutes: Decimal, longest: Decimal) -> float:
    return round(float(minutes / longest * 100), 1) if longest else 0.0


def _minutes(time: StepTime) -> str:
    if time.basis is Basis.NOTHING:
        return "not known"
    if time.low == time.high:
        least = "at least " if time.basis is Basis.CUT else ""
        return f"{least}{time.likely:f}"
    return f"{time.low:f}–{time.high:f}, likely {time.likely:f}"


def _source(time: StepTime) -> str:
    """The evidence that counts, and behind it what else there is."""
    if not time.evidence:
        return BASIS_WORDS[time.basis]
    best, *others = time.evidence
    count = f"{best.count} " if best.basis is Basis.LOG else ""
    besides = "".join(f"; besides: {_short(other)}" for other in others)
    return f"{count}{_words(best)}{besides}"


def _words(best: Evidence) -> str:
    return "logged run" if best.basis is Basis.LOG and best.count == 1 else BASIS_WORDS[best.basis]


def _short(other: Evidence) -> str:
    name = "typed" if other.basis is Basis.TYPED else "footage"
    return f"{name} {other.likely:f} min"
