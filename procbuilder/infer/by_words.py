"""What steps without fields take off by their words alone, and no later step speaks of again."""

from collections.abc import Iterator
from fractions import Fraction

from procbuilder.infer.book import moment_at
from procbuilder.infer.commanded import commanded
from procbuilder.infer.dictionary.english import thing
from procbuilder.infer.dictionary.wordbook import Wordbook, is_heard, wordbook
from procbuilder.infer.hearing.follow import Follower
from procbuilder.infer.hearing.operations import operations
from procbuilder.infer.lexicon import load
from procbuilder.model.heard import Act, Sentence
from procbuilder.model.ledger import Opening
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.moves import LEFT_OPEN, MOVES
from procbuilder.model.phrases import called
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.tokens import tokens
from procbuilder.model.words import Words
from procbuilder.model.worked import TakenOff
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords

_LETTERS = 4
"""An end of a compound has at least as many."""
_NOT_KEPT = ("temporary", "support", "lock", "dirt", "paste", "fluid", "tool", "worn")
"""Groups of things that come off without having to go on again."""


def taken_off_by_words(procedure: Procedure, own: OwnWords = NO_OWN_WORDS) -> tuple[TakenOff, ...]:
    """In the order of the steps. A thing that any later step names, in whatever words, is not among them."""
    bare = {number: step for number, step in enumerate(procedure.steps, 1) if not step.all(*MOVES, LEFT_OPEN)}
    said = [Sentence(step.command, step.place, "", Fraction(0), Fraction(0), number) for number, step in bare.items()]
    lexicon = load(procedure.front["language"], own)
    taken = _heard(said, lexicon, own) if is_heard(lexicon.language) else _read(said, lexicon, own)
    later = _spoken_of_last(procedure, lexicon.words)
    return tuple(
        TakenOff(name, bare[number].command, moment_at(bare[number].place, number, bare[number]))
        for name, number in taken.items()
        if max((later.get(one, 0) for one in _shorter(name, lexicon.words)), default=0) <= number
    )


def _heard(said: list[Sentence], lexicon: Lexicon, own: OwnWords) -> dict[str, int]:
    """What is off at the end, with the number of the step that took it off."""
    book, follower = wordbook(own=own), Follower()
    for operation in operations(said, lexicon.language, own):
        follower.take(operation)
    opened = [account for account in follower.book.open(Opening.OFF) if _goes_on_again(account.name, book)]
    return {account.name: account.opened[-1].number for account in opened}


def _read(said: list[Sentence], lexicon: Lexicon, own: OwnWords) -> dict[str, int]:
    """The same of commands that are not heard: whatever comes off, since what goes on again is named then."""
    off = (one for one in commanded(said, lexicon, own) if one.act is Act.OFF)
    return {one.object: one.said.number for one in off if not called(one.object, lexicon.not_kept, lexicon.words)}


def _goes_on_again(name: str, book: Wordbook) -> bool:
    return any(map(str.isalnum, name)) and not book.is_in(thing(name), _NOT_KEPT)


def _spoken_of_last(procedure: Procedure, words: Words) -> dict[str, int]:
    """The number of the last step in which each word stands, in singular or plural."""
    return {
        token.key: number
        for number, step in enumerate(procedure.steps, 1)
        for text in _texts(step)
        for token in tokens(text, words)
    }


def _shorter(name: str, words: Words) -> Iterator[str]:
    """The last word of a name and, where words are written together, its ends: Deckel of Kupplungsdeckel."""
    last = tokens(name, words)[-1:]
    for token in last:
        yield token.key
        yield from (end[1:] for end in token.names if end.startswith("-") and len(end) > _LETTERS)


def _texts(step: Step) -> Iterator[str]:
    yield step.command
    yield from (prose.text for prose in step.prose)
    yield from (entry.raw for entry in step.fields)
