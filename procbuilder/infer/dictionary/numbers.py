"""Numbers as they are spoken: ``twenty-four``, ``a hundred and ten``, ``one and a half``, ``13``."""

import re
from collections.abc import Sequence
from decimal import Decimal
from functools import lru_cache

from procbuilder.infer.dictionary.tokens import Token
from procbuilder.infer.dictionary.wordbook import Wordbook

_DIGITS = re.compile(r"\d{1,6}(?:\.\d{1,4})?\Z")
_GLUED = re.compile(r"(\d{1,5}(?:\.\d{1,4})?)(mm|mil|nm)\Z")


def number_at(tokens: Sequence[Token], at: int, book: Wordbook) -> tuple[Decimal, int] | None:
    """The number that begins at a token, and the token behind it; None when none does."""
    whole = _whole(tokens, at, book)
    if whole is None:
        return None
    value, at = whole
    if _low(tokens, at) == "point" and (part := _whole(tokens, at + 1, book)) and part[0] < 100:
        return value + Decimal(f"0.{part[0]:f}"), part[1]
    if [_low(tokens, at + n) for n in range(3)] == ["and", "a", "half"]:
        return value + Decimal("0.5"), at + 3
    return value, at


def glued(text: str) -> tuple[Decimal, str] | None:
    """Number and unit of ``13mm``."""
    match = _GLUED.match(text)
    return (Decimal(match[1]), match[2]) if match else None


def _low(tokens: Sequence[Token], at: int) -> str:
    return tokens[at].low if 0 <= at < len(tokens) else ""


def _whole(tokens: Sequence[Token], at: int, book: Wordbook) -> tuple[Decimal, int] | None:
    low = _low(tokens, at)
    if _DIGITS.match(low):
        return Decimal(low), at + 1
    if low == "a" and _low(tokens, at + 1) in ("hundred", "thousand"):
        low, at = _low(tokens, at + 1), at + 1
        value = Decimal(100 if low == "hundred" else 1000)
        return _behind_hundred(tokens, at + 1, value, book)
    value_or_none = word_value(low, book)
    if value_or_none is None:
        return None
    value, at = value_or_none, at + 1
    following = word_value(_low(tokens, at), book)
    if value >= 20 and value % 10 == 0 and value < 100 and following is not None and 0 < following < 10:
        value, at = value + following, at + 1
    if _low(tokens, at) == "hundred":
        return _behind_hundred(tokens, at + 1, value * 100, book)
    return value, at


def _behind_hundred(tokens: Sequence[Token], at: int, value: Decimal, book: Wordbook) -> tuple[Decimal, int]:
    follows = at + 1 if _low(tokens, at) == "and" else at
    rest = _whole(tokens, follows, book)
    if rest is not None and rest[0] < 100:
        return value + rest[0], rest[1]
    return value, at


@lru_cache(maxsize=8192)
def word_value(low: str, book: Wordbook) -> Decimal | None:
    """The value of one word: ``twenty-four`` is 24, ``one-ten`` is 110; None when it is no number word."""
    if low in ("a", "an", "both", "couple", "pair"):
        return None
    if low in book.numbers:
        return book.numbers[low]
    first, _, second = low.partition("-")
    tens, ones = book.numbers.get(first), book.numbers.get(second)
    if tens is None or ones is None:
        return None
    if tens >= 20 and ones < 10:
        return tens + ones
    return tens * 100 + ones if tens < 10 <= ones else None
