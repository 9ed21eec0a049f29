"""What steps without fields take off by their words alone, and no later step speaks of again."""

import re
from collections.abc import Iterator
from fractions import Fraction

from procbuilder.infer.book import moment_at
from procbuilder.infer.dictionary.english import singular, thing
from procbuilder.infer.dictionary.wordbook import Wordbook, is_heard, wordbook
from procbuilder.infer.hearing.follow import Follower
from procbuilder.infer.hearing.operations import operations
from procbuilder.model.heard import Sentence
from procbuilder.model.ledger import Opening
from procbuilder.model.moves import LEFT_OPEN, MOVES
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.worked import TakenOff
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

_WORD = re.compile(r"[^\W_]+")
_NOT_KEPT = ("temporary", "support", "lock", "dirt", "paste", "fluid", "tool", "worn")
"""Groups of things that come off without having to go on again."""


def taken_off_by_words(procedure: Procedure, own: OwnWords = NO_OWN_WORDS) -> tuple[TakenOff, ...]:
    """In the order of the steps. A thing that any later step names, in whatever words, is not among them."""
    if not is_heard(procedure.front["language"]):
        return ()
    bare = {number: step for number, step in enumerate(procedure.steps, 1) if not step.all(*MOVES, LEFT_OPEN)}
    book, follower = wordbook(own=own), Follower()
    said = [Sentence(step.command, step.place, "", Fraction(0), Fraction(0), number) for number, step in bare.items()]
    for operation in operations(said, procedure.front["language"], own):
        follower.take(operation)
    opened = [account for account in follower.book.open(Opening.OFF) if _goes_on_again(account.name, book)]
    lasts = {account.name: account.opened[-1].number for account in opened}
    later = _spoken_of_last(procedure)
    return tuple(
        TakenOff(name, bare[number].command, moment_at(bare[number].place, number, bare[number]))
        for name, number in lasts.items()
        if later.get(_words(name)[-1], 0) <= number
    )


def _goes_on_again(name: str, book: Wordbook) -> bool:
    return bool(_words(name)) and not book.is_in(thing(name), _NOT_KEPT)


def _spoken_of_last(procedure: Procedure) -> dict[str, int]:
    """The number of the last step in which each word stands, in singular or plural."""
    return {
        word: number for number, step in enumerate(procedure.steps, 1) for text in _texts(step) for word in _words(text)
    }


def _words(text: str) -> list[str]:
    return [singular(word) for word in _WORD.findall(text)]


def _texts(step: Step) -> Iterator[str]:
    yield step.command
    yield from (prose.text for prose in step.prose)
    yield from (entry.raw for entry in step.fields)
