"""Every text that has to stand in a catalogue, gathered from where it is said."""

import io
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType
from typing import Any

from babel.messages.extract import extract

from procbuilder.infer.lexicon import load
from procbuilder.model.fields import FIELDS
from procbuilder.model.marks import MarkShape, PictureState
from procbuilder.model.problem import Severity
from procbuilder.model.signal import Signal
from procbuilder.publish import filmed, pagewords, printwords, quotation, terms, timewords, words
from procbuilder.publish.wording import causes, commands, drafts, faults, phrases, problems, progress, topics
from procbuilder.publish.wording.patterns import Plural

ROOT = Path(__file__).parents[2] / "procbuilder"
MODULES: tuple[ModuleType, ...] = (
    words, pagewords, printwords, quotation, filmed, terms, timewords, phrases, causes, commands, drafts, faults,
    progress, topics, *problems.SUBJECTS,
)  # fmt: skip
KEYWORDS = {"text": None, "capital": None, "plural": (1, 2)}

Message = str | tuple[str, str]
"""A text, or its forms for one and for more."""


def messages() -> set[Message]:
    """Constants, what the code says itself, and terms of the records and of the trade's data."""
    constants = {text for module in MODULES for name in vars(module) if name.isupper()
                 for text in _texts(getattr(module, name))}  # fmt: skip
    known: set[Message] = {
        *_texts(problems.HIDDEN),
        *constants,
        *(str(term) for kind in (Signal, PictureState, Severity, MarkShape) for term in kind),
        *(kind.name for kind in FIELDS),
        *(f"{word}: {{text}}" for kind in FIELDS for word in kind.words),
    }
    every = {text for text in known | set(_data()) if any(map(str.isalpha, "".join(text)))}
    return every | set(_called())


def _texts(value: Any) -> Iterator[Message]:
    """Every text within a constant; keys are no words."""
    if isinstance(value, Plural):
        yield value.one, value.many
    elif isinstance(value, str):
        yield str(value)
    elif isinstance(value, dict | tuple):
        for part in value.values() if isinstance(value, dict) else value:
            yield from _texts(part)


def _called() -> Iterator[Message]:
    """What is said by a literal: found by Babel's own reader of code."""
    for room in ("publish", "pipeline"):
        for path in sorted((ROOT / room).rglob("*.py")):
            source = io.BytesIO(path.read_bytes())
            for _, message, _, _ in extract("python", source, keywords=KEYWORDS):
                yield (message[0], message[1]) if isinstance(message, tuple) else str(message)


def _data() -> Iterator[str]:
    """Meanings of signs, and why a part is not used again."""
    yield from (sign.meaning for sign in load().signs.values())
    yield from (part.why for part in load().single_use)
    yield from (spoiling.why for spoiling in load().spoiling)
