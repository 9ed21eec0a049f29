"""Which steps may have a stopwatch: none at which hurry could hurt somebody."""

from procbuilder.model.lexicon import Lexicon
from procbuilder.model.procedure import Step
from procbuilder.model.words import mentioned
from procbuilder.model.worked import Standing

SIGNALS = ("Danger", "Warning", "Caution", "Notice")


def may_be_timed(step: Step, standing: Standing, lexicon: Lexicon) -> bool:
    """False for a reserved step, a hold point, and where something can burn or explode."""
    if step.all("Reserved", "Hold"):
        return False
    typed = [entry.raw for entry in step.all(*SIGNALS, "Supply", "State", "Off", "Slacken")]
    still = [f"{hazard.hazard} {hazard.consequence}" for hazard in standing.hazards]
    texts = [step.command, *typed, *(prose.text for prose in step.prose), *still, *standing.states]
    return not any(mentioned(text, lexicon.flammable) for text in texts)
