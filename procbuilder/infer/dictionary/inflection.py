"""The forms of English verbs: ``takes``, ``taking``, ``took`` are all forms of ``take``."""

from collections.abc import Iterable, Mapping
from enum import StrEnum

_VOWELS = "aeiou"
_NOT_DOUBLED = (
    "fasten",
    "open",
    "loosen",
    "tighten",
    "listen",
    "slacken",
    "couple",
    "hammer",
    "lever",
    "level",
    "visit",
)


class Form(StrEnum):
    """Which form of a verb a word is."""

    BASE = "base"
    S = "s"
    ING = "ing"
    PAST = "past"


def forms(verbs: Iterable[str], past: Mapping[str, str]) -> dict[str, tuple[tuple[str, Form], ...]]:
    """Every form with the verbs it belongs to; ``past`` holds the past forms that are not made with -ed."""
    table: dict[str, dict[tuple[str, Form], None]] = {}
    for verb in verbs:
        for word, form in _forms_of(verb, past.get(verb, "")):
            table.setdefault(word, {})[verb, form] = None
    return {word: tuple(entries) for word, entries in table.items()}


def _forms_of(verb: str, past: str) -> list[tuple[str, Form]]:
    stem = verb + verb[-1] if _doubles(verb) else verb.removesuffix("e")
    ing = verb + "ing" if verb.endswith("ee") else stem + "ing"
    regular = verb[:-1] + "ied" if _y(verb) else stem + "ed"
    pasts = past.split() or [regular]
    return [(verb, Form.BASE), (_s(verb), Form.S), (ing, Form.ING), *((word, Form.PAST) for word in pasts)]


def _s(verb: str) -> str:
    if _y(verb):
        return verb[:-1] + "ies"
    return verb + ("es" if verb.endswith(("s", "x", "z", "ch", "sh", "go", "do")) else "s")


def _y(verb: str) -> bool:
    return verb.endswith("y") and verb[-2:-1] not in _VOWELS


def _doubles(verb: str) -> bool:
    """``nip`` gives ``nipping``: a short last syllable of consonant, vowel, consonant."""
    if len(verb) < 3 or verb.endswith(_NOT_DOUBLED) or verb[-1] in _VOWELS + "wxyh":
        return False
    syllables = sum(sign in _VOWELS and before not in _VOWELS for before, sign in zip("-" + verb, verb, strict=False))
    prefixed = verb.startswith(("un", "re"))
    return verb[-2] in _VOWELS and verb[-3] not in _VOWELS and syllables <= (2 if prefixed else 1)
