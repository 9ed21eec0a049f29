"""Fills the gaps of a text with facts, each said as its kind is said in a language."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date, timedelta
from decimal import Decimal
from string import Formatter
from typing import Any

from procbuilder.model.facts import Blank, Facts, Line, Phrase, StepRef, Term, Time
from procbuilder.model.footage import Weakness
from procbuilder.model.ledger import Moment, OnWay
from procbuilder.model.origin import Origin
from procbuilder.model.quantity import Item
from procbuilder.model.timecode import Span, format_time
from procbuilder.publish.filmed import WEAK
from procbuilder.publish.language import Language
from procbuilder.publish.terms import source, thing, way
from procbuilder.publish.wording.causes import CAUSES
from procbuilder.publish.wording.patterns import Plural, Text
from procbuilder.publish.wording.phrases import BLANKS, IN_LINE, IN_STEP, ON_FILM, OR, PHRASES, STEP
from procbuilder.publish.wording.progress import PROGRESS


def filled(text: Text, given: Facts, language: Language) -> str:
    """A text in a language with its gaps filled.

    A gap may say how: ``{points:.1f}`` digits, ``{steps:n}`` the numbers alone, ``{film:t}`` the times alone,
    ``{commands:q}`` each in quotes; and behind that ``{names:,}`` a list without "and", ``{sizes:|}`` with "or",
    ``{parts:/}`` with bars.
    """
    values = dict(given)
    if isinstance(text, Plural):
        said = language.translations.ngettext(text.one, text.many, _count(values[text.gap]))
    else:
        said = language.text(text)
    return _Gaps(language).vformat(said, (), values)


def _count(value: Any) -> int:
    """A list counts as many as it holds; a broken number as more than one."""
    if isinstance(value, tuple):
        return len(value)
    return int(value) if value == int(value) else 2


class _Gaps(Formatter):
    def __init__(self, language: Language) -> None:
        self.language = language

    def get_value(self, key: int | str, _args: Sequence[Any], kwargs: Mapping[str, Any]) -> Any:
        return kwargs[str(key)]

    def format_field(self, value: Any, format_spec: str) -> str:
        return say(value, self.language, format_spec)


def say(value: Any, language: Language, how: str = "") -> str:
    """One fact in words."""
    if isinstance(value, tuple):
        return _joined([say(part, language, how.rstrip(",|/")) for part in value], language, how[-1:])
    if how == "q":
        return f'"{say(value, language)}"'
    if isinstance(value, StepRef) and how == "n":
        return str(value.number)
    if isinstance(value, Span) and how == "t":
        return f"{format_time(value.start)}–{format_time(value.end)}"
    if isinstance(value, float):
        return format(value, how).replace(".", language.decimal)
    told = next((tell for kind, tell in _TELLERS if isinstance(value, kind)), None)
    return told(value, language) if told else str(value)


def _joined(parts: Sequence[str], language: Language, joint: str) -> str:
    if joint in (",", "/") or not parts:
        return (", " if joint == "," else " | ").join(parts)
    *before, last = parts
    if joint == "|" and before:
        return language.text(OR, parts=", ".join(before), last=last)
    return language.every(parts)


def _moment(moment: Moment, language: Language) -> str:
    """``at strip 0:07 (step 3)``, ``in step 3`` when it was not filmed, ``in line 12`` for a front list."""
    if not moment.number:
        return language.text(IN_LINE, line=moment.place.line)
    if moment.time is None:
        return language.text(IN_STEP, number=moment.number)
    film = _time(Time(moment.time, moment.recording), language)
    return language.text(ON_FILM, film=film, number=moment.number)


def _time(time: Time, _language: Language) -> str:
    return f"{time.recording} {format_time(time.seconds)}".strip()


def _lasting(time: timedelta) -> str:
    """``27 min``, ``3 h 5 min`` or ``40 s``: the symbols are the same in every language."""
    seconds = round(time.total_seconds())
    if seconds < 60:
        return f"{seconds} s"
    hours, minutes = divmod(round(seconds / 60), 60)
    return f"{hours} h {minutes} min" if hours else f"{minutes} min"


def _line(line: Line, language: Language) -> str:
    parts = [_part(part, language) for part in line.parts]
    parts += [f"{word}: {_part(value, language)}" for word, value in line.words]
    return f"- {line.field}: {' | '.join(parts)}" if line.field else parts[0]


def _part(value: Any, language: Language) -> str:
    things = value if isinstance(value, tuple) else (value,)
    return "; ".join(say(thing, language) for thing in things)


def _phrase(phrase: Phrase, language: Language) -> str:
    return filled({**PHRASES, **CAUSES, **PROGRESS}[phrase.form], phrase.facts, language)


_TELLERS: tuple[tuple[type, Callable[[Any, Language], str]], ...] = (
    (Decimal, lambda value, language: language.number(value)),
    (date, lambda value, language: language.date(value)),
    (timedelta, lambda time, _: _lasting(time)),
    (Time, _time),
    (Moment, _moment),
    (OnWay, way),
    (StepRef, lambda step, language: language.text(STEP, number=step.number)),
    (Item, thing),
    (Origin, lambda origin, language: source(origin, language).words),
    (Term, lambda term, language: language.text(term.word)),
    (Blank, lambda blank, language: language.text(BLANKS.get(blank.name, blank.name))),
    (Line, _line),
    (Phrase, _phrase),
    (Weakness, lambda weakness, language: language.text(WEAK[weakness])),
)
"""How each kind of fact is said; any other as it is written."""
