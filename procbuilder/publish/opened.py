"""What is still open when a step begins: taken off, slackened, fitted for now, or a state that lasts."""

from procbuilder.model.edition import Edition
from procbuilder.model.ledger import Balance, Entry
from procbuilder.publish import pagewords
from procbuilder.publish.language import Words, language_of, words_in


def open_at(edition: Edition) -> dict[int, tuple[str, ...]]:
    """By number of each step, one line for each thing that earlier steps opened and none has closed yet."""
    entries, words = edition.ledger.entries, words_in(pagewords, language_of(edition.language))
    return {
        step.number: tuple(dict.fromkeys(_line(entry, words) for entry in entries if _is_open(entry, step.number)))
        for step in edition.steps
    }


def _is_open(entry: Entry, number: int) -> bool:
    opened = [moment.number for moment in entry.opened if moment.number < number]
    closed = [moment.number for moment in entry.closed if moment.number < number]
    if not opened:
        return False
    whole = entry.balance is Balance.CLOSED and len(closed) == len(entry.closed)
    return not whole or max(opened) > max(closed)


def _line(entry: Entry, words: Words) -> str:
    tray = f", {words.TRAY.format(tray=entry.tray)}" if entry.tray else ""
    return f"{entry.item}: {words.OPEN_AS[entry.opening]}{tray}"
