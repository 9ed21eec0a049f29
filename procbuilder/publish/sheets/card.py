"""The steps on paper where no phone may be used, since something can catch fire."""

from collections.abc import Iterator

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.worked import Hazard
from procbuilder.publish import words
from procbuilder.publish.sheets.blocks import Card, Cards, Look, Sheet, Text

FIRE = frozenset({"W002", "W021", "W028", "P003", "P013"})
"""Signs of a danger at which a phone stays outside."""


def card(edition: Edition) -> Sheet | None:
    """None when nothing can catch fire at any step."""
    steps = [step for step in edition.steps if any(map(_burns, _dangers(step)))]
    if not steps:
        return None
    cards = Cards(tuple(_step(step) for step in steps), 1)
    return Sheet("card", words.CARD, words.CARD_USE, (Text(words.REMEMBER, Look.STRONG), cards))


def _dangers(step: EditionStep) -> tuple[Hazard, ...]:
    return (*step.standing.hazards, *step.hazards)


def _burns(hazard: Hazard) -> bool:
    return any(sign.number in FIRE for sign in hazard.signs)


def _step(step: EditionStep) -> Card:
    signs = dict.fromkeys(sign for hazard in _dangers(step) for sign in hazard.signs)
    figure = step.figures[0] if step.figures and not step.reserved else None
    return Card(f"{step.number} {step.command}", tuple(_lines(step)), figure, tuple(signs))


def _lines(step: EditionStep) -> Iterator[tuple[str, str]]:
    for hazard in _dangers(step):
        parts = (hazard.hazard, hazard.consequence, hazard.avoid)
        yield hazard.signal.value, " – ".join(filter(None, parts))
    if step.standing.protections:
        yield words.LEAVE_IN_PLACE, "; ".join(step.standing.protections)
    if step.reserved:
        yield words.STOP_DONE_BY, step.reserved
        return
    for label, lines in ((words.WEAR, step.wear), (words.TOOL, step.tools), (words.SUPPLY, step.supplies)):
        if lines:
            yield label, "; ".join(line.text for line in lines)
    for move in (*step.moves, *step.checks):
        yield move.name, " – ".join(filter(None, (move.text, *move.extra)))
    for row in step.torques:
        yield words.TORQUE, f"{row.item}: {row.value or words.NO_VALUE}"
    for point in step.key_points:
        yield words.KEY_POINT, " – ".join(filter(None, (point.text, point.extra)))
    for hold in step.holds:
        yield words.HOLD, hold.text
