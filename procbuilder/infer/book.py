"""The running book: what is open at this moment, kept while the fields are read in the order of the file."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal

from procbuilder.model.fields import Field
from procbuilder.model.ledger import Moment, Opening, Spoilt
from procbuilder.model.moves import CLOSES, MOVES, OPENS
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.quantity import Item, Quantity
from procbuilder.model.words import Words


@dataclass(slots=True)
class Account:
    """One thing that was opened, with what has come back so far."""

    name: str
    opening: Opening
    out: Decimal
    back: Decimal = Decimal(0)
    counted: bool = True
    """False for ``bolts`` without a number: any closing closes them all."""
    opened: list[Moment] = field(default_factory=list)
    closed: list[Moment] = field(default_factory=list)
    fasteners: tuple[Item, ...] = ()
    tray: str = ""
    scrapped: bool = False
    spoilt: Spoilt | None = None
    renewed: bool = False
    nipped: bool = False
    of: str = ""
    assumed: Moment | None = None
    """The step that tells to put back in reverse what was then open; a later opening takes it away."""
    protects: str = ""
    """The state for which it was fitted, as typed after ``while:``."""

    @property
    def rest(self) -> Decimal:
        """How many are still open; never negative."""
        return max(self.out - self.back, Decimal(0))

    def item(self, count: Decimal) -> Item:
        """So many of it."""
        return Item(self.name, self.opened[0].place, Quantity(count) if count > 1 else None)


class Book:
    """Accounts in the order of their openings.

    ``names``: the key of a thing that has two names, such as a nickname, to the one under which it is filed.
    """

    def __init__(self, words: Words, names: Mapping[str, str] | None = None) -> None:
        self._words, self._names = words, names or {}
        self.accounts: list[Account] = []
        self._still: dict[Opening, list[Account]] = {opening: [] for opening in Opening}
        self._named: dict[tuple[Opening, str], list[Account]] = {}
        self._held: set[str] = set()
        """Names of the fasteners that went with a part."""

    def enter(self, entry: Field, moment: Moment, spoilt: Spoilt | None = None) -> None:
        """Book one field; fields that neither open nor close anything, or name no thing, are passed over.

        ``spoilt``: why what this field takes off cannot be used again.
        """
        mention = moved(entry) if entry.name in MOVES else None
        if mention is None:
            return
        if entry.name in OPENS:
            self._open(entry, replace(mention, scrap=mention.scrap or bool(spoilt)), moment, spoilt)
        else:
            self._close(entry, mention, moment)

    def open(self, opening: Opening) -> list[Account]:
        """What is open in this way, in the order of opening."""
        self._still[opening] = [account for account in self._still[opening] if account.rest]
        return list(self._still[opening])

    def assume(self, moment: Moment, steps: range | None) -> None:
        """Everything that is open now, or was opened in these steps, is told to go back in reverse."""
        for opening in Opening:
            for account in self.open(opening):
                if not account.scrapped and (steps is None or account.opened[0].number in steps):
                    account.assumed = moment

    def key(self, name: str) -> str:
        """The name by which two mentions are the same thing."""
        key = self._words.thing(name)
        return self._names.get(key, key)

    def _find(self, opening: Opening, key: str) -> list[Account]:
        return [account for account in self._named.get((opening, key), ()) if account.rest]

    def _open(self, entry: Field, mention: Item, moment: Moment, spoilt: Spoilt | None) -> None:
        opening = OPENS[entry.name]
        known = [a for a in self._find(opening, self.key(mention.name)) if a.scrapped is mention.scrap]
        count = mention.count or Decimal(1)
        if known:
            account = known[0]
            adds_up = opening in (Opening.OFF, Opening.TEMPORARY)
            account.out = account.out + count if adds_up else max(account.out, count)
            account.assumed = None
        else:
            counted = mention.count is not None or not self._words.is_plural(mention.name)
            account = Account(mention.name, opening, count, counted=counted, scrapped=mention.scrap)
            self.accounts.append(account)
            self._still[opening].append(account)
            self._named.setdefault((opening, self.key(mention.name)), []).append(account)
        account.opened.append(moment)
        account.nipped = entry.name == "Nip up"
        account.fasteners = account.fasteners or entry.fasteners
        self._held |= {self.key(fastener.name) for fastener in account.fasteners}
        account.spoilt = account.spoilt or spoilt
        account.of = account.of or _part(entry, "of")
        account.tray = account.tray or _part(entry, "tray")
        account.protects = account.protects or _part(entry, "while")

    def _close(self, entry: Field, mention: Item, moment: Moment) -> None:
        opening = CLOSES[entry.name]
        found = self._find(opening, self.key(mention.name))
        usable = sorted((a for a in found if mention.new or not a.scrapped), key=lambda a: not a.scrapped)
        over = self._settle(usable, mention, moment, opening)
        for fastener in entry.fasteners:
            self._settle_fastener(fastener, usable, moment)
        expected = mention.new or opening is Opening.SLACKENED or (found and not usable)
        if over and not expected and self.key(mention.name) not in self._held:
            self.accounts.append(Account(mention.name, opening, Decimal(0), over, closed=[moment]))

    def _settle(self, accounts: list[Account], mention: Item, moment: Moment, opening: Opening) -> Decimal:
        """Close as many as the mention says; gives back how many more it says than are open."""
        uncounted = any(not account.counted for account in accounts)
        of_all = mention.count is None and (opening is Opening.SLACKENED or self._words.is_plural(mention.name))
        if accounts and (uncounted or of_all):
            count = sum((account.rest for account in accounts), Decimal(0))
        else:
            count = mention.count or Decimal(1)
        for account in accounts:
            closing = min(count, account.rest)
            if closing:
                account.back += closing
                account.closed.append(moment)
                account.renewed = account.renewed or mention.new
                count -= closing
        return count

    def _settle_fastener(self, fastener: Item, parts: list[Account], moment: Moment) -> None:
        """Fasteners close with their part, unless the closing says that fewer of them went back."""
        key = self.key(fastener.name)
        before = next((f for p in parts for f in p.fasteners if self.key(f.name) == key), None)
        if before is None:
            self._settle(self._find(Opening.OFF, key), fastener, moment, Opening.OFF)
        elif before.count and fastener.count and fastener.count < before.count:
            account = Account(before.name, Opening.OFF, before.count, fastener.count, closed=[moment])
            account.opened.extend(parts[0].opened)
            self.accounts.append(account)
            self._still[Opening.OFF].append(account)
            self._named.setdefault((Opening.OFF, key), []).append(account)


def visits(procedure: Procedure) -> Iterator[tuple[int, Step | None, tuple[Field, ...]]]:
    """Step number, step and fields in the order of the file; number 0 and no step for front lists."""
    yield 0, None, procedure.fields
    number = 0
    for section in procedure.sections:
        yield 0, None, section.fields
        for step in section.steps:
            number += 1
            yield number, step, step.fields


def moment_of(entry: Field, number: int, step: Step | None) -> Moment:
    """Where a field stands: its step, its line, and the start of the step's first span."""
    return moment_at(entry.place, number, step)


def moment_at(place: Place, number: int, step: Step | None) -> Moment:
    """A line of a step, with the start of the step's first span."""
    if step is None:
        return Moment("", number, place)
    if not step.spans:
        return Moment(step.id, number, place)
    return Moment(step.id, number, place, step.spans[0].recording, step.spans[0].start)


def moved(entry: Field) -> Item | None:
    """The thing or the state that a field opens or closes; None when it names none."""
    if entry.name in ("State", "Ends"):
        return Item(entry.part("state"), entry.place) if entry.part("state") else None
    return entry.item if entry.items else None


def named(entry: Field) -> str:
    """Name of what a field opens or closes; empty when it names nothing."""
    thing_moved = moved(entry)
    return thing_moved.name if thing_moved else ""


def _part(entry: Field, name: str) -> str:
    return entry.part(name) if name in entry.kind.words else ""
