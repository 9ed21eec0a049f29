"""What kind of sentence it is: talk, a caution, a reason, a finding, something said too late."""

import re
from collections.abc import Iterable
from functools import cache

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.wordbook import Wordbook

_WORD = re.compile(r"'?[^\W_]+(?:-[^\W_]+)*")


def folded(words: str) -> str:
    """The words in lower case with single spaces, signs left out, a space at both ends."""
    return f" {' '.join(_WORD.findall(words.casefold().replace('’', chr(39))))} "


def cue(words: str, kind: str, book: Wordbook) -> str:
    """The first phrase of this kind that stands in a sentence; empty when none does."""
    return first_of(folded(words), book.cues[kind])


def first_of(text: str, phrases: Iterable[str]) -> str:
    """The first of the phrases in a folded text."""
    return next((phrase for phrase in phrases if _key(phrase) in text), "")


@cache
def _key(phrase: str) -> str:
    return folded(phrase)


def begins(words: str, kind: str, book: Wordbook) -> str:
    """The phrase of this kind with which a sentence begins; empty when it begins otherwise."""
    text = folded(words)
    return next((phrase for phrase in book.cues[kind] if text.startswith(_key(phrase))), "")


def is_talk(words: str, book: Wordbook) -> bool:
    """True for a sentence about anything but the work; never for one that names a part, a tool or a supply."""
    return bool(cue(words, "talk", book)) and not _names_work(words, book)


def is_everyday(words: str, book: Wordbook) -> bool:
    """True for a sentence about everyday life; it is talk when it tells of no operation either."""
    return bool(cue(words, "everyday", book)) and not _names_work(words, book)


def _names_work(words: str, book: Wordbook) -> bool:
    return any(singular(word) in book.trade_words for word in folded(words).split())
