"""Steps that tell to put things back in reverse, without saying what: they close it only as assumed."""

import re

from procbuilder.model.lexicon import Lexicon, Ways
from procbuilder.model.phrases import mentioned
from procbuilder.model.procedure import Procedure, Step

_SENTENCE = re.compile(r"[.;!?\n]")


def reversed_steps(procedure: Procedure, lexicon: Lexicon) -> dict[int, range | None]:
    """Number of each step that says so, with the steps that it names; None when it names none: then it means all."""
    found: dict[int, range | None] = {}
    for number, step in enumerate(procedure.steps, 1):
        said = next((text for text in _sentences(step) if _tells(text, lexicon)), "")
        if said:
            found[number] = _named(said, lexicon.ways)
    return found


def _sentences(step: Step) -> list[str]:
    return [text for part in (step.command, *(prose.text for prose in step.prose)) for text in _SENTENCE.split(part)]


def _tells(text: str, lexicon: Lexicon) -> bool:
    ways, words = lexicon.ways, lexicon.words
    return bool(mentioned(text, ways.reverse, words) and mentioned(text, ways.refit, words))


def _named(text: str, ways: Ways) -> range | None:
    step, to = "|".join(ways.step), "|".join((*ways.to, "-", "–"))
    match = re.search(rf"\b(?:{step})\s+(\d{{1,4}})(?:\s*(?:{to})\s*(\d{{1,4}}))?", text, re.IGNORECASE)
    return range(int(match[1]), int(match[2] or match[1]) + 1) if match else None
