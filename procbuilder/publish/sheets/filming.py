"""What to mind while filming, and the three things that are worth filming better next time."""

from collections.abc import Iterator

from procbuilder.model.estimate import Basis
from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import Heading, Points, Sheet, Text
from procbuilder.publish.spoken import Spoken, SpokenStep

MOST = 3
"""More would be filmed by nobody."""


def filming(edition: Spoken, words: Words) -> Sheet:
    """The card for before the job, and what the last film lacked."""
    here = tuple(_here(edition, words))
    named = (Heading(words.FILM_THIS), Points(here, ticks=True)) if here else ()
    lacking = tuple(_lacking(edition, words))[:MOST]
    after = (Text(words.FILM_NEXT_USE), Points(lacking, ticks=True)) if lacking else (Text(words.FILM_ENOUGH),)
    blocks = (Points(words.FILM_POINTS, ticks=True), *named, Heading(words.FILM_NEXT), *after)
    return Sheet("filming", words.FILM_BEFORE, words.FILM_BEFORE_USE, blocks)


def _here(edition: Spoken, words: Words) -> Iterator[str]:
    """What must be counted or said aloud in this job."""
    for line in edition.trays:
        if line.counted:
            yield words.FILM_COUNT.format(number=line.off, what=line.contents)
    for row in edition.torques:
        if not row.value:
            yield words.FILM_VALUE.format(number=row.number, what=row.item)


def _lacking(edition: Spoken, words: Words) -> Iterator[str]:
    """What the film lacks: steps never filmed, without a picture, with a weak one, with cuts; dangerous ones first."""
    steps = sorted((step for step in edition.steps if not step.reserved), key=_weight)
    for words_of, lacks in (
        (words.FILM_NOT_SHOWN, lambda step: not step.spans),
        (words.FILM_NO_PICTURE, lambda step: step.spans and not (step.figures or step.withheld)),
        (words.FILM_WEAK, _weak),
        (words.FILM_CUT, lambda step: step.spans and not _weak(step) and step.basis is Basis.CUT),
    ):
        for step in filter(lacks, steps):
            reason = ", ".join(step.figures[0].weak) if step.figures else ""
            yield words_of.format(number=step.number, command=step.command, reason=reason)


def _weak(step: SpokenStep) -> bool:
    """Something is wrong with the main picture."""
    return bool(step.figures and step.figures[0].weak)


def _weight(step: SpokenStep) -> tuple[bool, int]:
    """Steps that can hurt, must hold or are tightened come first."""
    return not (step.hazards or step.holds or step.torques), step.number
