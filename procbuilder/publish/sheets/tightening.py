"""The tightening table on one page, with pictures of the order."""

from collections.abc import Iterator

from procbuilder.model.sequence import Sequence, Shape
from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import BLANK, Block, Cell, CellLook, Sheet, Table, Text, Turns, columns, strong
from procbuilder.publish.spoken import Spoken
from procbuilder.publish.told import ToldTorque


def tightening(edition: Spoken, words: Words) -> Sheet | None:
    """None when nothing is tightened."""
    if not edition.torques:
        return None
    titles = columns(
        (words.WHAT, 5), (words.STEP, 2), (words.VALUE, 7), (words.ORDER_AND_CONDITION, 6), (words.SOURCE, 5),
        (words.INITIALS, 3),
    )  # fmt: skip
    table = Table(titles, tuple(_row(row, words) for row in edition.torques))
    return Sheet("tightening", words.TIGHTENING, words.TIGHTENING_USE, (table, *_pictures(edition.torques, words)))


def _row(row: ToldTorque, words: Words) -> tuple[Cell, ...]:
    terms = " · ".join(filter(None, (row.order, row.when, row.stage)))
    return strong(row.item), Cell(str(row.number)), _value(row, words), Cell(terms), _source(row, words), BLANK


def _value(row: ToldTorque, words: Words) -> Cell:
    if row.value:
        return strong(row.both)
    return Cell(f"{words.NO_VALUE}. {row.look_in or words.LOOK_UP}", CellLook.BLANK)


def _source(row: ToldTorque, words: Words) -> Cell:
    if not row.value:
        return BLANK
    if row.source.memory:
        return Cell(words.FROM_MEMORY, CellLook.UNSURE)
    source = row.source.words or row.look_in
    return Cell(source) if source else Cell(words.NO_SOURCE, CellLook.UNSURE)


def _pictures(rows: tuple[ToldTorque, ...], words: Words) -> Iterator[Block]:
    """One picture for each thing and order."""
    drawn = {(row.item, row.sequence): row for row in rows if row.sequence}
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
