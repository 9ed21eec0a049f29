"""Which safety signs belong to a danger and to what is worn, by the words of ``safety_signs.toml``."""

import re

from procbuilder.model.lexicon import Lexicon
from procbuilder.model.phrases import grouped
from procbuilder.model.sign import Sign

MOST = 3
"""More signs at one danger would be read by nobody."""


_NUMBER = re.compile(r"\b[WMPEF]0\d\d\b")


def danger_signs(hazard: str, consequence: str, avoid: str, lexicon: Lexicon) -> tuple[Sign, ...]:
    """The signs of a danger: those typed by number, one for what may hurt, then those for how to avoid it.

    What may hurt has the sign of the activity for which it is proposed, else one by its words.
    """
    typed = _typed(f"{hazard} {consequence} {avoid}", lexicon)
    known = any(sign.number[0] == "W" for sign in typed)
    found = (find for text in (hazard, consequence) if (find := _found(text, "W", lexicon)))
    hurts = () if known else _of_activity(hazard, lexicon) or next(found, ())
    return _once(typed + hurts[:1] + _found(avoid, "PMEF", lexicon))[:MOST]


def worn_signs(text: str, lexicon: Lexicon) -> tuple[Sign, ...]:
    """The signs of a piece of protective equipment."""
    return _once(_typed(text, lexicon) + _found(text, "PM", lexicon))[:MOST]


def _of_activity(hazard: str, lexicon: Lexicon) -> tuple[Sign, ...]:
    """The signs of what may hurt, of the activity that proposes this very hazard."""
    thing = lexicon.words.thing
    numbers = (one.signs for one in lexicon.activities if thing(one.hazard) == thing(hazard))
    return tuple(_sign(number, lexicon) for number in next(numbers, ()) if number[0] == "W")


def _typed(text: str, lexicon: Lexicon) -> tuple[Sign, ...]:
    return tuple(_sign(number, lexicon) for number in _NUMBER.findall(text) if number in lexicon.signs)


def _found(text: str, kinds: str, lexicon: Lexicon) -> tuple[Sign, ...]:
    """Signs of some kinds whose words stand in the text; a word that one has taken counts for no other."""
    phrases = tuple(
        (phrase, number) for number, sign in lexicon.signs.items() if number[0] in kinds for phrase in sign.words
    )
    there = grouped(tuple((phrase,) for phrase, _ in phrases), lexicon.words).found(text, denied=True)
    taken: set[int] = set()
    found = []
    for one in sorted(there, key=lambda one: one.key):
        stretch = range(one.first, one.behind)
        if taken.isdisjoint(stretch):
            taken.update(stretch)
            found.append(_sign(phrases[one.key][1], lexicon))
    return tuple(found)


def _sign(number: str, lexicon: Lexicon) -> Sign:
    return Sign(number, lexicon.signs[number].meaning)


def _once(found: tuple[Sign, ...]) -> tuple[Sign, ...]:
    return tuple(dict.fromkeys(found))
