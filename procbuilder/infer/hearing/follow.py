"""What the heard operations open and close: the fields they give, and what is open at the end."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from procbuilder.infer.account import Account
from procbuilder.infer.book import Book
from procbuilder.infer.dictionary.english import WORDS, is_plural, singular, thing
from procbuilder.model.fields import BY_NAME, Field
from procbuilder.model.heard import Act, Operation, Tense
from procbuilder.model.ledger import Moment, Opening
from procbuilder.model.moves import FIELD_OF
from procbuilder.model.quantity import Item, Quantity


@dataclass(frozen=True, slots=True)
class Move:
    """One field that an operation gives, with the thing under the name by which it was opened."""

    field: str
    item: Item
    operation: Operation
    stands_for_new: bool = False
    """It closes what was spoilt: a new one must have been fitted, though nobody said so."""

    @property
    def entry(self) -> Field:
        """The move as a field of a procedure."""
        kind = BY_NAME[self.field.casefold()]
        return Field(
            kind,
            self.item.place,
            self.item.words,
            ((kind.parts[0], self.item.name),),
            (self.item,) if kind.items else (),
        )


class Follower:
    """Follows everything that is opened, so that what is closed gets the same name."""

    def __init__(self) -> None:
        self.book = Book(WORDS)

    def take(self, operation: Operation) -> tuple[Move, ...]:
        """The moves of one operation; none for what is only announced, or belongs to a branch."""
        if operation.tense in (Tense.LATER, Tense.IF) or not operation.name:
            return ()
        moves = tuple(self._moves(operation))
        for move in moves:
            item = replace(move.item, new=move.item.new or move.stands_for_new)
            self.book.enter(replace(move, item=item).entry, _moment(operation))
        return moves

    def _moves(self, operation: Operation) -> Iterator[Move]:
        match operation.act:
            case Act.ON | Act.RENEW:
                yield from self._puts_back(operation)
            case Act.TIGHTEN | Act.NIP:
                yield from self._tightens(operation)
            case Act.OUT_AGAIN:
                yield from self._close(operation, Opening.TEMPORARY, "Out again")
            case Act.ENDS:
                yield from self._ends(operation)
            case Act.OFF | Act.SLACKEN | Act.FOR_NOW | Act.STATE:
                yield from self._opens(operation)

    def _opens(self, operation: Operation) -> list[Move]:
        """What an opening opens; some words that open one thing close another that is open."""
        if operation.act is Act.FOR_NOW and self._matching(operation.name, Opening.OFF, exact=True):
            return self._puts_back(operation)
        if operation.act is Act.OFF and (fitted := self._close(operation, Opening.TEMPORARY, "Out again")):
            return fitted
        if operation.state.endswith(" off") and (stopped := self._end_state_of(operation, "running")):
            return stopped
        if operation.state.endswith(" running") and (started := self._end_state_of(operation, "off")):
            return started
        if self._is_open_already(operation):
            return []
        return [_move(operation, FIELD_OF[operation.act], operation.name, operation.count)]

    def _is_open_already(self, operation: Operation) -> bool:
        """One thing that is off cannot be taken off again; without a count it was only told twice."""
        if operation.act is Act.STATE:
            return bool(self._matching(operation.name, Opening.STATE, exact=True))
        if operation.count is not None:
            return False
        opening = Opening.TEMPORARY if operation.act is Act.FOR_NOW else Opening.OFF
        opening = Opening.SLACKENED if operation.act is Act.SLACKEN else opening
        known = self._matching(operation.name, opening, exact=True)
        return any(not account.closed for account in known)

    def _puts_back(self, operation: Operation) -> list[Move]:
        found = self._close(operation, Opening.OFF, "On")
        if found:
            return found + self._close(operation, Opening.SLACKENED, "Torque", exact=True)
        if tightened := self._close(operation, Opening.SLACKENED, "Torque", exact=True):
            return tightened
        if ended := self._end_state_of(operation):
            return ended
        if operation.act is Act.RENEW:
            return []
        return [_move(operation, "On", operation.name, operation.count)]

    def _tightens(self, operation: Operation) -> list[Move]:
        """What is tightened is on: a bolt that was off goes on with it."""
        told = operation.count or Decimal(0)
        partly = any(0 < a.back >= told for a in self._matching(operation.name, Opening.OFF))
        # Of what is partly back, "them" are those that are on: the rest stays off.
        on = [] if partly else self._close(operation, Opening.OFF, "On")
        closing = self._close(operation, Opening.SLACKENED, FIELD_OF[operation.act])
        return on + (
            closing or [_move(operation, FIELD_OF[operation.act], on[0].item.name if on else operation.name, None)]
        )

    def _ends(self, operation: Operation) -> list[Move]:
        exact = self._close(operation, Opening.STATE, "Ends")
        return exact or self._end_state_of(operation, ends_like=operation.state.removeprefix(operation.object).strip())

    def _end_state_of(self, operation: Operation, ends_like: str = "") -> list[Move]:
        """The last open state of this thing, or the last one that ends with the same words."""
        for account in reversed(self.book.open(Opening.STATE)):
            words, wanted = thing(account.name).split(), thing(operation.object).split()
            same_thing = words[: len(wanted)] == wanted
            if (same_thing and not ends_like) or (ends_like and account.name.endswith(f" {ends_like}")):
                return [_move(operation, "Ends", account.name, None)]
        return []

    def _matching(self, name: str, opening: Opening, *, exact: bool = False) -> list[Account]:
        """What is open under this name; else under a longer or shorter one with the same last word, the last first."""
        accounts = self.book.open(opening)
        same = [account for account in accounts if thing(account.name) == thing(name)]
        if same or exact:
            return same
        wanted = thing(name).split()
        alike = [account for account in reversed(accounts) if _alike(thing(account.name).split(), wanted)]
        longer = [account for account in accounts if thing(account.name).split()[: len(wanted)] == wanted]
        return alike or (longer if len(wanted) > 1 else [])

    def _close(self, operation: Operation, opening: Opening, field: str, *, exact: bool = False) -> list[Move]:
        """The moves that close what is open under the name; what stands for a thing that was spoilt is a new one."""
        accounts = self._matching(operation.name, opening, exact=exact)
        usable = [account for account in accounts if operation.new or not account.scrapped]
        stands_for_new = bool(accounts) and not usable
        accounts = usable or accounts
        everything = operation.count is None and (operation.plural or is_plural(operation.name))
        if not everything and (operation.count is None or operation.count == 1):
            accounts = accounts[:1]
        left = operation.count
        moves = []
        for account in accounts:
            if left is not None and left <= 0:
                break
            closing = (
                account.rest
                if everything or (left is None and opening is not Opening.OFF)
                else min(account.rest, left or Decimal(1))
            )
            counted = closing if account.counted and (account.out > 1 or closing > 1) else None
            moves.append(replace(_move(operation, field, account.name, counted), stands_for_new=stands_for_new))
            left = left - closing if left is not None else None
        return moves


def _alike(one: list[str], other: list[str]) -> bool:
    """The same last word, and one name holds all words of the other; a tri-ring is a ring."""
    one, other = " ".join(one).replace("-", " ").split(), " ".join(other).replace("-", " ").split()
    if not one or not other or one[-1] != other[-1]:
        return False
    return set(one) <= set(other) or set(other) <= set(one)


def _move(operation: Operation, field: str, name: str, count: Decimal | None) -> Move:
    quantity = Quantity(count) if count is not None and count > 1 and field not in ("State", "Ends") else None
    name = _one_of(name) if quantity else name
    item = Item(
        name, operation.said.place, quantity, operation.new and field == "On", operation.scrap and field == "Off"
    )
    return Move(field, replace(item, origin=operation.said.origin), operation)


def _one_of(name: str) -> str:
    """``2 x slide bolt``, not ``2 x slide bolts``."""
    *front, last = name.split()
    return " ".join([*front, singular(last) if last.islower() else last.removesuffix("s")])


def _moment(operation: Operation) -> Moment:
    said = operation.said
    return Moment("", said.number, said.place, said.recording, said.start)


def tightened_at_last(steps: list[list[Move]]) -> list[list[Move]]:
    """The moves of each step without a tightening that only follows from "back on", where one is told later.

    "Nuts on, finger tight" tightens nothing for good when "tighten the nuts" comes behind.
    """
    told: set[str] = set()
    kept: list[list[Move]] = []
    for moves in reversed(steps):
        kept.append([one for one in moves if not (_follows(one) and thing(one.item.name) in told)])
        told |= {thing(one.item.name) for one in moves if one.field == "Torque" and not _follows(one)}
    return kept[::-1]


def _follows(move: Move) -> bool:
    return move.field == "Torque" and move.operation.act is Act.ON
