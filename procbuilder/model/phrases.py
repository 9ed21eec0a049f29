"""Finds phrases in a text: whole words in any form, whatever their number. One way for all lists of words.

A phrase is words one behind the other; ``motor + starten`` is parts in any order within a clause, ``tip/tilt`` one of
two words. In a language of compounds ``-rad`` is all that ends with it, and ``brems-`` all that begins with it.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import takewhile

from procbuilder.model.tokens import BREAK, FULL_STOP, Token, tokens
from procbuilder.model.words import Words

_WORD = re.compile(r"[^\W_]+")
_CLAUSE = 60
"""Words on each side among which the rest of a phrase is looked for: text without a stop is no clause for ever."""
_REACH = 3
"""Words in front of a phrase among which a denial counts; behind it, one less."""
_KNOWN = 4
"""Letters of an end of a compound by which somebody knows what is meant."""


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
    clause: int
    """Number of its clause."""
    whole: bool
    """The thing itself: a gearbox bracket is no gearbox."""


_Run = tuple[frozenset[str], ...]
"""Words one behind the other: for each its names, of which one must be a name of the token."""


class Phrases:
    """Groups of phrases by their first word, so that a text is read only once."""

    def __init__(self, groups: Iterable[Iterable[str]], words: Words) -> None:
        self._words = words
        self._denies, self._denies_behind = (
            frozenset(map(words.folded, said)) for said in (words.denies, words.denies_behind)
        )
        self._never = self._denies | self._denies_behind
        self._begin: dict[str, list[tuple[tuple[_Run, ...], int]]] = {}
        for key, group in enumerate(groups):
            for phrase in group:
                runs = tuple(filter(None, (_run(part, words) for part in phrase.split("+"))))
                for name in runs[0][0] if runs else ():
                    self._begin.setdefault(name, []).append((runs, key))
        for begun in self._begin.values():
            begun.sort(key=lambda one: -sum(map(len, one[0])))

    def found(self, text: str, *, denied: bool = False) -> Iterator[Found]:
        """Each phrase that stands in the text as whole words; one that is denied ("never use an air line") if asked.

        At the same word the longer one comes first.
        """
        read = tokens(text, self._words)
        denied = denied or self._never.isdisjoint(token.key for token in read)
        for at, token in enumerate(read):
            for runs, key in self._begun(token):
                places = _places(runs, read, at)
                if places and (denied or not any(self._denied(text, read, *place) for place in places)):
                    first, behind = min(places)[0], max(behind for _, behind in places)
                    here = text[read[first].start : read[behind - 1].end]
                    yield Found(key, here, first, behind, token.clause, self._is_whole(text, read, behind))

    def _begun(self, token: Token) -> Iterable[tuple[tuple[_Run, ...], int]]:
        if not self._words.compounds:
            return self._begin.get(token.key, ())
        known = (self._begin[name] for name in token.names if name in self._begin)
        return sorted({one for begun in known for one in begun}, key=lambda one: (-sum(map(len, one[0])), one[1]))

    def _is_whole(self, text: str, read: tuple[Token, ...], behind: int) -> bool:
        if self._words.compounds or behind >= len(read):
            return True
        between, following = text[read[behind - 1].end : read[behind].start], read[behind].key
        return bool(between.strip(" -\n")) or following in self._words.no_part_of_a_name or following.isdigit()

    def _denied(self, text: str, read: tuple[Token, ...], at: int, behind: int) -> bool:
        before = [one for one in read[max(0, at - _REACH) : at] if one.key in self._denies]
        if before and not FULL_STOP.search(text[before[-1].end : read[at].start]):
            return True
        after = [one for one in read[behind : behind + _REACH - 1] if one.key in self._denies_behind]
        return bool(after) and not BREAK.search(text[read[behind - 1].end : after[0].start])


def _places(runs: tuple[_Run, ...], read: tuple[Token, ...], at: int) -> list[tuple[int, int]]:
    """Where each run of a phrase stands, the first of them here; empty when one is not in this clause."""
    first, *others = runs
    if not _stands(first, read[at : at + len(first)]):
        return []
    if not others:
        return [(at, at + len(first))]
    places = [(at, at + len(first))]
    for run in others:
        here = (
            start
            for start in range(max(0, at - _CLAUSE), min(len(read), at + _CLAUSE))
            if read[start].clause == read[at].clause and _stands(run, read[start : start + len(run)])
        )
        start = next(here, None)
        if start is None:
            return []
        places.append((start, start + len(run)))
    return places


@lru_cache(maxsize=20_000)
def _run(phrase: str, words: Words) -> _Run:
    """The names of each word of a phrase."""
    run: list[frozenset[str]] = []
    for word in phrase.split():
        one, *others = [found for each in word.split("/") if (found := _marked(each, words))] or [[]]
        run += [names.union(*(other[0] for other in others)) for names in one] if others else one
    return tuple(run)


def _marked(word: str, words: Words) -> list[frozenset[str]]:
    """The name of each part of a word of a phrase, with its hyphen in front or behind."""
    read = tokens(word, words)
    keys = [token.key for token in read]
    if keys and words.compounds and word.startswith("-"):
        keys[0] = f"-{keys[0]}"
    if keys and words.compounds and word.endswith("-"):
        keys[-1] = f"{words.written(word[read[-1].start : read[-1].end])}-"
    return [frozenset({key}) for key in keys]


def _stands(run: _Run, read: tuple[Token, ...]) -> bool:
    same = zip(run, read, strict=False)
    return len(run) == len(read) and not any(names.isdisjoint(token.names) for names, token in same)


def mentioned(text: str, phrases: Iterable[str], words: Words) -> str:
    """The first of the phrases that stands in the text as whole words; empty when none does."""
    listed = tuple(phrases)
    first = _first(text, listed, words)
    return listed[first.key] if first else ""


def quoted(text: str, phrases: Iterable[str], words: Words) -> str:
    """The same, as it is written there."""
    first = _first(text, tuple(phrases), words)
    return first.words if first else ""


def _first(text: str, phrases: tuple[str, ...], words: Words) -> Found | None:
    groups = grouped(tuple((phrase,) for phrase in phrases), words)
    return min(groups.found(text, denied=True), key=lambda found: found.key, default=None)


@lru_cache(maxsize=1_000)
def grouped(groups: tuple[tuple[str, ...], ...], words: Words) -> Phrases:
    """Groups of phrases that are looked for again and again."""
    return Phrases(groups, words)


def spelled_so(text: str, phrase: str, words: Words) -> bool:
    """True when a phrase stands in a text in this very spelling."""
    inside, sought = (words.as_spelled(" ".join(_WORD.findall(one))) for one in (text, phrase))
    return f" {sought} " in f" {inside} "


def called(name: str, phrases: Iterable[str], words: Words) -> str:
    """The first of the phrases with which a name ends; empty when it ends with none.

    What stands behind a comma or ``of`` does not count: ``lip seal of the hub, 40 mm`` is a seal, ``seal spring`` none.
    """
    read = _named(name, words)
    runs = ((phrase, _run(phrase, words)) for phrase in phrases)
    return next((phrase for phrase, run in runs if run and _stands(run, read[-len(run) :])), "")


def names_it(text: str, name: str, words: Words) -> bool:
    """True when a text names a thing, if only by its last word, or by the end of it: Deckel of Kupplungsdeckel."""
    return any(_is_end(one, token) for token in _named(name, words)[-1:] for one in tokens(text, words))


def _is_end(one: Token, other: Token) -> bool:
    return one.key == other.key or (len(one.key) >= _KNOWN and f"-{one.key}" in other.names)


def _named(name: str, words: Words) -> tuple[Token, ...]:
    """The words of a name without what it is a part of, and without sizes at its end: ``M10``."""
    read = tokens(_head(name, words), words)
    sizes = takewhile(lambda token: any(map(str.isdigit, token.key)), reversed(read))
    return read[: len(read) - sum(1 for _ in sizes)]


def _head(name: str, words: Words) -> str:
    """A name up to its first comma, or to the word that tells of what it is a part."""
    read = re.finditer(r",|(?<=\s)\w+(?=\s)", name)
    ends = (match.start() for match in read if match[0] == "," or words.written(match[0]) in words.of)
    return name[: next(ends, len(name))]
