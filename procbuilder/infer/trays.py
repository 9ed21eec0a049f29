"""Bags and trays: what comes off and is kept until it goes on again, one line a group of fasteners."""

from collections.abc import Iterator

from procbuilder.model.edition import TrayLine
from procbuilder.model.ledger import Entry, Ledger, Opening
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.phrases import called
from procbuilder.model.quantity import Item, Quantity


def trays(ledger: Ledger, lexicon: Lexicon) -> tuple[TrayLine, ...]:
    """In the order of coming off. What is thrown away, and what was never seen coming off, is left out."""
    thing = lexicon.words.thing
    kept = [entry for entry in ledger.entries if _is_kept(entry)]
    with_part = {(thing(one.head), entry.opened[0]) for entry in kept for one in entry.fasteners}
    alone = (entry for entry in kept if (thing(entry.item), entry.opened[0]) not in with_part)
    return tuple(line for entry in alone for line in _lines(entry, lexicon))


def _is_kept(entry: Entry) -> bool:
    return entry.opening is Opening.OFF and bool(entry.opened) and not entry.scrapped and not entry.way


def _lines(entry: Entry, lexicon: Lexicon) -> Iterator[TrayLine]:
    off, on = entry.opened[0].number, tuple(dict.fromkeys(moment.number for moment in entry.closed))
    if entry.fasteners:
        for fasteners in entry.fasteners:
            yield TrayLine(entry.tray, fasteners, entry.item, off, on)
    elif entry.tray or called(entry.item, lexicon.kept_small, lexicon.words):
        alone = Item(entry.item, entry.opened[0].place, Quantity(entry.out) if entry.out > 1 else None)
        yield TrayLine(entry.tray, alone, entry.of, off, on)
