"""The words of a text, each by all names under which it is found, and the clauses in which they stand."""

import re
from collections.abc import Iterator
from functools import lru_cache
from itertools import zip_longest
from typing import NamedTuple

from procbuilder.model.words import Words, verb_forms

_WORD = re.compile(r"[^\W_]+")
BREAK = re.compile(r"[,;:.!?()\n]")
FULL_STOP = re.compile(r"[;:.!?\n]")
_COMMA = re.compile(r"[,;:.!?\n]")
_SHORTEST = 2
"""Letters of the shortest part by which a compound is found."""


class Token(NamedTuple):
    """One word of a text, and where it stands."""

    key: str
    """Folded."""
    names: frozenset[str]
    """All by which it is found: its key, the verbs of which it is a form, what it ends and begins with."""
    start: int
    end: int
    clause: int = 0
    """Number of its clause in the text."""


@lru_cache(maxsize=20_000)
def tokens(text: str, words: Words) -> tuple[Token, ...]:
    """The words of a text, but for articles and their like."""
    read: list[Token] = []
    for match in _WORD.finditer(text):
        for key, names in _named(match[0], words):
            read.append(Token(key, names, match.start(), match.end()))
    joined = list(_joined(text, read, words) if words.verb_last else read)
    return tuple(_in_clauses(text, joined, words))


@lru_cache(maxsize=20_000)
def _named(word: str, words: Words) -> tuple[tuple[str, frozenset[str]], ...]:
    """The keys of a word with all its names; none for an article, two for what is written apart as well."""
    if words.written(word) in words.passed_over:
        return ()
    return tuple((key, _names(word, key, words)) for key in words.folded(word).split())


def _names(word: str, key: str, words: Words) -> frozenset[str]:
    names = {key, *verb_forms(words, word)}
    if words.compounds:
        written = words.written(word)
        names |= {f"-{key[at:]}" for at in range(len(key) - _SHORTEST + 1)}
        names |= {f"{written[:at]}-" for at in range(_SHORTEST, len(written) + 1)}
    return frozenset(names)


def _joined(text: str, read: list[Token], words: Words) -> Iterator[Token]:
    """A particle at the end of its clause is a verb with what stands before it: "Zieh den Stecker ab" is abziehen."""
    clause: list[Token] = []
    for token, behind in zip_longest(read, read[1:]):
        last = behind is None or behind.key in words.command.joints or BREAK.search(text[token.end : behind.start])
        particle = words.written(text[token.start : token.end])
        if last and particle in words.verbs.particles:
            verbs = (verb for one in clause for verb in (one.key, *verb_forms(words, text[one.start : one.end])))
            token = token._replace(names=token.names | {particle + verb for verb in verbs})
        clause = [] if last else [*clause, token]
        yield token


def _in_clauses(text: str, read: list[Token], words: Words) -> Iterator[Token]:
    number = 0
    for at, token in enumerate(read):
        number += at > 0 and _begins_clause(text, read, at, words)
        yield token._replace(clause=number) if number else token


def _begins_clause(text: str, read: list[Token], at: int, words: Words) -> bool:
    """True behind a full stop; where verbs stand last, behind a comma and at a joint too that has a verb beside it.

    "Kerze ausbauen und Motor starten" are two, "Motor und Getriebe ausbauen" is one.
    """
    between = text[read[at - 1].end : read[at].start]
    if between != " " and (_COMMA if words.verb_last else FULL_STOP).search(between):
        return True
    if not words.verb_last:
        return False
    joints = words.command.joints
    beside = (at - 1, at + 1) if read[at].key in joints else (at - 2, at) if read[at - 1].key in joints else ()
    return any(0 <= one < len(read) and _is_verb(text, read[one], words) for one in beside)


def _is_verb(text: str, token: Token, words: Words) -> bool:
    noun = words.capital_nouns and text[token.start].isupper()
    return not noun and not token.names.isdisjoint(_known_verbs(words))


@lru_cache(maxsize=20)
def _known_verbs(words: Words) -> frozenset[str]:
    return frozenset(words.folded(verb) for kind in words.verbs.kinds for verb in kind)
