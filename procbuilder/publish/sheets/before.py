"""Sheets for before the job: what must be there, and what must be ordered."""

from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import (
    BLANK,
    TICK,
    Block,
    Cell,
    CellLook,
    Fill,
    Heading,
    Sheet,
    Table,
    Text,
    columns,
    numbers,
    strong,
)
from procbuilder.publish.spoken import Spoken
from procbuilder.publish.told import ToldItem


def tools(edition: Spoken, words: Words) -> Sheet:
    """Tools with a count before and after, then supplies and parts, in order of first use."""
    counted = [(BLANK, BLANK, _name(item, words), Cell(item.quantity), Cell(_first(item))) for item in edition.tools]
    titles = columns((words.BEFORE, 2), (words.AFTER, 2), (words.WHAT, 8), (words.HOW_MANY, 3), (words.FIRST_STEP, 3))
    rows: tuple[Block, ...] = (Table(titles, tuple(counted)),) if counted else (Text(words.NO_TOOL, CellLook.UNSURE),)
    count = Fill((words.COUNTED_BEFORE, words.COUNTED_AFTER, words.INITIALS))
    rest = (*_here(words.SUPPLIES, edition.supplies, words), *_here(words.PARTS, edition.parts, words))
    blocks = (*rows, count, Text(words.NOT_COUNTED_RIGHT, CellLook.STRONG), *rest)
    return Sheet("tools", words.TOOLS, words.TOOLS_USE, blocks)


def _here(title: str, items: tuple[ToldItem, ...], words: Words) -> tuple[Block, ...]:
    if not items:
        return (Heading(title), Text(words.NONE_LISTED))
    titles = columns((words.HERE, 2), (words.WHAT, 10), (words.HOW_MANY, 3), (words.STEPS, 3))
    rows = tuple((TICK, _name(item, words), Cell(item.quantity), Cell(numbers(item.steps))) for item in items)
    return Heading(title), Table(titles, rows)


def order(edition: Spoken, words: Words) -> Sheet:
    """Parts and supplies with room for the maker's number; nothing is looked up here."""
    kinds = ((words.PART, edition.parts), (words.SUPPLY, edition.supplies))
    rows = tuple(
        (Cell(kind), _name(item, words), _quantity(item, words), BLANK, BLANK, TICK)
        for kind, items in kinds
        for item in items
    )
    titles = columns(
        (words.KIND, 3), (words.WHAT, 8), (words.HOW_MANY, 4), (words.PART_NUMBER, 5), (words.SOURCE, 5),
        (words.ORDERED, 3),
    )  # fmt: skip
    blocks: tuple[Block, ...] = (Table(titles, rows),) if rows else (Text(words.NONE_LISTED),)
    return Sheet("order", words.ORDER, words.ORDER_USE, (*blocks, Fill((words.NAME, words.DATE))))


def _name(item: ToldItem, words: Words) -> Cell:
    return strong(f"{item.name}, {words.NEW}" if item.new else item.name)


def _quantity(item: ToldItem, words: Words) -> Cell:
    return Cell(item.quantity) if item.quantity else Cell(words.NOT_KNOWN, CellLook.UNSURE)


def _first(item: ToldItem) -> str:
    return str(item.steps[0]) if item.steps else ""
