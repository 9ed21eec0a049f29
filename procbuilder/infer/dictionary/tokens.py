"""A sentence cut into words and signs, each with its place in the sentence."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

_TOKEN = re.compile(
    r"[^\W_]+(?:(?:[-/'’]|(?<=\d)\.(?=\d))[^\W_]+)*(?:(?<=[^\W\d_]{2}in)['’](?!\w))?|['’]s\b|[,;:.!?–—()\"-]"
)
_STEMS = {"ca": "can", "wo": "will", "sha": "shall"}
SIGNS = frozenset(',;:.!?–—()"-')


@dataclass(frozen=True, slots=True)
class Token:
    """One word or sign."""

    text: str
    low: str
    """In lower case."""
    start: int
    end: int


Joined = Mapping[tuple[str, ...], str]
"""Words that count as one word, or as none."""


@lru_cache(maxsize=1024)
def plain(sentence: str) -> tuple[Token, ...]:
    """Words and signs in order, no words joined."""
    return tuple(cut(sentence, {}))


def cut(sentence: str, joined: Joined) -> list[Token]:
    """Words and signs in order.

    ``don't`` is ``do`` and ``n't``, ``pin's`` is ``pin`` and ``'s``, ``pullin'`` is ``pulling``.
    """
    tokens = [part for match in _TOKEN.finditer(sentence) for part in _parts(match[0], match.start())]
    return list(_join(tokens, joined)) if joined else tokens


def _parts(text: str, start: int) -> list[Token]:
    plain = text.replace("’", "'")
    low = plain.casefold()
    if low.endswith("n't"):
        stem = low[:-3]
        return _pair(text, _STEMS.get(stem, stem), "n't", start, len(text) - 3)
    for end in ("'ll", "'re", "'ve", "'s", "'m", "'d"):
        if low.endswith(end) and len(low) > len(end) and low != "let's":
            return _pair(text, low[: -len(end)], end, start, len(text) - len(end))
    if low.endswith("in'"):
        return [Token(f"{text[:-1]}g", f"{low[:-1]}g", start, start + len(text))]
    return [Token(text, low, start, start + len(text))]


def _pair(text: str, first: str, second: str, start: int, at: int) -> list[Token]:
    end = start + len(text)
    return [Token(text[:at], first, start, start + at), Token(text[at:], second, start + at, end)]


def _join(tokens: list[Token], joined: Joined) -> list[Token]:
    longest = max(map(len, joined))
    result: list[Token] = []
    at = 0
    while at < len(tokens):
        for length in range(min(longest, len(tokens) - at), 0, -1):
            words = tuple(token.low for token in tokens[at : at + length])
            if words in joined:
                result += _joined(tokens[at : at + length], joined[words])
                at += length
                break
        else:
            result.append(tokens[at])
            at += 1
    return result


def _joined(tokens: list[Token], into: str) -> list[Token]:
    start, end = tokens[0].start, tokens[-1].end
    return [Token(word, word, start, end) for word in into.split()]
