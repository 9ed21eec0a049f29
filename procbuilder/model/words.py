"""Words as a technician writes them: the same thing in singular and plural, and words found in a sentence."""

import re
from collections.abc import Iterable
from functools import lru_cache

from procbuilder.model.origin import Place
from procbuilder.model.quantity import Item

_WORD = re.compile(r"[^\W_]+")
_PIECE = re.compile(r"\w+|[,;:.–—]")
_BEGINS_BEHIND = frozenset({"", "and", "then", "to", "now", ",", ";", ":", ".", "–", "—"})
_BEHIND_NAME = re.compile(r",|\s(?:of|from|for|with)\s")
_NOWHERE = Place("", 0)


_ENDING_IN_S = frozenset({"lens", "canvas", "always", "bias", "series", "perhaps"})


_ODD_PLURALS = {"feet": "foot", "teeth": "tooth", "halves": "half", "knives": "knife", "shelves": "shelf"}


def singular(word: str) -> str:
    """A word in lower case without its English plural ending: ``nuts`` and ``nut`` are then the same."""
    word = word.casefold()
    if (one := _ODD_PLURALS.get(word)) is not None:
        return one
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith(("ches", "shes", "xes", "zes", "sses")):
        return word[:-2]
    if word in _ENDING_IN_S:
        return word
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return word[:-1]
    return word


@lru_cache(maxsize=10_000)
def thing(name: str) -> str:
    """The name by which two mentions are the same thing: case, spaces, articles and plurals ignored."""
    return " ".join(singular(word) for word in Item(name, _NOWHERE).key.split())


def is_plural(name: str) -> bool:
    """True when some word of the name has a plural ending: ``wheel nuts``."""
    return thing(name) != Item(name, _NOWHERE).key


def mentioned(text: str, phrases: Iterable[str]) -> str:
    """The first of the phrases that stands in the text as whole words; empty when none does."""
    inside = f" {folded(text)} "
    return next((phrase for phrase in phrases if f" {folded(phrase)} " in inside), "")


def called(name: str, phrases: Iterable[str]) -> str:
    """The first of the phrases with which a name ends; empty when it ends with none.

    What stands behind a comma or ``of`` does not count: ``lip seal of the hub, 40 mm`` is a seal, ``seal spring`` none.
    """
    head = f" {folded(_BEHIND_NAME.split(name)[0])}"
    return next((phrase for phrase in phrases if head.endswith(f" {folded(phrase)}")), "")


def behind_verb(sentence: str, verbs: Iterable[str]) -> str | None:
    """What follows the first of the verbs that stands where a command can begin; None when none does.

    A command begins at the start, behind "and", "then", "to" or a comma, or behind "gradually" and
    its like. So "Set the torque wrench" and "Fit the check valve" hold no "torque" and no "check".
    """
    for verb in verbs:
        loose = "[- ]".join(re.escape(part) for part in re.split("[- ]", verb))
        for match in re.finditer(rf"(?<!\w){loose}(?!\w)", sentence, re.IGNORECASE):
            before = ["", *_PIECE.findall(sentence[: match.start()].casefold())][-1]
            if before in _BEGINS_BEHIND or before.endswith("ly"):
                return sentence[match.end() :].strip(" .")
    return None


@lru_cache(maxsize=10_000)
def folded(text: str) -> str:
    """The words of a text in lower case and singular, with one space between them."""
    return " ".join(singular(word) for word in _WORD.findall(text))
