"""The language of an edition: its catalogue of words, its decimal sign, its dates.

English stands in the code and is the key of every catalogue ``locale/xx/*.po``; what a catalogue does not hold is said
in English. What the technician typed never comes here: it is printed as typed.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import cache
from gettext import GNUTranslations, NullTranslations
from importlib.resources import files
from importlib.resources.abc import Traversable
from io import BytesIO
from types import ModuleType, SimpleNamespace
from typing import TYPE_CHECKING, Any

from procbuilder.model.languages import SOURCE, WRITTEN

if TYPE_CHECKING:
    from babel import Locale

Words = SimpleNamespace
"""The words of a module in one language, by their names; ``language`` is the language itself."""


@dataclass(frozen=True, slots=True)
class Language:
    """How an edition says what nobody typed."""

    tag: str
    """Language of what was typed, as BCP 47 names it: ``de-DE``."""
    own: str
    """Language of the words: the same, or English where there is no catalogue."""
    translations: NullTranslations

    def text(self, text: str, /, **facts: object) -> str:
        """A text of the catalogue with its gaps filled; without facts, gaps stay."""
        said = self.translations.gettext(text) if text else ""
        return said.format(**facts) if facts else said

    def plural(self, one: str, many: str, count: int, /, **facts: object) -> str:
        """The form of a text that a count asks for, with ``{count}`` and further gaps filled."""
        return self.translations.ngettext(one, many, count).format(count=count, **facts)

    def number(self, value: Decimal) -> str:
        """A number that was worked out, with all its digits and never with an exponent."""
        return f"{value:f}".replace(".", self.decimal)

    @property
    def decimal(self) -> str:
        """The sign before tenths."""
        return _decimal(self.own)

    def date(self, day: date) -> str:
        """A day; in English year first, since British and American readers would take 03/04 for different days."""
        from babel.dates import format_date

        return day.isoformat() if self.own.startswith(SOURCE) else format_date(day, "medium", _locale(self.own))

    def every(self, parts: Iterable[str]) -> str:
        """``a, b and c``."""
        *before, last = parts
        return self.text("{parts} and {last}", parts=", ".join(before), last=last) if before else last

    def capital(self, text: str) -> str:
        """A text that begins a line."""
        said = self.text(text)
        return said[:1].upper() + said[1:]

    @property
    def foreign(self) -> bool:
        """The words are in another language than what was typed."""
        return self.own.partition("-")[0] != self.tag.partition("-")[0]


ENGLISH = Language(SOURCE, SOURCE, NullTranslations())


@cache
def language_of(tag: str) -> Language:
    """The language that a procedure names; its words are English where there is no catalogue for it.

    Args:
        tag: as typed behind ``language:``, such as ``de-DE``; what is no language counts as English.
    """
    known = _locale(tag)
    if known is None:
        return ENGLISH
    tag = str(known).replace("_", "-")
    own = tag if known.language in WRITTEN else SOURCE
    return Language(tag, own, _translations(own.partition("-")[0]))


def words_in(module: ModuleType, language: Language) -> Words:
    """What a module of words says, in a language: ``words_in(pagewords, german).OVERVIEW``."""
    return _words(module, language)


@cache
def _words(module: ModuleType, language: Language) -> Words:
    names = [name for name in vars(module) if name.isupper()]
    return Words(language=language, **{name: _said(getattr(module, name), language) for name in names})


def _said(value: Any, language: Language) -> Any:
    """Every text within a constant; keys are no words."""
    if isinstance(value, dict):
        return {key: _said(part, language) for key, part in value.items()}
    if isinstance(value, tuple):
        return tuple(_said(part, language) for part in value)
    return language.text(value) if isinstance(value, str) else value


def _locale(tag: str) -> "Locale | None":
    from babel import Locale, UnknownLocaleError

    try:
        return Locale.parse(tag.strip(), sep="-")
    except (ValueError, UnknownLocaleError):
        return None


@cache
def _decimal(tag: str) -> str:
    from babel.numbers import get_decimal_symbol

    return get_decimal_symbol(_locale(tag))


@cache
def _translations(code: str) -> NullTranslations:
    """A catalogue as the standard library reads it, made in memory."""
    if code == SOURCE:
        return NullTranslations()
    from babel.messages.catalog import Catalog
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po

    whole = Catalog(locale=code)
    for path in catalogues(code):
        with path.open("rb") as text:
            for entry in read_po(text, locale=code):
                if entry.id:
                    whole.add(entry.id, entry.string)
    made = BytesIO()
    write_mo(made, whole)
    made.seek(0)
    return GNUTranslations(made)


def catalogues(code: str) -> list[Traversable]:
    """The files that hold the texts of a language, in the order of their names."""
    folder = files("procbuilder.publish").joinpath("locale", code)
    return sorted((path for path in folder.iterdir() if path.name.endswith(".po")), key=lambda path: path.name)
