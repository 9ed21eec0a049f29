"""Which safety signs belong to a danger and to what is worn, by the words of ``safety_signs.toml``."""

import re
from functools import cache

from procbuilder.infer.lexicon import facts, word_list
from procbuilder.model.sign import Sign
from procbuilder.model.words import folded

MOST = 3
"""More signs at one danger would be read by nobody."""


_NUMBER = re.compile(r"\b[WMPEF]0\d\d\b")


@cache
def signs() -> dict[Sign, tuple[str, ...]]:
    """Every sign with its words, in the order in which they are looked for."""
    words = word_list("safety_signs")
    return {
        Sign(number, words[number]["meaning"]): tuple(words[number]["words"])
        for numbers in facts("safety_signs").values()
        for number in numbers
    }


def danger_signs(hazard: str, consequence: str, avoid: str) -> tuple[Sign, ...]:
    """The signs of a danger: those typed by number, one for what may hurt, then those for how to avoid it."""
    typed = _typed(f"{hazard} {consequence} {avoid}")
    hurts = () if any(sign.number[0] == "W" for sign in typed) else _found(hazard, "W") or _found(consequence, "W")
    return _once(typed + hurts[:1] + _found(avoid, "PMEF"))[:MOST]


def worn_signs(text: str) -> tuple[Sign, ...]:
    """The signs of a piece of protective equipment."""
    return _once(_typed(text) + _found(text, "PM"))[:MOST]


def _typed(text: str) -> tuple[Sign, ...]:
    known = {sign.number: sign for sign in signs()}
    return tuple(known[number] for number in _NUMBER.findall(text) if number in known)


def _found(text: str, kinds: str) -> tuple[Sign, ...]:
    """Signs of some kinds whose words stand in the text; a word that one has taken counts for no other."""
    left, found = f" {folded(text)} ", []
    for sign, phrases in signs().items():
        if sign.number[0] not in kinds:
            continue
        for phrase in phrases:
            if f" {folded(phrase)} " in left:
                left = left.replace(f" {folded(phrase)} ", " | ")
                found.append(sign)
    return tuple(found)


def _once(found: tuple[Sign, ...]) -> tuple[Sign, ...]:
    return tuple(dict.fromkeys(found))
