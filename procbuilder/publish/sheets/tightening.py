"""The tightening table on one page, with pictures of the order."""

from collections.abc import Iterator

from procbuilder.model.edition import Edition
from procbuilder.model.origin import OriginKind
from procbuilder.model.sequence import Sequence, Shape
from procbuilder.model.worked import TorqueRow
from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import BLANK, Block, Cell, Look, Sheet, Table, Text, Turns, columns, strong
from procbuilder.publish.terms import both_units, origin


def tightening(edition: Edition, words: Words) -> Sheet | None:
    """None when nothing is tightened."""
    if not edition.torques:
        return None
    titles = columns(
        (words.WHAT, 5), (words.STEP, 2), (words.VALUE, 7), (words.ORDER_AND_CONDITION, 6), (words.SOURCE, 5),
        (words.INITIALS, 3),
    )  # fmt: skip
    table = Table(titles, tuple(_row(row, words) for row in edition.torques))
    return Sheet("tightening", words.TIGHTENING, words.TIGHTENING_USE, (table, *_pictures(edition.torques, words)))


def _row(row: TorqueRow, words: Words) -> tuple[Cell, ...]:
    terms = " · ".join(filter(None, (row.order, row.when, row.stage)))
    return strong(row.item.words), Cell(str(row.number)), _value(row, words), Cell(terms), _source(row, words), BLANK


def _value(row: TorqueRow, words: Words) -> Cell:
    if row.value:
        return strong(both_units(row, words.language))
    return Cell(f"{words.NO_VALUE}. {row.look_in or words.LOOK_UP}", Look.BLANK)


def _source(row: TorqueRow, words: Words) -> Cell:
    if not row.value:
        return BLANK
    if row.origin.kind is OriginKind.MEMORY:
        return Cell(words.FROM_MEMORY, Look.UNSURE)
    source = origin(row.origin.words, words.language) or row.look_in
    return Cell(source) if source else Cell(words.NO_SOURCE, Look.UNSURE)


def _pictures(rows: tuple[TorqueRow, ...], words: Words) -> Iterator[Block]:
    """One picture for each thing and order."""
    drawn = {(row.item.words, row.sequence): row for row in rows if row.sequence}
    for item, sequence in drawn:
        assert sequence is not None
        yield Turns(sequence, words.TURNS.format(item=item, count=len(sequence.order)), _alt(sequence, words))
    if drawn:
        yield Text(words.TURNS_NOTE)


def _alt(sequence: Sequence, words: Words) -> str:
    turns, count = ", ".join(map(str, sequence.turns)), len(sequence.order)
    if sequence.shape is Shape.CIRCLE:
        return str(words.TURNS_ALT_CIRCLE.format(count=count, turns=turns))
    return str(words.TURNS_ALT_ROWS.format(rows=count // sequence.columns, columns=sequence.columns, turns=turns))
