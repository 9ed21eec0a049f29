"""Sentences as they could have been said, one a second."""

from collections.abc import Iterable
from fractions import Fraction

from procbuilder.infer.account import Account
from procbuilder.infer.hearing.follow import Follower
from procbuilder.infer.hearing.operations import operations
from procbuilder.model.heard import Operation, Sentence, Tense
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration


def spoken(*lines: str) -> list[Sentence]:
    return [
        Sentence(line, Place("talk.srt", number), "strip", Fraction(number), Fraction(number + 1), number)
        for number, line in enumerate(lines, 1)
    ]


def narrated(*lines: str, gap: int = 2) -> Narration:
    """Each line a cue of one second, so many seconds apart."""
    cues = (Cue(Place("talk.srt", n), Fraction(n * gap), Fraction(n * gap + 1), line) for n, line in enumerate(lines))
    return Narration("strip", tuple(cues))


def heard(*lines: str) -> tuple[Operation, ...]:
    return operations(spoken(*lines))


def told(*lines: str) -> list[str]:
    """The operations of some sentences as short text: ``off 4 x bolts (if)``."""
    return [_short(one) for one in heard(*lines)]


def open_after(*lines: str) -> list[str]:
    """What is open when all has been said: ``off: 2 x bolt``."""
    return [f"{account.opening}: {account.item(account.rest).words}" for account in still_open(heard(*lines))]


def still_open(operations: Iterable[Operation]) -> tuple[Account, ...]:
    """What is open when all has been told; what was done before the film comes first."""
    follower = Follower()
    for operation in sorted(operations, key=lambda one: one.tense is not Tense.EARLIER):
        follower.take(operation)
    return tuple(account for account in follower.book.accounts if account.rest)


def _short(one: Operation) -> str:
    count = f"{one.count:f} x " if one.count else ""
    tense = "" if one.tense == "now" else f" ({one.tense})"
    marks = (", new" if one.new else "") + (", scrap" if one.scrap else "")
    return f"{one.act} {count}{one.name}{marks}{tense}"
