"""Bags and trays: what comes off and is kept until it goes on again, one line a group of fasteners."""

from collections.abc import Iterator

from procbuilder.infer.dictionary.wordbook import Wordbook, wordbook
from procbuilder.model.edition import TrayLine
from procbuilder.model.ledger import Entry, Ledger, Opening
from procbuilder.model.quantity import Item, Quantity
from procbuilder.model.words import Words
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

_KEPT_SMALL = ("fastener", "clip")
"""Groups of ``objects.toml`` that go into a bag or tray even where none is named."""


def trays(ledger: Ledger, words: Words, own: OwnWords = NO_OWN_WORDS) -> tuple[TrayLine, ...]:
    """In the order of coming off. What is thrown away, and what was never seen coming off, is left out."""
    book, thing = wordbook(own=own), words.thing
    kept = [entry for entry in ledger.entries if _is_kept(entry)]
    with_part = {(thing(one.head), entry.opened[0]) for entry in kept for one in entry.fasteners}
    alone = (entry for entry in kept if (thing(entry.item), entry.opened[0]) not in with_part)
    return tuple(line for entry in alone for line in _lines(entry, book, words))


def _is_kept(entry: Entry) -> bool:
    return entry.opening is Opening.OFF and bool(entry.opened) and not entry.scrapped and not entry.way


def _lines(entry: Entry, book: Wordbook, words: Words) -> Iterator[TrayLine]:
    off, on = entry.opened[0].number, tuple(dict.fromkeys(moment.number for moment in entry.closed))
    if entry.fasteners:
        for fasteners in entry.fasteners:
            yield TrayLine(entry.tray, fasteners, entry.item, off, on)
    elif entry.tray or book.is_in(words.thing(entry.item), _KEPT_SMALL):
        alone = Item(entry.item, entry.opened[0].place, Quantity(entry.out) if entry.out > 1 else None)
        yield TrayLine(entry.tray, alone, entry.of, off, on)
