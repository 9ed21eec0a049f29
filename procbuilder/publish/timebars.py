"""The minutes of each step as a table with a bar beside each row; page and PDF draw the same bars."""

from dataclasses import dataclass
from decimal import Decimal

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Basis, Evidence, StepTime
from procbuilder.model.footage import FootageSplit
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
    source = "; ".join(filter(None, (_source(time), _apart(time), crew, extra)))
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
    return f"{count}{_words(best, time.split)}{besides}"


def _words(best: Evidence, split: FootageSplit | None) -> str:
    if best.basis is Basis.FOOTAGE and split:
        return "film in which no cut was found"
    return "logged run" if best.basis is Basis.LOG and best.count == 1 else BASIS_WORDS[best.basis]


def _short(other: Evidence) -> str:
    if other.basis is Basis.TYPED:
        return f"typed {other.likely:f} min"
    return f"film {other.likely:f} min{' with cuts – lower bound' if other.basis is Basis.CUT else ''}"


def _apart(time: StepTime) -> str:
    """What else the film holds: not counted."""
    split = time.split
    if split is None:
        return ""
    if split.speed != 1:
        return "the film does not run at the speed of the work, and tells no time"
    parts = [(split.talk, "talk"), (split.still, "nothing moving")]
    told = [f"{round(seconds)} s {name}" for seconds, name in parts if round(seconds)]
    return f"apart from it {' and '.join(told)} on film" if told else ""
