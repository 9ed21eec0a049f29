"""Finds many phrases in a text at once, whatever the number of phrases."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from procbuilder.model.words import singular

_WORD = re.compile(r"[^\W_]+")
_PASSED_OVER = frozenset(
    {"the", "a", "an", "its", "their", "your", "this", "that", "these", "those", "both", "all", "each"}
)
"""Words that may stand within a phrase without changing it."""
_DENIES = frozenset({"no", "not", "never", "without", "instead", "avoid", "nor", "don", "cannot"})
_REACH = 3
"""Words in front of a phrase among which a denial counts."""


@dataclass(frozen=True, slots=True)
class Token:
    """One word of a text in its singular, and where it stands."""

    word: str
    start: int
    end: int


@lru_cache(maxsize=20_000)
def tokens(text: str) -> tuple[Token, ...]:
    """The words of a text, but for articles and their like."""
    found = ((match[0].casefold(), match) for match in _WORD.finditer(text))
    return tuple(Token(singular(word), match.start(), match.end()) for word, match in found if word not in _PASSED_OVER)


@dataclass(frozen=True, slots=True)
class Found:
    """A phrase in a text."""

    key: int
    """Which group of phrases it belongs to."""
    words: str
    """As they stand in the text."""
    first: int
    """Number of its first word."""
    behind: int
    """Number of the word behind it."""


class Phrases:
    """Groups of phrases by their first word, so that a text is read only once."""

    def __init__(self, groups: Iterable[Iterable[str]]) -> None:
        self._begin: dict[str, list[tuple[tuple[str, ...], int]]] = {}
        for key, group in enumerate(groups):
            for phrase in group:
                words = tuple(token.word for token in tokens(phrase))
                self._begin.setdefault(words[0], []).append((words, key))

    def found(self, text: str, *, denied: bool = False) -> Iterator[Found]:
        """Each phrase that stands in the text as whole words; one that is denied ("never use an air line") if asked."""
        read = tokens(text)
        for at, token in enumerate(read):
            for words, key in self._begin.get(token.word, ()):
                behind = at + len(words)
                if tuple(one.word for one in read[at:behind]) == words and (denied or not _denied(read, at)):
                    yield Found(key, text[token.start : read[behind - 1].end], at, behind)


def _denied(read: tuple[Token, ...], at: int) -> bool:
    return any(token.word in _DENIES for token in read[max(0, at - _REACH) : at])
