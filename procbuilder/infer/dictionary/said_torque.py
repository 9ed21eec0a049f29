"""Torques as they are spoken: "forty-five newton metres", "twenty then thirty, then ninety degrees"."""

from collections.abc import Sequence
from decimal import Decimal

from procbuilder.infer.dictionary.numbers import number_at
from procbuilder.infer.dictionary.tokens import SIGNS, Token, plain
from procbuilder.infer.dictionary.wordbook import Wordbook


def said_torque(words: str, book: Wordbook) -> str:
    """The stages with their unit, as written in a Torque field; empty when a sentence names none with a unit.

    A number takes the unit of the next stage; without any unit there is no value.
    """
    tokens = plain(words)
    stages: list[tuple[Decimal, str]] = []
    at, last_end = 0, 0
    while at < len(tokens):
        read = number_at(tokens, at, book)
        if read is None:
            at += 1
            continue
        number, end = read
        unit, behind = _unit(tokens, end, book)
        if stages and not _is_next_stage(tokens[last_end:at], book):
            stages = [stage for stage in stages if stage[1]]
        if stages and stages[-1][1] and not _is_next_stage(tokens[last_end:at], book):
            break
        stages.append((number, unit))
        at = last_end = behind
    return _written(stages)


def has_bare_number(words: str, book: Wordbook) -> bool:
    """True for "torque it to twenty-five": a number, but no unit."""
    tokens = plain(words)
    for at, token in enumerate(tokens):
        if token.low == "to" and (read := number_at(tokens, at + 1, book)):
            follows = tokens[read[1]].low if read[1] < len(tokens) else "."
            if follows in SIGNS or follows in ("and", "then"):
                return not _unit(tokens, read[1], book)[0]
    return False


def _unit(tokens: Sequence[Token], at: int, book: Wordbook) -> tuple[str, int]:
    units: dict[str, str] = book.sizes["torque_units"]
    for length in (3, 2, 1):
        text = " ".join(token.low for token in tokens[at : at + length])
        if text.replace("-", " ") in units:
            return units[text.replace("-", " ")], at + length
    return "", at


def _is_next_stage(between: Sequence[Token], book: Wordbook) -> bool:
    """True when no more than "then", "plus" or a comma stands between two numbers."""
    words = {token.low for token in between} - SIGNS
    return bool(between) and words <= set(book.sizes["stages"])


def _written(stages: list[tuple[Decimal, str]]) -> str:
    units = [unit for _, unit in stages]
    if not any(unit not in ("", "°") for unit in units):
        return ""
    while stages and not stages[-1][1]:
        stages.pop()
    parts: list[str] = []
    following = ""
    for number, unit in reversed(stages):
        following = unit or following
        parts.insert(0, f"{number:f}°" if following == "°" else f"{number:f} {following}")
    return " then ".join(parts)
