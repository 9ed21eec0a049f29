"""Bags and trays: what comes off and is kept until it goes on again, one line a group of fasteners."""

from collections.abc import Iterator

from procbuilder.infer.wordbook import Wordbook, wordbook
from procbuilder.model.edition import TrayLine
from procbuilder.model.ledger import Entry, Ledger, Opening
from procbuilder.model.words import thing

_KEPT_SMALL = ("fastener", "clip")
"""Groups of ``objects.toml`` that go into a bag or tray even where none is named."""


def trays(ledger: Ledger) -> tuple[TrayLine, ...]:
    """In the order of coming off. What is thrown away, and what was never seen coming off, is left out."""
    book = wordbook()
    return tuple(line for entry in ledger.entries if _is_kept(entry) for line in _lines(entry, book))


def _is_kept(entry: Entry) -> bool:
    return entry.opening is Opening.OFF and bool(entry.opened) and not entry.scrapped and not entry.way


def _lines(entry: Entry, book: Wordbook) -> Iterator[TrayLine]:
    off, on = entry.opened[0].number, tuple(dict.fromkeys(moment.number for moment in entry.closed))
    if entry.fasteners:
        for fasteners in filter(None, (one.strip() for one in entry.fasteners.split(";"))):
            yield TrayLine(entry.tray, fasteners, entry.item, off, on)
    elif entry.tray or book.is_in(thing(entry.item), _KEPT_SMALL):
        count = f"{entry.out:f} x " if entry.out > 1 else ""
        yield TrayLine(entry.tray, count + entry.item, entry.of, off, on)
