"""What comes on top of an estimate, or changes it: branches, single cases, and conditions of the workshop file."""

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from math import ceil

from procbuilder.model.estimate import Elsewhere, Extra, StepTime
from procbuilder.model.phrases import mentioned
from procbuilder.model.procedure import Procedure
from procbuilder.model.words import Words
from procbuilder.model.workshop import Workshop

Minutes = tuple[Fraction, Fraction, Fraction]
"""Low, likely and high."""


def extras(procedure: Procedure, times: Iterable[StepTime]) -> tuple[Extra, ...]:
    """Branches with the likely minutes of their steps together, then every ``If`` with its minutes as typed."""
    likely = {time.step: time.likely for time in times}
    branches: dict[str, Decimal] = {}
    for step in procedure.steps:
        for entry in step.all("Only if"):
            condition = entry.part("condition")
            branches[condition] = branches.get(condition, Decimal(0)) + likely[step.id]
    found = [Extra(condition, f"{minutes:f}" if minutes else "") for condition, minutes in branches.items()]
    found += (Extra(entry.part("condition"), entry.part("minutes")) for entry in procedure.everywhere("If"))
    return tuple(found)


def elsewhere(minutes: Minutes, place: str, workshop: Workshop, words: Words) -> tuple[Elsewhere, ...]:
    """The hours under the other conditions that the workshop file compares with this place, and with its allowance."""
    fitting = [
        each for each in workshop.conditions if not each.instead_of or mentioned(place, [each.instead_of], words)
    ]
    found = [_times(minutes, each.name, each.factor, each.origin) for each in fitting]
    if workshop.allowance:
        factor = workshop.allowance.standard(Decimal(1))
        made = _times(minutes, "", factor, workshop.allowance_origin)
        found.append(replace(made, allowance=workshop.allowance))
    return tuple(found)


def _times(minutes: Minutes, name: str, factor: Decimal, origin: str) -> Elsewhere:
    low, likely, high = (Decimal(ceil(part * Fraction(factor) / 6)) / 10 for part in minutes)
    return Elsewhere(name, factor, low, likely, high, origin)
