"""Characters that no font of the sheet has: found before printing, and replaced by a sign that is seen."""

import re
from collections.abc import Callable, Iterable, Iterator
from typing import Any

from procbuilder.model.edition import Edition
from procbuilder.publish.data import plain

SIGN = "□"
"""Stands for each character that cannot be printed."""

HIDDEN_TURNS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Signs that turn the direction of writing without being seen: ``51`` could read ``15``."""

_REFUSED = re.compile(r'the (?:text|PDF contains the codepoint) `"(.*?)"`', re.DOTALL)
_ESCAPE = re.compile(r"\\u\{([0-9a-f]+)\}")


def texts(value: Any) -> Iterator[str]:
    """Every text within plain data, keys aside."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for part in value.values():
            yield from texts(part)
    elif isinstance(value, list | tuple):
        for part in value:
            yield from texts(part)


def replaced(value: Any, characters: frozenset[str]) -> Any:
    """The same plain data with each of the characters shown as the sign."""
    if isinstance(value, str):
        return "".join(SIGN if letter in characters else letter for letter in value)
    if isinstance(value, dict):
        return {key: replaced(part, characters) for key, part in value.items()}
    if isinstance(value, list | tuple):
        return [replaced(part, characters) for part in value]
    return value


def not_printable(value: Any, refusal: Callable[[list[str]], str]) -> frozenset[str]:
    """Characters of plain data that must be replaced.

    Args:
        value: plain data.
        refusal: sets texts and returns what the setter says against them; empty when it takes them all.
    """
    odd = sorted({text for text in texts(value) if not (text.isascii() and text.isprintable())})
    found = frozenset(letter for text in odd for letter in text if _never(letter))
    while odd and (more := refused(refusal(replaced(odd, found))) - found):
        found |= more
    return found


def refused(message: str) -> frozenset[str]:
    """The characters that the setter complains of in its message, if any."""
    return frozenset(letter for letter in _letters(message) if letter != SIGN and not _plain(letter))


def first_seen(edition: Edition, characters: Iterable[str]) -> tuple[tuple[int, tuple[str, ...]], ...]:
    """Numbers of steps with the characters that are seen in them first; number 0 has those that are in no step."""
    left, found = set(characters), []
    for step in edition.steps:
        here = left & set("".join(texts(plain(step))))
        left -= here
        found.append((step.number, tuple(sorted(here))))
    return tuple(each for each in ((0, tuple(sorted(left))), *found) if each[1])


def _never(letter: str) -> bool:
    return letter in HIDDEN_TURNS or "\ud800" <= letter <= "\udfff" or (not _plain(letter) and letter < " ")


def _plain(letter: str) -> bool:
    return letter in "\n\t" or " " <= letter < "\x7f"


def _letters(message: str) -> Iterator[str]:
    for refused in _REFUSED.findall(message):
        yield from _ESCAPE.sub(lambda escape: chr(int(escape[1], 16)), refused)
