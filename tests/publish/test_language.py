"""The words of an edition in its language: English as the key, German complete.

Numbers and dates are checked against the Unicode CLDR, as Babel carries it.
"""

from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from importlib.resources import files
from string import Formatter
from typing import Any

import pytest
from babel.dates import format_date
from babel.messages.catalog import Message
from babel.messages.pofile import read_po
from babel.numbers import format_decimal

from procbuilder.model.languages import SOURCE, WRITTEN
from procbuilder.model.torque import read_torque
from procbuilder.pipeline.lines import COUNTED, FRONT_LISTS
from procbuilder.publish import pagewords
from procbuilder.publish.language import ENGLISH, catalogues, language_of, words_in
from procbuilder.publish.terms import LISTS, other_unit
from tests.publish.catalogue import messages

GERMAN = language_of("de-DE")
CATALOGUES = [code for code in WRITTEN if code != SOURCE]


def catalogue(code: str) -> Iterator[Message]:
    for path in catalogues(code):
        with path.open("rb") as text:
            read = read_po(text, locale=code)
        assert read.obsolete == {}, path.name
        yield from (entry for entry in read if entry.id)


def forms(message: Any) -> list[str]:
    return [message] if isinstance(message, str) else list(message)


def gaps(text: str) -> list[str]:
    return sorted(name for _, name, _, _ in Formatter().parse(text) if name)


def test_the_languages_are_those_that_have_a_catalogue() -> None:
    found = [path.name for path in files("procbuilder.publish").joinpath("locale").iterdir()]
    assert sorted(found) == sorted(CATALOGUES)


@pytest.mark.parametrize("code", CATALOGUES)
def test_a_catalogue_holds_every_text_and_no_other(code: str) -> None:
    held = [tuple(entry.id) if isinstance(entry.id, list | tuple) else entry.id for entry in catalogue(code)]
    assert set(held) == messages()
    assert len(held) == len(set(held))


@pytest.mark.parametrize("code", CATALOGUES)
def test_every_text_is_translated_with_the_same_gaps_and_edges(code: str) -> None:
    for entry in catalogue(code):
        key = forms(entry.id)[-1]
        assert not entry.fuzzy, key
        for said in forms(entry.string or ""):
            assert said.strip(), key
            assert gaps(said) == gaps(key), key
            assert said.count("*") == key.count("*"), key
            assert (said[:1] == " ", said[-1:] == " ") == (key[:1] == " ", key[-1:] == " "), key
            assert key[-1] not in ".:?" or said[-1] == key[-1], key


def test_a_catalogue_with_a_forgotten_text_would_be_noticed() -> None:
    known = {"Overview", ("{count} step", "{count} steps"), "Hot surface", "by: {text}"}
    assert {*known, "GEFAHR"} - messages() == {"GEFAHR"}


def test_titles_of_the_lists_are_terms() -> None:
    assert {LISTS.get(name, name) for name in (*FRONT_LISTS, *COUNTED, "Danger")} <= messages()


def test_signal_words_are_those_of_the_german_standards() -> None:
    """DIN EN ISO 20607 and the German usage of ISO 3864-2: Gefahr, Warnung, Vorsicht, Hinweis."""
    english = ("DANGER", "WARNING", "CAUTION", "NOTICE")
    assert [GERMAN.text(word) for word in english] == ["GEFAHR", "WARNUNG", "VORSICHT", "HINWEIS"]


def test_words_are_those_of_the_language_and_keys_stay() -> None:
    words = words_in(pagewords, GERMAN)
    assert (words.OVERVIEW, words.FACTS["wear"]) == ("Überblick", "Schutz")
    assert words.RECHECK_DUE["1 week"] == ("1 Woche", "Selbsttest")
    assert vars(words_in(pagewords, ENGLISH))["OVERVIEW"] == pagewords.OVERVIEW


@pytest.mark.parametrize("tag", ["de-DE", "de-AT", "de-CH", "en-GB", "en-US", "de"])
@pytest.mark.parametrize("value", ["0.5", "12", "1.90", "1234.5", "0.000001"])
def test_numbers_have_the_decimal_sign_of_the_place(tag: str, value: str) -> None:
    """CLDR: a comma in Germany and Austria, a point in Switzerland and in English; all digits stay."""
    number = Decimal(value)
    digits = len(value.partition(".")[2])
    pattern = f"0.{'0' * digits}" if digits else "0"
    assert language_of(tag).number(number) == format_decimal(number, pattern, locale=tag.replace("-", "_"))


def test_days_are_written_as_in_the_place_and_in_english_year_first() -> None:
    """CLDR for German; ISO 8601 for English."""
    day = date(2026, 3, 4)
    assert GERMAN.date(day) == format_date(day, "medium", "de_DE") == "04.03.2026"
    assert language_of("en-GB").date(day) == language_of("en-US").date(day) == "2026-03-04"


def test_counts_ask_for_their_form() -> None:
    assert [GERMAN.plural("{count} step", "{count} steps", count) for count in (0, 1, 2)] == [
        "0 Schritte", "1 Schritt", "2 Schritte",
    ]  # fmt: skip


def test_what_was_worked_out_gets_the_comma_and_what_was_typed_does_not() -> None:
    assert other_unit(read_torque("11.5 lbf·ft then 90°").stages, GERMAN) == "11,5 lbf·ft dann 90°"
    assert other_unit(read_torque("11.5 lbf·ft then 90°").stages, ENGLISH) == "11.5 lbf·ft then 90°"


@pytest.mark.parametrize(
    ("typed", "tag", "own"),
    [("de-DE", "de-DE", "de-DE"), ("de", "de", "de"), ("en-GB", "en-GB", "en-GB"), ("fr-FR", "fr-FR", "en"),
     ("", "en", "en"), ("Klingon, mostly", "en", "en")],
)  # fmt: skip
def test_a_language_without_a_catalogue_speaks_english(typed: str, tag: str, own: str) -> None:
    language = language_of(typed)
    assert (language.tag, language.own, language.foreign) == (tag, own, typed == "fr-FR")
    assert language.text("Overview") == ("Überblick" if own.startswith("de") else "Overview")
