"""The steps on paper where no phone may be used, since something can catch fire."""

from collections.abc import Iterator

from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import CellLook, Cutout, Cutouts, Sheet, Text
from procbuilder.publish.spoken import Spoken, SpokenStep
from procbuilder.publish.told import ToldHazard


def card(edition: Spoken, words: Words) -> Sheet | None:
    """None when nothing can catch fire at any step."""
    steps = [step for step in edition.steps if step.no_phone]
    if not steps:
        return None
    cards = Cutouts(tuple(_step(step, words) for step in steps), 1)
    return Sheet("card", words.CARD, words.CARD_USE, (Text(words.REMEMBER, CellLook.STRONG), cards))


def _dangers(step: SpokenStep) -> tuple[ToldHazard, ...]:
    return (*step.standing.hazards, *step.hazards)


def _step(step: SpokenStep, words: Words) -> Cutout:
    signs = dict.fromkeys(sign for hazard in _dangers(step) for sign in hazard.signs)
    figure = step.figures[0] if step.figures and not step.reserved else None
    return Cutout(f"{step.number} {step.command}", tuple(_lines(step, words)), figure, tuple(signs))


def _lines(step: SpokenStep, words: Words) -> Iterator[tuple[str, str]]:
    """All that the step says, since there is no page to look at."""
    yield from _standing(step, words)
    if step.reserved:
        yield words.STOP_DONE_BY, step.reserved
    else:
        yield from _method(step, words)
    yield from ((words.HOLD, hold.text) for hold in step.holds)


def _standing(step: SpokenStep, words: Words) -> Iterator[tuple[str, str]]:
    for hazard in _dangers(step):
        yield hazard.word, _joined(hazard.hazard, hazard.consequence, hazard.avoid)
    if step.only_if:
        yield words.ONLY_IF, step.only_if
    if step.standing.protections:
        yield words.LEAVE_IN_PLACE, "; ".join(step.standing.protections)


def _method(step: SpokenStep, words: Words) -> Iterator[tuple[str, str]]:
    yield from ((words.HOW_TO, text) for text in step.prose)
    labels = (words.WEAR, words.TOOL, words.PART, words.SUPPLY)
    for label, lines in zip(labels, (step.wear, step.tools, step.parts, step.supplies), strict=True):
        if lines:
            yield label, "; ".join(line.text for line in lines)
    yield from ((entry.label, entry.joined()) for entry in (*step.moves, *step.checks, *step.notes))
    for row in step.torques:
        yield (
            words.TORQUE,
            _joined(f"{row.item}: {row.both or words.NO_VALUE}", row.order, row.when, row.stage),
        )
    yield from ((words.KEY_POINT, point.joined()) for point in step.key_points)


def _joined(*parts: str) -> str:
    return " – ".join(filter(None, parts))
