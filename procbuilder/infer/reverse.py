"""Steps that tell to put things back in reverse, without saying what: they close it only as assumed."""

import re

from procbuilder.model.lexicon import Ways
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.words import mentioned

_SENTENCE = re.compile(r"[.;!?\n]")
_STEPS = re.compile(r"\bsteps?\s+(\d{1,4})(?:\s*(?:to|-|–|through)\s*(\d{1,4}))?", re.IGNORECASE)


def reversed_steps(procedure: Procedure, words: Ways) -> dict[int, range | None]:
    """Number of each step that says so, with the steps that it names; None when it names none: then it means all."""
    found: dict[int, range | None] = {}
    for number, step in enumerate(procedure.steps, 1):
        said = next((text for text in _sentences(step) if _tells(text, words)), "")
        if said:
            found[number] = _named(said)
    return found


def _sentences(step: Step) -> list[str]:
    return [text for part in (step.command, *(prose.text for prose in step.prose)) for text in _SENTENCE.split(part)]


def _tells(text: str, words: Ways) -> bool:
    return bool(mentioned(text, words.reverse) and mentioned(text, words.refit))


def _named(text: str) -> range | None:
    match = _STEPS.search(text)
    return range(int(match[1]), int(match[2] or match[1]) + 1) if match else None
