"""The running book: what is open at this moment, kept while the fields are read in the order of the file."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from decimal import Decimal

from procbuilder.infer.account import Account
from procbuilder.model.fields import Field
from procbuilder.model.ledger import Moment, Opening, Spoilt
from procbuilder.model.moves import CLOSES, MOVES, OPENS
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.quantity import Item
from procbuilder.model.words import Words


class Book:
    """Accounts in the order of their openings.

    ``names``: the key of a thing that has two names, such as a nickname, to the one under which it is filed.
    """

    def __init__(self, words: Words, names: Mapping[str, str] | None = None) -> None:
        self._words, self._names = words, names or {}
        self.accounts: list[Account] = []
        self._still: dict[Opening, list[Account]] = {opening: [] for opening in Opening}
        self._named: dict[tuple[Opening, str], list[Account]] = {}
        self._pieces: dict[str, list[tuple[Account, Account]]] = {}
        """Fasteners that went with a part, each with its part: closed with it unless a closing counts them."""

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

    def _find(self, opening: Opening, key: str, of: str) -> list[Account]:
        """What is open under this name: of this larger part, else of none; of the last one opened when none is said."""
        found = [account for account in self._named.get((opening, key), ()) if account.rest]
        groups = {self.key(account.of) for account in found}
        group = self.key(of)
        if group not in groups:
            group = "" if of else self.key(found[-1].of) if found else ""
        return [account for account in found if self.key(account.of) == group]

    def _open(self, entry: Field, mention: Item, moment: Moment, spoilt: Spoilt | None) -> None:
        opening, of = OPENS[entry.name], _part(entry, "of")
        nips = entry.name == "Nip up"
        open_now = self._find(opening, self.key(mention.name), of)
        same = [a for a in open_now if nips or self.key(a.of) == self.key(of)]
        known = [account for account in same if account.scrapped is mention.scrap]
        count = mention.count or Decimal(1)
        if known:
            account = known[0]
            adds_up = opening in (Opening.OFF, Opening.TEMPORARY)
            account.out = account.out + count if adds_up else max(account.out, count)
            account.counted = account.counted and (self._counted(mention) or not adds_up)
            account.assumed = None
        else:
            account = self._new(mention, opening, count, of)
        account.opened.append(moment)
        if not nips or not account.brought:
            account.brought.append(count if self._counted(mention) else Decimal("Infinity"))
        account.nipped = nips
        account.fasteners = account.fasteners or entry.fasteners
        for fastener in entry.fasteners:
            self._hold(fastener, account, moment)
        account.spoilt = account.spoilt or spoilt
        account.tray = account.tray or _part(entry, "tray")
        account.protects = account.protects or _part(entry, "while")

    def _new(self, mention: Item, opening: Opening, count: Decimal, of: str) -> Account:
        account = Account(mention.name, opening, count, counted=self._counted(mention), scrapped=mention.scrap, of=of)
        self.accounts.append(account)
        self._still[opening].append(account)
        self._named.setdefault((opening, self.key(mention.name)), []).append(account)
        return account

    def _counted(self, mention: Item) -> bool:
        return mention.count is not None or not self._words.is_plural(mention.name)

    def _hold(self, fastener: Item, part: Account, moment: Moment) -> None:
        count = fastener.count or Decimal(1)
        piece = Account(fastener.name, Opening.OFF, count, counted=self._counted(fastener), opened=[moment])
        self._pieces.setdefault(self.key(fastener.name), []).append((piece, part))

    def _close(self, entry: Field, mention: Item, moment: Moment) -> None:
        opening, key, of = CLOSES[entry.name], self.key(mention.name), _part(entry, "of")
        found = self._meant(opening, mention, of)
        usable = sorted((a for a in found if mention.new or not a.scrapped), key=lambda a: not a.scrapped)
        if opening is Opening.SLACKENED and entry.torque.stage < 2:
            self._tighten(usable or self._named.get((opening, key), [])[-1:], mention)
        over = self._settle(usable, mention, moment, opening)
        for fastener in entry.fasteners:
            self._settle_fastener(fastener, usable, moment)
        if over and opening is Opening.OFF:
            over = self._settle_pieces(self._pieces.get(key, []), mention, over, moment)
        expected = mention.new or opening is Opening.SLACKENED or (found and not usable)
        if over and not expected:
            self.accounts.append(Account(mention.name, opening, Decimal(0), over, closed=[moment]))

    def _meant(self, opening: Opening, mention: Item, of: str) -> list[Account]:
        """What a closing closes: one group, or all groups of the name when it counts as many as are open in all."""
        key = self.key(mention.name)
        every = [account for account in self._named.get((opening, key), ()) if account.rest]
        if not of and mention.count is not None and mention.count >= sum(account.rest for account in every):
            return every
        found = self._find(opening, key, of)
        if not of and len(found) < len(every) and len({self.key(account.of) for account in every}) > 1:
            for account in every:
                account.lumped = True
        return found

    def _tighten(self, accounts: list[Account], mention: Item) -> None:
        for account in accounts:
            account.tightened.append(mention.count)

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
                account.told_back = account.told_back or mention.count is not None
                account.lumped = account.lumped or (
                    of_all and opening is not Opening.SLACKENED and len(account.brought) > 1
                )
                count -= closing
        return count

    def _settle_fastener(self, fastener: Item, parts: list[Account], moment: Moment) -> None:
        """Fasteners close with their part, unless a closing says that fewer of them went back."""
        key = self.key(fastener.name)
        own = [pair for pair in self._pieces.get(key, ()) if any(pair[1] is part for part in parts)]
        if not own:
            loose = self._find(Opening.OFF, key, "")
            self._settle(loose, fastener, moment, Opening.OFF)
        elif fastener.count:
            self._settle_pieces(own, fastener, fastener.count, moment)

    def _settle_pieces(
        self, pairs: list[tuple[Account, Account]], mention: Item, count: Decimal, moment: Moment
    ) -> Decimal:
        """Close fasteners that went with a part; those that are then only partly back are followed from here on."""
        open_now = [piece for piece, _ in pairs if piece.rest]
        if mention.count is None and self._words.is_plural(mention.name):
            count = max(count, sum((piece.rest for piece in open_now), Decimal(0))) if open_now else count
        for piece in open_now:
            closing = piece.rest if not piece.counted else min(count, piece.rest)
            if closing:
                piece.back += closing
                piece.closed.append(moment)
                count = count - closing if piece.counted else Decimal(0)
                if piece.rest:
                    self.accounts.append(piece)
                    self._still[Opening.OFF].append(piece)
                    self._named.setdefault((Opening.OFF, self.key(piece.name)), []).append(piece)
        return count


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
