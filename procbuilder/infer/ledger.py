"""The open/close ledger: everything that was opened, followed until it is closed."""

from procbuilder.infer.book import Account, Book, moment_of, visits
from procbuilder.model.fields import Field
from procbuilder.model.ledger import Balance, Entry, Ledger
from procbuilder.model.procedure import Procedure
from procbuilder.model.words import thing


def ledger(procedure: Procedure) -> Ledger:
    """Follow the typed fields in the order of the file.

    Off is closed by On, For now by Out again, State by Ends; Slacken and Nip up only by a later
    Torque. A closing without a number closes all when the name is a plural, else one. Left open
    counts only with a reason and a name.
    """
    book = Book()
    for number, step, fields in visits(procedure):
        for entry in fields:
            book.enter(entry, moment_of(entry, number, step))
    kept = procedure.everywhere("Left open")
    return Ledger(tuple(_entry(account, kept) for account in book.accounts))


def _entry(account: Account, kept: tuple[Field, ...]) -> Entry:
    balance, reason = _balance(account, kept)
    return Entry(
        item=account.name,
        opening=account.opening,
        balance=balance,
        opened=tuple(account.opened),
        closed=tuple(account.closed),
        out=account.out,
        back=account.back,
        fasteners=account.fasteners,
        tray=account.tray,
        scrapped=account.scrapped,
        reason=reason,
    )


def _balance(account: Account, kept: tuple[Field, ...]) -> tuple[Balance, str]:
    if not account.opened:
        return Balance.NEVER_OPENED, ""
    if not account.rest:
        return Balance.CLOSED, ""
    for entry in kept:
        if _covers(entry, account):
            return Balance.LEFT_OPEN, f"{entry.part('reason')} ({entry.part('name')})"
    return Balance.OPEN, ""


def _covers(entry: Field, account: Account) -> bool:
    """True when a Left open field names this thing, as many as are open, with reason and name."""
    if not entry.items:
        return False
    item = entry.item
    enough = item.quantity is None or item.quantity.number >= account.rest
    return thing(item.name) == thing(account.name) and enough and bool(entry.part("reason") and entry.part("name"))
