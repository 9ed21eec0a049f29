"""What a new procedure says before anybody has written in it."""

from procbuilder.model.drafted import DraftTexts
from procbuilder.publish.language import ENGLISH, Language

BEFORE = "Before you start"
READY = "Fill in what must be ready: {lines}. Write `none` where there is nothing."
STEPS = "Steps"
REFIT = "Refit, derived and not filmed"
_FIELDS = ("Condition", "Tool", "Wear", "Supply", "Part")


def draft_texts(language: Language) -> DraftTexts:
    """The texts of a new procedure in a language; English without a country is British."""
    lines = ", ".join(f"`- {name}: …`" for name in _FIELDS)
    return DraftTexts(
        language="en-GB" if language.tag == ENGLISH.tag else language.tag,
        before=language.text(BEFORE),
        ready=language.text(READY, lines=lines),
        steps=language.text(STEPS),
    )
