"""Sizes as they are spoken, with what was taken back: "a thirteen, sorry, fifteen mil" is 15 mm."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from procbuilder.infer.dictionary.numbers import glued, number_at
from procbuilder.infer.dictionary.tokens import SIGNS, Token, plain
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.model.heard import Size, SizeKind

_DRIVES = (Fraction(1, 4), Fraction(3, 8), Fraction(1, 2), Fraction(3, 4), Fraction(1))


@dataclass(frozen=True, slots=True)
class _Found:
    """A size or a bare number in a sentence, from one token up to another."""

    start: int
    end: int
    number: Decimal | Fraction
    size: Size | None
    """None for a number that is no size by itself."""


@lru_cache(maxsize=1024)
def sizes(words: str, book: Wordbook) -> tuple[Size, ...]:
    """The sizes of a sentence in order. Of a correction the last one is kept, with those before it beside it."""
    tokens = plain(words)
    turned = _is_turned(tokens, book)
    found = list(_all(tokens, book))
    lengths = {one.start for one in found if _is_length(tokens, one, book, turned=turned)}
    found = [replace(one, size=None) if one.start in lengths else one for one in found]
    result: list[_Found] = []
    for one in found:
        before = result[-1] if result else None
        if before is not None and _is_correction(tokens, before.end, one.start, book):
            result[-1] = _corrected(before, one)
        else:
            result.append(one)
    return tuple(dict.fromkeys(one.size for one in result if one.size is not None))


def first_size(words: str, book: Wordbook) -> Size | None:
    """The first size of a sentence that is no drive; None when it names none."""
    return next((size for size in sizes(words, book) if size.kind is not SizeKind.DRIVE), None)


def _is_turned(tokens: Sequence[Token], book: Wordbook) -> bool:
    """True when the sentence names something that is turned, or what turns it."""
    return any(book.is_in(token.low, ("fastener", "tool")) for token in tokens)


def _is_length(tokens: Sequence[Token], one: _Found, book: Wordbook, *, turned: bool) -> bool:
    """ "Forty mil of the sheath", "ten mil each", "two mil out": a measure of something, and no hexagon."""
    if one.size is None or one.size.kind is not SizeKind.HEXAGON:
        return False
    whole = one.size.text.partition(" ")[0]
    odd = one.size.text.endswith(" mm") and whole not in book.sizes["hexagons"]
    behind = tokens[one.end : one.end + 1]
    low = behind[0].low if behind else ""
    if turned:
        return low == "of"
    return odd or low in book.sizes["measured"] or _low(tokens, one.start - 1) in book.sizes["measures"]


def _all(tokens: Sequence[Token], book: Wordbook) -> Iterator[_Found]:
    at = 0
    while at < len(tokens):
        found = _bit(tokens, at, book) or _inch(tokens, at, book) or _metric(tokens, at, book)
        if found is not None:
            yield found
        at = found.end if found is not None else at + 1


def _bit(tokens: Sequence[Token], at: int, book: Wordbook) -> _Found | None:
    """``E12``, ``T thirty``, ``torx thirty``."""
    letters, low = book.sizes["bits"], tokens[at].low
    plain = low.replace("-", "")
    for letter, sign in letters.items():
        rest = plain.removeprefix(letter)
        if rest != plain and rest.isascii() and rest.isdigit() and len(letter) == 1 and sign != "M":
            return _bit_of(sign, Decimal(rest), at, at + 1, book)
        if low == letter and (number := number_at(tokens, at + 1, book)) and sign != "M":
            return _bit_of(sign, number[0], at, number[1], book)
    return None


def _bit_of(sign: str, number: Decimal, start: int, end: int, book: Wordbook) -> _Found | None:
    if number not in book.sizes["bit_sizes"]:
        return None
    return _Found(start, end, number, Size(f"{sign}{number:f}", SizeKind.BIT))


def _inch(tokens: Sequence[Token], at: int, book: Wordbook) -> _Found | None:
    """``half-inch``, ``three-eighths``, ``7/16``, with or without the word inch behind it."""
    fraction, end = _fraction(tokens, at, book)
    if fraction is None:
        return None
    spelled = "inch" in tokens[at].low.split("-")
    if _low(tokens, end) in book.sizes["inch"]:
        spelled, end = True, end + 1
    follows = _low(tokens, end)
    text = f"{fraction.numerator}/{fraction.denominator} in"
    if follows in book.sizes["drive"]:
        return _Found(at, end + 1, fraction, Size(f"{text} drive", SizeKind.DRIVE))
    if not spelled and fraction.denominator < 8:
        return None
    kind = SizeKind.INCH if fraction in _DRIVES and follows not in book.sizes["hexagon"] else SizeKind.HEXAGON
    return _Found(at, end, fraction, Size(text, kind))


def _fraction(tokens: Sequence[Token], at: int, book: Wordbook) -> tuple[Fraction | None, int]:
    parts: dict[str, int] = book.sizes["parts"]
    low = tokens[at].low
    top, _, bottom = low.partition("/")
    if top.isdigit() and bottom.isdigit() and 0 < int(bottom) <= 64 and top.isascii() and bottom.isascii():
        return Fraction(int(top), int(bottom)), at + 1
    words = [word for word in low.split("-") if word not in book.sizes["inch"]]
    if len(words) == 1 and words[0] in parts:
        return Fraction(1, parts[words[0]]), at + 1
    if len(words) == 2 and words[1] in parts and words[0] in book.numbers:
        return Fraction(int(book.numbers[words[0]]), parts[words[1]]), at + 1
    if low in book.numbers and _low(tokens, at + 1) in parts:
        return Fraction(int(book.numbers[low]), parts[_low(tokens, at + 1)]), at + 2
    return None, at


def _metric(tokens: Sequence[Token], at: int, book: Wordbook) -> _Found | None:
    """``thirteen mil``, ``13mm``, or a bare number beside a spanner word; any other number without a size."""
    joined = glued(tokens[at].low)
    if joined is not None and joined[1] in book.sizes["millimetre"]:
        return _millimetres(at, at + 1, joined[0])
    words = tokens[at].low.rsplit("-", 1)
    if len(words) == 2 and words[1] in book.sizes["millimetre"] and words[0] in book.numbers:
        return _millimetres(at, at + 1, book.numbers[words[0]])
    read = number_at(tokens, at, book)
    if read is None:
        return None
    number, end = read
    follows = _low(tokens, end)
    if follows in book.sizes["millimetre"]:
        return _millimetres(at, end + 1, number)
    is_hexagon = f"{number:f}" in book.sizes["hexagons"]
    before = [_low(tokens, at - 1), _low(tokens, at - 2)]
    bare = before[0] in ("a", "an") and (not follows or follows in SIGNS or follows in ("again", "on", "as", "for"))
    named = follows in ("spanner", "wrench", "socket") or (before[0] in book.sizes["size_of"] and follows in SIGNS)
    if is_hexagon and (bare or named):
        return _millimetres(at, end, number)
    return _Found(at, end, number, None)


def _millimetres(start: int, end: int, number: Decimal) -> _Found:
    return _Found(start, end, number, Size(f"{number:f} mm", SizeKind.HEXAGON))


def _is_correction(tokens: Sequence[Token], start: int, end: int, book: Wordbook) -> bool:
    """True when only words of taking back stand between two numbers."""
    words = [token.low for token in tokens[start:end] if token.low not in SIGNS]
    between = set(book.sizes["between"])
    text = f" {' '.join(words)} "
    takes_back = any(f" {phrase} " in text for phrase in book.sizes["corrections"])
    known = between | {word for phrase in book.sizes["corrections"] for word in phrase.split()}
    return takes_back and len(words) <= 6 and set(words) <= known


def _corrected(first: _Found, second: _Found) -> _Found:
    """The second size with the first beside it, in the unit of the second where the first had none."""
    if second.size is None and first.size is not None and isinstance(second.number, Decimal):
        unit = first.size.text.partition(" ")[2]
        second = replace(second, size=replace(first.size, text=f"{second.number:f} {unit}".strip(), corrected=()))
    if second.size is None:
        return second
    earlier = (*first.size.corrected, first.size.text) if first.size else _in_unit(first.number, second.size)
    return replace(second, size=replace(second.size, corrected=earlier))


def _in_unit(number: Decimal | Fraction, size: Size) -> tuple[str, ...]:
    unit = size.text.partition(" ")[2]
    return (f"{number} {unit}".strip(),)


def _low(tokens: Sequence[Token], at: int) -> str:
    return tokens[at].low if 0 <= at < len(tokens) else ""
