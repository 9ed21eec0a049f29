"""Which steps may have a stopwatch: none at which hurry could hurt somebody."""

from collections.abc import Iterator

from procbuilder.model.lexicon import Lexicon
from procbuilder.model.phrases import mentioned
from procbuilder.model.procedure import Step
from procbuilder.model.signal import SIGNALS
from procbuilder.model.worked import Standing


def may_be_timed(step: Step, standing: Standing, lexicon: Lexicon) -> bool:
    """False for a reserved step, a hold point, and where something can burn or explode."""
    if step.all("Reserved", "Hold"):
        return False
    return not any(mentioned(text, lexicon.flammable, lexicon.words) for text in told_at(step, standing))


def told_at(step: Step, standing: Standing) -> Iterator[str]:
    """What a step and the dangers that still stand there say of what is at hand."""
    yield step.command
    yield from (entry.raw for entry in step.all(*SIGNALS, "Supply", "State", "Off", "Slacken"))
    yield from (prose.text for prose in step.prose)
    yield from (f"{hazard.hazard} {hazard.consequence}" for hazard in standing.hazards)
    yield from standing.states
