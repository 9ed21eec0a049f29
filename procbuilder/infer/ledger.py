"""The open/close ledger: everything that was opened, followed until it is closed, on each way through the steps."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from procbuilder.infer.account import Account
from procbuilder.infer.book import Book, moment_at, moment_of, named, visits
from procbuilder.infer.reverse import reversed_steps
from procbuilder.infer.spoils import why_spoilt
from procbuilder.infer.ways import Branches, Way
from procbuilder.model.fields import Field
from procbuilder.model.ledger import Balance, Entry, Ledger, Moment, OnWay, Opening, Spoilt
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.moves import LEFT_OPEN, MOVES
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.words import Words

_WRONG = (Balance.OPEN, Balance.NEVER_OPENED, Balance.ASSUMED)
_End = tuple[str, Opening, Balance, frozenset[Moment], frozenset[Moment]]


def ledger(procedure: Procedure, lexicon: Lexicon) -> Ledger:
    """Follow the typed fields in the order of the file.

    Off is closed by On, For now by Out again, State by Ends; Slacken and Nip up only by a later
    Torque. A closing without a number closes all when the name is a plural, else one. What is spoilt
    by coming off is closed only by a new one, and so is scrap. Left open counts only with a reason
    and a name. What a step tells to refit in reverse is closed as assumed.

    Steps of branches are left out first; then each branch is followed alone, and those together that a
    step joins. What then ends in another way stands behind the rest, with its way.
    """
    return _Followed(procedure, lexicon).ledger()


@dataclass(frozen=True, slots=True)
class _Visit:
    """One field that opens or closes something; without a field, a step that tells to refit in reverse."""

    moment: Moment
    entry: Field | None
    spoilt: Spoilt | None = None
    steps: range | None = None
    """For a step that tells to refit in reverse: the steps it names."""


class _Followed:
    """The fields of a procedure, to be booked on each way."""

    def __init__(self, procedure: Procedure, lexicon: Lexicon) -> None:
        self.words = lexicon.words
        alike = [(other, name) for name, *others in lexicon.synonyms for other in others]
        self.names = {self.words.thing(other): self.words.thing(name) for other, name in (*alike, *lexicon.nicknames)}
        self.branches = Branches(procedure, lexicon)
        self.kept = procedure.everywhere(LEFT_OPEN)
        self.visits = tuple(_all(procedure, lexicon))
        self.of_step: dict[int, list[int]] = {}
        self.of_thing: dict[str, list[int]] = {}
        for at, visit in enumerate(self.visits):
            self.of_step.setdefault(visit.moment.number, []).append(at)
            for key in self._keys(visit):
                self.of_thing.setdefault(key, []).append(at)

    def ledger(self) -> Ledger:
        self.left_out = {number for number in self.of_step if self.branches.leaves_out(number)}
        entries = list(self._entries(visit for visit in self.visits if visit.moment.number not in self.left_out))
        places: dict[str, list[int]] = {}
        for at, entry in enumerate(entries):
            places.setdefault(self._key(entry.item), []).append(at)
        more: list[Entry] = []
        ends: dict[Way, set[_End]] = {}
        for way, conditions in self.branches.ways.items():
            changed, again = set(self.branches.changed_by(way)), self.branches.done_again(way)
            other = changed | {number for numbers in again for number in numbers}
            touched = {key for number in other for at in self.of_step.get(number, ()) for key in self._keys_at(at)}
            if touched:
                taken = self._entries(self._on_way(changed, again, touched), touched)
                own = sorted(at for key in touched for at in places.get(key, ()))
                parts = [part for part in ends if part < way] if len(way) > 1 else []
                known = {end for part in parts for end in ends[part]}
                ends[way] = {_end(entry) for entry in taken}
                more += _otherwise(entries, own, taken, conditions, known)
        return Ledger((*entries, *more))

    def _on_way(self, changed: set[int], again: list[range], touched: set[str]) -> Iterator[_Visit]:
        """The visits of the things that a way touches, when it is taken.

        It adds or drops the ``changed`` steps, and goes through others of the main way ``again``.
        """
        told = (at for at, visit in enumerate(self.visits) if visit.entry is None)
        near = sorted({*told, *(at for key in touched for at in self.of_thing[key])})
        numbers = {at: self.visits[at].moment.number for at in near}
        order = [(numbers[at], 0, at) for at in near if (numbers[at] in self.left_out) is (numbers[at] in changed)]
        for steps in again:
            order += [(steps[-1], 1, at) for at in near if numbers[at] in steps and numbers[at] not in self.left_out]
        return (self.visits[at] for _, _, at in sorted(order))

    def _entries(self, visits: Iterable[_Visit], touched: set[str] | None = None) -> tuple[Entry, ...]:
        book = Book(self.words, self.names)
        for visit in visits:
            if visit.entry is None:
                book.assume(visit.moment, visit.steps)
            else:
                book.enter(visit.entry, visit.moment, visit.spoilt)
        accounts = [a for a in book.accounts if touched is None or book.key(a.name) in touched]
        kept = list(self.kept)
        return tuple(_entry(account, kept, self.words) for account in accounts)

    def _keys_at(self, at: int) -> frozenset[str]:
        return self._keys(self.visits[at])

    def _keys(self, visit: _Visit) -> frozenset[str]:
        if visit.entry is None:
            return frozenset()
        names = (named(visit.entry), *(fastener.name for fastener in visit.entry.fasteners))
        return frozenset(self._key(name) for name in names if name)

    def _key(self, name: str) -> str:
        key = self.words.thing(name)
        return self.names.get(key, key)


def _all(procedure: Procedure, lexicon: Lexicon) -> Iterator[_Visit]:
    """What opens or closes anything, in the order of the file."""
    told = reversed_steps(procedure, lexicon)
    for number, step, fields in visits(procedure):
        for entry in fields:
            if entry.name in MOVES:
                yield _Visit(moment_of(entry, number, step), entry, _spoilt(entry, step, lexicon))
        if step is not None and number in told:
            yield _Visit(moment_at(step.place, number, step), None, steps=told[number])


def _spoilt(entry: Field, step: Step | None, lexicon: Lexicon) -> Spoilt | None:
    """Why what a field takes off cannot be used again, though nobody calls it scrap; None when it can."""
    if entry.name != "Off" or not entry.items or entry.item.scrap:
        return None
    return why_spoilt(entry.item.name, step.command if step else "", lexicon)


def _otherwise(
    entries: list[Entry], own: list[int], taken: tuple[Entry, ...], conditions: tuple[str, ...], known: set[_End]
) -> list[Entry]:
    """What ends otherwise when a way is taken. Entries that are wrong only when it is not taken are marked.

    ``own``: places of the entries that the way touches. ``known``: ends on ways that are a part of this one.
    """
    ends_so = {_end(entry) for entry in taken}
    for at in own:
        entry = entries[at]
        known.add(_end(entry))
        if entry.balance in _WRONG and _end(entry) not in ends_so and len(conditions) == 1:
            before = entry.way.branches if entry.way else ()
            entries[at] = replace(entry, way=OnWay((*before, *conditions), taken=False))
    return [replace(entry, way=OnWay(conditions, taken=True)) for entry in taken if _end(entry) not in known]


def _end(entry: Entry) -> _End:
    """What must be the same for an entry to end in the same way; how often a step is done does not count."""
    return entry.item, entry.opening, entry.balance, frozenset(entry.opened), frozenset(entry.closed)


def _entry(account: Account, kept: list[Field], words: Words) -> Entry:
    balance, reason = _balance(account, kept, words)
    assumed = (account.assumed,) if account.assumed and balance is Balance.ASSUMED else ()
    return Entry(
        item=account.name,
        opening=account.opening,
        balance=balance,
        opened=tuple(account.opened),
        closed=(*account.closed, *assumed),
        out=account.out,
        back=account.back,
        fasteners=account.fasteners,
        tray=account.tray,
        scrapped=account.scrapped,
        spoilt=account.spoilt,
        renewed=account.renewed,
        nipped=account.nipped,
        of=account.of,
        reason=reason,
        uncounted=account.uncounted,
        doubtful=account.doubtful,
    )


def _balance(account: Account, kept: list[Field], words: Words) -> tuple[Balance, str]:
    """How it ends; a Left open line speaks of one entry alone, and is then taken out of ``kept``."""
    if not account.opened:
        return Balance.NEVER_OPENED, ""
    if not account.rest:
        return Balance.CLOSED, ""
    for entry in kept:
        if _covers(entry, account, words):
            kept.remove(entry)
            return Balance.LEFT_OPEN, f"{entry.part('reason')} ({entry.part('name')})"
    return (Balance.ASSUMED if account.assumed else Balance.OPEN), ""


def _covers(entry: Field, account: Account, words: Words) -> bool:
    """True when a Left open field names this thing, as many as are open, with reason and name."""
    if not entry.items:
        return False
    item = entry.item
    enough = item.quantity is None or item.quantity.number >= account.rest
    same = words.thing(item.name) == words.thing(account.name)
    same = same and (not entry.part("of") or words.thing(entry.part("of")) == words.thing(account.of))
    return same and enough and bool(entry.part("reason") and entry.part("name"))
