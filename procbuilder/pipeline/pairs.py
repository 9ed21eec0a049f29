"""Pictures of a thing before it came off and after it went on again, side by side at the end of the job."""

from collections.abc import Iterable, Iterator

from procbuilder.model.edition import EditionStep, Figure, PicturePair
from procbuilder.model.ledger import Ledger, Opening


def pairs(ledger: Ledger, steps: Iterable[EditionStep]) -> tuple[PicturePair, ...]:
    """One for each thing that came off in a step, when at least one of both pictures was made for a step anyway.

    Reserved steps show no pictures.
    """
    by_number = {step.number: step for step in steps if not step.reserved}
    found = {step.as_found_step: step.as_found for step in by_number.values() if step.as_found}
    return tuple(_pairs(ledger, by_number, found))


def _pairs(ledger: Ledger, steps: dict[int, EditionStep], found: dict[int, Figure]) -> Iterator[PicturePair]:
    for entry in ledger.entries:
        if entry.opening is not Opening.OFF or not entry.opened or entry.way:
            continue
        off, on = entry.opened[0].number, entry.closed[-1].number if entry.closed else 0
        before, after = found.get(off), _done(steps.get(on))
        if on != off and (before or after):
            yield PicturePair(entry.item, off, before, on, after)


def _done(step: EditionStep | None) -> Figure | None:
    return step.figures[0] if step and step.figures else None
