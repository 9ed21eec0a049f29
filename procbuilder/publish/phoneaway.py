"""Where the phone is put away, because vapour or gas can catch fire: there the printed card tells what to do."""

from dataclasses import dataclass
from itertools import groupby

from procbuilder.model.edition import Edition
from procbuilder.publish.language import language_of


@dataclass(frozen=True, slots=True)
class PhoneAway:
    """Steps behind one another that are worked without a phone."""

    first: int
    steps: str
    """``step 16``, ``steps 16 to 18``."""
    reason: str
    """What gives off the vapour or gas, in the words of the procedure: ``brake cleaner; petrol pipe``."""


def phone_away(edition: Edition) -> tuple[PhoneAway, ...]:
    """One for each run of such steps, in their order."""
    made, text = [], language_of(edition.language).text
    for needed, run in groupby(edition.steps, key=lambda step: bool(step.no_phone)):
        if needed:
            steps = list(run)
            first, last = steps[0].number, steps[-1].number
            reasons = dict.fromkeys(step.no_phone.casefold() for step in steps)
            told = text("step {number}", number=first)
            if last != first:
                told = text("steps {first} to {last}", first=first, last=last)
            made.append(PhoneAway(first, told, "; ".join(reasons)))
    return tuple(made)
