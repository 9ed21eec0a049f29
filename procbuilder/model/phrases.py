"""Finds phrases in a text: whole words in any form, whatever their number. One way for all lists of words."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from procbuilder.model.words import Words, verb_forms

_WORD = re.compile(r"[^\W_]+")
_BREAK = re.compile(r"[,;:.!?()\n]")
_REACH = 3
"""Words in front of a phrase among which a denial counts; behind it, one less."""
_PART = 5
"""Letters of a word by which it is known at the front or at the end of a compound."""
_REST = 2
"""Letters that the rest of a compound has at least."""


@dataclass(frozen=True, slots=True)
class Token:
    """One word of a text, and where it stands."""

    key: str
    """Folded."""
    ends: frozenset[str]
    """All that it is: its key, what it ends with in a compound, the verbs of which it is a form."""
    fronts: frozenset[str]
    """What it begins with in a compound."""
    start: int
    end: int


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
    whole: bool
    """The thing itself: a gearbox bracket is no gearbox."""


@lru_cache(maxsize=20_000)
def tokens(text: str, words: Words) -> tuple[Token, ...]:
    """The words of a text, but for articles and their like."""
    read: list[Token] = []
    for match in _WORD.finditer(text):
        if match[0].casefold() not in words.passed_over:
            read += (Token(key, *_parts(match[0], key, words), *match.span()) for key in words.folded(match[0]).split())
    return tuple(_joined(text, read, words) if words.verb_last else read)


@lru_cache(maxsize=20_000)
def _parts(word: str, key: str, words: Words) -> tuple[frozenset[str], frozenset[str]]:
    """What a word is, and what it begins with."""
    is_so = {key, *verb_forms(words, word)}
    if not words.compounds:
        return frozenset(is_so), frozenset()
    one = words.singular(word)
    ends = {form[at:] for form in (key, one) for at in range(_REST, len(form) - _PART + 1)}
    fronts = {form[:at] for form in (key, one) for at in range(_PART, len(form) - _REST + 1)
              if form[at:] not in words.suffixes}  # fmt: skip
    return frozenset(is_so | ends), frozenset(fronts)


def _joined(text: str, read: list[Token], words: Words) -> Iterator[Token]:
    """A particle at the end of its clause is a verb with what stands before it: "Zieh den Stecker ab" is abziehen."""
    clause: list[Token] = []
    for token, behind in zip(read, [*read[1:], None], strict=True):
        last = behind is None or behind.key in words.command.joints or _BREAK.search(text[token.end : behind.start])
        if last and token.key in words.verbs.particles:
            verbs = {
                token.key + verb for one in clause for verb in (one.key, *verb_forms(words, text[one.start : one.end]))
            }
            token = Token(token.key, token.ends | verbs, token.fronts, token.start, token.end)
        clause = [] if last else [*clause, token]
        yield token


class Phrases:
    """Groups of phrases by their first word, so that a text is read only once."""

    def __init__(self, groups: Iterable[Iterable[str]], words: Words) -> None:
        self._words = words
        self._begin: dict[str, list[tuple[tuple[frozenset[str], ...], int]]] = {}
        for key, group in enumerate(groups):
            for phrase in group:
                names = _names(phrase, words)
                for name in names[0] if names else ():
                    self._begin.setdefault(name, []).append((names, key))
        for begun in self._begin.values():
            begun.sort(key=lambda one: -len(one[0]))

    def found(self, text: str, *, denied: bool = False) -> Iterator[Found]:
        """Each phrase that stands in the text as whole words; one that is denied ("never use an air line") if asked.

        At the same word the longer one comes first.
        """
        read = tokens(text, self._words)
        for at, token in enumerate(read):
            for names, key in self._begun(token):
                behind = at + len(names)
                if _stand(names, read[at:behind]) and (denied or not self._denied(text, read, at, behind)):
                    here = text[token.start : read[behind - 1].end]
                    yield Found(key, here, at, behind, self._is_whole(text, read, behind, names[-1]))

    def _begun(self, token: Token) -> Iterable[tuple[tuple[frozenset[str], ...], int]]:
        if not self._words.compounds:
            return self._begin.get(token.key, ())
        known = (self._begin[name] for name in token.ends | token.fronts if name in self._begin)
        return dict.fromkeys(one for begun in known for one in begun)

    def _is_whole(self, text: str, read: tuple[Token, ...], behind: int, last: frozenset[str]) -> bool:
        if self._words.compounds:
            return not last.isdisjoint(read[behind - 1].ends)
        if behind >= len(read):
            return True
        between, following = text[read[behind - 1].end : read[behind].start], read[behind].key
        return bool(between.strip(" -\n")) or following in self._words.no_part_of_a_name or following.isdigit()

    def _denied(self, text: str, read: tuple[Token, ...], at: int, behind: int) -> bool:
        if any(token.key in self._words.denies for token in read[max(0, at - _REACH) : at]):
            return True
        after = [one for one in read[behind : behind + _REACH - 1] if one.key in self._words.denies_behind]
        return bool(after) and not _BREAK.search(text[read[behind - 1].end : after[0].start])


@lru_cache(maxsize=20_000)
def _names(phrase: str, words: Words) -> tuple[frozenset[str], ...]:
    """For each word of a phrase what it is called: folded and, where words are written together, in its singular."""
    read = tokens(phrase, words)
    ones = (words.singular(phrase[token.start : token.end]) if words.compounds else token.key for token in read)
    return tuple(frozenset({token.key, one}) for token, one in zip(read, ones, strict=True))


def _stand(names: tuple[frozenset[str], ...], read: tuple[Token, ...]) -> bool:
    return len(names) == len(read) and all(
        not name.isdisjoint(token.ends) or not name.isdisjoint(token.fronts)
        for name, token in zip(names, read, strict=True)
    )


def mentioned(text: str, phrases: Iterable[str], words: Words) -> str:
    """The first of the phrases that stands in the text as whole words; empty when none does."""
    listed = tuple(phrases)
    groups = grouped(tuple((phrase,) for phrase in listed), words)
    first = min((found.key for found in groups.found(text, denied=True)), default=None)
    return "" if first is None else listed[first]


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
    read = tokens(_head(name, words), words)
    for phrase in phrases:
        names = _names(phrase, words)
        last = read[-len(names) :] if names else ()
        if _stand(names, last) and names and not names[-1].isdisjoint(last[-1].ends):
            return phrase
    return ""


def _head(name: str, words: Words) -> str:
    """A name up to its first comma, or to the word that tells of what it is a part."""
    read = list(re.finditer(r",|(?<=\s)\w+(?=\s)", name))
    return next((name[: match.start()] for match in read if match[0] == "," or match[0].casefold() in words.of), name)
