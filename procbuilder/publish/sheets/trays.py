"""Cutouts for the trays and labels for the bags, to cut out."""

from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import Block, Cutout, Cutouts, Heading, Sheet, numbers
from procbuilder.publish.spoken import Spoken
from procbuilder.publish.told import ToldFigure, ToldTray


def trays(edition: Spoken, words: Words) -> Sheet | None:
    """None when nothing is kept."""
    if not edition.trays:
        return None
    named: dict[str, list[ToldTray]] = {}
    for line in edition.trays:
        if line.tray:
            named.setdefault(line.tray, []).append(line)
    cards = tuple(_tray(edition, name, lines, words) for name, lines in named.items())
    labels = tuple(_label(line, words) for line in edition.trays)
    blocks: tuple[Block, ...] = (Cutouts(cards, 2),) if cards else ()
    return Sheet("trays", words.TRAYS, words.TRAYS_USE, (*blocks, Heading(words.LABELS), Cutouts(labels, 3)))


def _tray(edition: Spoken, name: str, lines: list[ToldTray], words: Words) -> Cutout:
    told = ((_off(line, words), line.contents + (f" ({line.holds})" if line.holds else "")) for line in lines)
    return Cutout(f"{words.TRAY} {name}", tuple(told), _picture(edition, lines[0].off))


def _label(line: ToldTray, words: Words) -> Cutout:
    told = ((words.HOLDS, line.holds), (words.OFF_AT, _step(line.off, words)), (words.ON_AT, numbers(line.on)))
    lines = tuple((label, text or words.NOT_BACK) for label, text in told if text or label == words.ON_AT)
    tray = ((words.TRAY, line.tray),) if line.tray else ()
    return Cutout(line.contents, (*lines, *tray))


def _off(line: ToldTray, words: Words) -> str:
    back = f" → {numbers(line.on)}" if line.on else ""
    return f"{words.STEP} {_step(line.off, words)}{back}"


def _step(number: int, words: Words) -> str:
    return str(number) if number else words.BEFORE_THE_FIRST


def _picture(edition: Spoken, number: int) -> ToldFigure | None:
    figures = [
        figure for step in edition.steps if step.number == number and not step.reserved for figure in step.figures
    ]
    return figures[0] if figures else None
