"""Sheets for after the job: what was found, and what was opened and closed, with pictures."""

from procbuilder.model.ledger import Balance
from procbuilder.publish.language import Words
from procbuilder.publish.sheets.blocks import (
    BLANK,
    Block,
    Cell,
    CellLook,
    Heading,
    Pair,
    Pairs,
    Sheet,
    Table,
    Text,
    columns,
    strong,
)
from procbuilder.publish.spoken import Spoken
from procbuilder.publish.told import ToldEntry

UNSETTLED = (Balance.OPEN, Balance.NEVER_OPENED, Balance.ASSUMED)
_ORDER = (*UNSETTLED, Balance.LEFT_OPEN, Balance.CLOSED)


def findings(edition: Spoken, words: Words) -> Sheet:
    """Findings and later checks, with room for the answer."""
    rows = tuple(
        (
            strong(entry.label),
            Cell(entry.text),
            Cell(" · ".join(entry.extra)),
            BLANK,
        )
        for entry in edition.closing
    )
    titles = columns((words.KIND, 3), (words.WHAT, 8), (words.ON_RECORD, 7), (words.APPROVED, 6))
    block: Block = Table(titles, rows) if rows else Text(words.NO_FINDING)
    return Sheet("findings", words.FINDINGS, words.FINDINGS_USE, (block,))


def ledger(edition: Spoken, words: Words) -> Sheet:
    """Every entry, the unsettled ones first; then each thing as found beside the finished refit."""
    entries = sorted(edition.ledger, key=lambda entry: _ORDER.index(entry.balance))
    titles = columns(
        (words.WHAT, 6), (words.HOW, 4), (words.OPENED, 6), (words.CLOSED, 6), (words.HOW_IT_ENDS, 7),
    )  # fmt: skip
    table = (Table(titles, tuple(_row(entry, words) for entry in entries)),) if entries else ()
    pairs = _pairs(edition, words)
    pictures = (Heading(words.PAIRS), Pairs(pairs)) if pairs else ()
    return Sheet("ledger", words.LEDGER, words.LEDGER_USE, (_balance(edition, words), *table, *pictures))


def _balance(edition: Spoken, words: Words) -> Text:
    every, unsettled = edition.ledger, edition.having(*UNSETTLED)
    if not every:
        return Text(words.NOTHING_OPENED)
    if not unsettled:
        return Text(words.BALANCED, CellLook.STRONG)
    return Text(words.NOT_BALANCED.format(open=len(unsettled), all=len(every)), CellLook.UNSURE)


def _row(entry: ToldEntry, words: Words) -> tuple[Cell, ...]:
    ends = [f"{entry.ends[:1].upper()}{entry.ends[1:]}"]
    if entry.balance is not Balance.CLOSED and not entry.even:
        ends.append(words.OF_CLOSED.format(back=entry.back, out=entry.count))
    ends += filter(None, (entry.reason, entry.way))
    look = CellLook.UNSURE if entry.balance in UNSETTLED else CellLook.PLAIN
    opened, closed = (Cell("; ".join(moments) or "–") for moments in (entry.opened, entry.closed))
    return strong(entry.item), Cell(entry.how), opened, closed, Cell("; ".join(ends), look)


def _pairs(edition: Spoken, words: Words) -> tuple[Pair, ...]:
    """The things of which both pictures are known."""
    return tuple(
        Pair(
            pair.item,
            pair.found,
            words.BEFORE_STEP.format(number=pair.off),
            pair.done,
            words.AFTER_STEP.format(number=pair.on),
        )
        for pair in edition.pairs
        if pair.found and pair.done
    )
