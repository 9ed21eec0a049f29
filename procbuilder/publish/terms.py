"""Terms that records hold as data – names of fields, signal words, balances – and how a language says them."""

import re
from collections.abc import Iterable

from procbuilder.model.edition import Named
from procbuilder.model.fields import BY_NAME, FIELDS
from procbuilder.model.ledger import Balance, OnWay, Opening
from procbuilder.model.marks import MarkShape, PictureState
from procbuilder.model.problem import Severity
from procbuilder.model.signal import Signal
from procbuilder.model.torque import Stage
from procbuilder.model.worked import TorqueRow
from procbuilder.publish.language import Language

LISTS = ("Conditions", "Documents", "Notes", "Dangers", "Dangers made lower or left out")
"""Titles of the lists before the start, as far as they are no names of fields."""

TERMS: tuple[str, ...] = tuple(dict.fromkeys((
    *(str(signal) for signal in Signal),
    *(str(balance) for balance in Balance),
    *(str(opening) for opening in Opening),
    *(str(state) for state in PictureState),
    *(str(severity) for severity in Severity),
    *(str(shape) for shape in MarkShape),
    *(kind.name for kind in FIELDS),
    *LISTS,
)))  # fmt: skip

PART_WORDS: tuple[str, ...] = tuple(dict.fromkeys(f"{word}: {{text}}" for kind in FIELDS for word in kind.words))
"""How the parts of a field that begin with a word are shown."""

ORIGINS = {"said ": "said {place}", "seen ": "seen {place}", "from ": "from {document}"}
FROM_MEMORY = "from memory"
IF, AND, IF_NOT, NOT = WAYS = ("if: {condition}", ", and: ", "if not: {condition}", ", not: ")
"""How an entry of the ledger tells on which way it ends so."""

_ORIGIN = re.compile(r"(said |seen |from )(.+)", re.DOTALL)


def terms(language: Language) -> dict[str, str]:
    """Every term with what the language calls it."""
    return {term: language.text(term) for term in TERMS}


def origin(words: str, language: Language) -> str:
    """``said strip 3:12``, ``from D1 p. 4``: names and times stay as typed."""
    told = None if words == FROM_MEMORY else _ORIGIN.fullmatch(words)
    if told is None:
        return language.text(words) if words == FROM_MEMORY else words
    return language.text(ORIGINS[told[1]], place=told[2], document=told[2])


def extra(entry: Named, language: Language) -> tuple[str, ...]:
    """The further parts of a field: of ``by: 2 x M8 bolt`` only the first word is ours."""
    kind = BY_NAME.get(entry.name.casefold())
    return tuple(_part(part, kind.words if kind else (), language) for part in entry.extra)


def _part(part: str, words: Iterable[str], language: Language) -> str:
    word, colon, text = part.partition(": ")
    return language.text(f"{word}: {{text}}", text=text) if colon and word in words else part


def way(told: OnWay | None, language: Language) -> str:
    """``if not: braked hub, not: spare wheel fitted``, ``if: braked hub, and: disc``; empty for every way."""
    if told is None:
        return ""
    pattern, joint = (IF, AND) if told.taken else (IF_NOT, NOT)
    return language.text(pattern, condition=language.text(joint).join(told.branches))


def other_unit(also: Iterable[Stage], language: Language) -> str:
    """A value that was worked out in another unit, with the decimal sign of the language."""
    return language.text(" then ").join(str(stage).replace(".", language.decimal) for stage in also)


def both_units(row: TorqueRow, language: Language) -> str:
    """``15 N·m (11 lbf·ft)``: as typed, then in the other unit."""
    return f"{row.value} ({other_unit(row.also, language)})" if row.also else row.value.text
