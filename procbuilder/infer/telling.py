"""All that a procedure and its narration say of the work, each text with its place."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from procbuilder.infer.hearing.sentences import sentences
from procbuilder.model.facts import Time
from procbuilder.model.fields import Field
from procbuilder.model.heard import Sentence
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Narration, Procedure, Prose, Step
from procbuilder.model.signal import SIGNALS

_NO_WORK = (
    *SIGNALS, "Dangers confirmed", "Downgraded", "Asked", "Refused", "Reserved", "Wear", "Document", "Derived",
    "Not included", "Later",
)  # fmt: skip
"""Fields that tell of no work in this job: answers to dangers, papers, and what is left to another day."""
_NOT_READ = ("while", "by", "from")
"""Parts that name a state, a fastener that is read as a thing, or a paper."""


@dataclass(frozen=True, slots=True)
class Text:
    """Words of a procedure or of its narration."""

    words: str
    place: Place
    said: Time | None = None
    """When they were said; None for what is typed."""


def told(procedure: Procedure, narrations: Iterable[Narration]) -> Iterator[tuple[int, Step | None, list[Text]]]:
    """Each step with its number and texts; last, as number 0, what belongs to none: title, lists, words in between."""
    language, files = procedure.front["language"], {file.name: file.place for file in procedure.front.narration}
    heard = [sentence for one in narrations for sentence in sentences(one, language)]
    within: set[Sentence] = set()
    for number, step in enumerate(procedure.steps, 1):
        here = [sentence for sentence in heard if _belongs(sentence, step)]
        within.update(here)
        yield number, step, [*_step(step), *(_heard(sentence, step.place) for sentence in here)]
    between = [sentence for sentence in heard if sentence not in within]
    places = (files.get(sentence.recording, procedure.place) for sentence in between)
    yield 0, None, [*_front(procedure), *map(_heard, between, places)]


def _step(step: Step) -> Iterator[Text]:
    yield Text(step.command, step.place)
    yield from _typed(step.prose, step.fields)


def _front(procedure: Procedure) -> Iterator[Text]:
    yield Text(procedure.title, procedure.place)
    yield from _typed(procedure.intro, procedure.fields)
    for section in procedure.sections:
        yield Text(section.title, section.place)
        yield from _typed(section.prose, section.fields)


def _typed(prose: Iterable[Prose], fields: Iterable[Field]) -> Iterator[Text]:
    for one in prose:
        yield Text(one.text, one.place)
    for entry in fields:
        if entry.name not in _NO_WORK and not entry.none:
            yield Text(_words(entry), entry.place)


def _words(entry: Field) -> str:
    """Its things and the text of its parts, each a sentence of its own."""
    things = [item.name for item in (*entry.items, *entry.fasteners)]
    first = entry.kind.parts[0] if things else ""
    parts = [text for name, text in entry.parts if name not in (first, *_NOT_READ)]
    return " ; ".join([*things, *parts])


def _belongs(sentence: Sentence, step: Step) -> bool:
    return any(span.recording == sentence.recording and span.start <= sentence.start < span.end for span in step.spans)


def _heard(sentence: Sentence, place: Place) -> Text:
    return Text(sentence.words, place, Time(Fraction(int(sentence.start)), sentence.recording))
