"""Torques that were said while a step was filmed, to be held against what was typed for it."""

from collections.abc import Iterable, Iterator

from procbuilder.infer.dictionary.english import WORDS
from procbuilder.infer.dictionary.said_torque import said_torque
from procbuilder.infer.dictionary.wordbook import Wordbook, is_heard, wordbook
from procbuilder.infer.hearing.sentences import sentences
from procbuilder.model.heard import Sentence
from procbuilder.model.phrases import mentioned
from procbuilder.model.procedure import Narration, Procedure
from procbuilder.model.torque import read_torque
from procbuilder.model.worked import HeardTorque


def heard_torques(procedure: Procedure, narrations: Iterable[Narration]) -> tuple[HeardTorque, ...]:
    """In the order of the steps. A sentence belongs to each step whose footage holds its beginning."""
    if not is_heard(procedure.front["language"]):
        return ()
    book = wordbook()
    said = {narration.recording: list(_with_unit(narration, book)) for narration in narrations}
    return tuple(
        HeardTorque(step.id, read_torque(value), sentence.words, sentence.origin, sentence.place)
        for step in procedure.steps
        for span in step.spans
        for sentence, value in said.get(span.recording, ())
        if span.start <= sentence.start < span.end
    )


def _with_unit(narration: Narration, book: Wordbook) -> Iterator[tuple[Sentence, str]]:
    units = tuple(book.sizes["torque_units"])
    for sentence in sentences(narration):
        if mentioned(sentence.words, units, WORDS) and (value := said_torque(sentence.words, book)):
            yield sentence, value
