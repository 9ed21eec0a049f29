"""Steps at which vapour or gas can catch fire: no phone there."""

from collections.abc import Iterator

from procbuilder.infer.timing import told_at
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.phrases import Phrases
from procbuilder.model.procedure import Procedure
from procbuilder.model.worked import Standing


def vapour(procedure: Procedure, still: dict[str, Standing], lexicon: Lexicon) -> dict[str, str]:
    """Why a step is worked without a phone, by step id: the words that say so, such as ``brake cleaner``."""
    groups = [lexicon.vapour, *(activity.words for activity in lexicon.activities if activity.vapour)]
    phrases = Phrases(groups, lexicon.words)
    reasons = ((step.id, _first(phrases, told_at(step, still.get(step.id, Standing())))) for step in procedure.steps)
    return {step: reason for step, reason in reasons if reason}


def _first(phrases: Phrases, texts: Iterator[str]) -> str:
    return next((found.words for text in texts for found in phrases.found(text)), "")
