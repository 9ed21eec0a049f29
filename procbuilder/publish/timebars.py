"""The minutes of each step as a table with a bar beside each row; page and PDF draw the same bars."""

from dataclasses import dataclass
from decimal import Decimal

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Basis, Evidence, StepTime
from procbuilder.model.footage import FootageSplit
from procbuilder.publish.language import Language, language_of
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
    language = language_of(edition.language)
    times = {time.step: time for time in edition.estimate.steps}
    longest = max((time.high for time in times.values()), default=Decimal(0))
    return tuple(
        _bar(step.number, step.command, times[step.id], step.only_if, longest, language)
        for step in edition.steps
        if step.id in times
    )


def _bar(number: int, command: str, time: StepTime, only_if: str, longest: Decimal, language: Language) -> Bar:
    start, likely, end = (_percent(minutes, longest) for minutes in (time.low, time.likely, time.high))
    start = 0.0 if time.low == time.high else start
    unsure = time.basis not in (Basis.LOG, Basis.TYPED)
    extra = language.text("only if {condition}: not in the total", condition=only_if) if time.extra else ""
    people = language.text("{count} people", count=time.people) if time.people > 1 else ""
    source = "; ".join(filter(None, (_source(time, language), _apart(time, language), people, extra)))
    return Bar(number, time.step, command, _minutes(time, language), source, start, likely, end, unsure)


def _percent(minutes: Decimal, longest: Decimal) -> float:
    return round(float(minutes / longest * 100), 1) if longest else 0.0


def _minutes(time: StepTime, language: Language) -> str:
    low, likely, high = (language.number(minutes) for minutes in (time.low, time.likely, time.high))
    if time.basis is Basis.NOTHING:
        return language.text("not known")
    if time.low == time.high:
        return language.text("at least {minutes}", minutes=likely) if time.basis is Basis.CUT else likely
    return language.text("{low}–{high}, likely {likely}", low=low, high=high, likely=likely)


def _source(time: StepTime, language: Language) -> str:
    """The evidence that counts, and behind it what else there is."""
    if not time.evidence:
        return language.text(BASIS_WORDS[time.basis])
    best, *others = time.evidence
    besides = (language.text("besides: {evidence}", evidence=_short(one, language)) for one in others)
    return "; ".join((_words(best, time.split, language), *besides))


def _words(best: Evidence, split: FootageSplit | None, language: Language) -> str:
    if best.basis is Basis.FOOTAGE and split:
        return language.text("film in which no cut was found")
    if best.basis is Basis.LOG:
        return language.plural("{count} logged run", "{count} logged runs", best.count)
    return language.text(BASIS_WORDS[best.basis])


def _short(other: Evidence, language: Language) -> str:
    minutes = language.number(other.likely)
    if other.basis is Basis.TYPED:
        return language.text("typed {minutes} min", minutes=minutes)
    if other.basis is Basis.CUT:
        return language.text("film {minutes} min with cuts – lower bound", minutes=minutes)
    return language.text("film {minutes} min", minutes=minutes)


def _apart(time: StepTime, language: Language) -> str:
    """What else the film holds: not counted."""
    split = time.split
    if split is None:
        return ""
    if split.speed != 1:
        return language.text("the film does not run at the speed of the work, and tells no time")
    talk, still = round(split.talk), round(split.still)
    told = [language.text("{seconds} s talk", seconds=talk)] if talk else []
    told += [language.text("{seconds} s nothing moving", seconds=still)] if still else []
    return language.text("apart from it {parts} on film", parts=language.every(told)) if told else ""
