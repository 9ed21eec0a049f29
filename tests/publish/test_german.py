"""A German edition speaks German: no English text of the catalogue stands on page, sheets, PDF or quotation."""

import html
import re
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

import pytest

from procbuilder.model.edition import Edition
from procbuilder.publish.data import edition_json
from procbuilder.publish.dita import dita
from procbuilder.publish.html import page, phone, quotation_page, sheets_page
from procbuilder.publish.language import language_of
from procbuilder.publish.pdf import pdf, sheets_pdf
from procbuilder.publish.selftest import selftest
from procbuilder.publish.storyboard import storyboard
from procbuilder.publish.timewords import sentences
from procbuilder.publish.tokens import panels
from tests.publish.blocks import read as blocks_of
from tests.publish.catalogue import messages
from tests.publish.sheet import EPOCH, TEMPLATES, solid, whole
from tests.publish.test_phoneaway import with_vapour

GERMAN = language_of("de-DE")
TYPED = {"gloves"}
"""A line of the sample that is a word of the catalogue too."""


@pytest.fixture(scope="module")
def german(edition: Edition) -> Edition:
    return with_vapour(replace(edition, language="de-DE"), {3: "petrol pipe", 4: "petrol pipe"})


def telling() -> list[str]:
    """English texts of more than three words, cut at their gaps, that are others in German."""
    said = [text for message in messages() for text in ([message] if isinstance(message, str) else message)]
    pieces = {piece.strip(" *.:;,?") for text in said for piece in re.split(r"\{\w+\}", text) if _differs(text)}
    return sorted(piece for piece in pieces if len(piece.split()) > 3)


def _differs(text: str) -> bool:
    return GERMAN.text(text) != text


def labels(blocks: Iterable[str]) -> list[str]:
    """Blocks that are nothing but an English text of the catalogue."""
    own = {text for text in messages() if isinstance(text, str) and _differs(text)}
    return [block for block in blocks if {block, block.rstrip(":"), block.partition(":")[0]} & own - TYPED]


def leaks(text: str) -> list[str]:
    flat = solid(text).casefold()
    return [piece for piece in telling() if solid(piece).casefold() in flat]


def read(document: str) -> str:
    """What is read of a page, scripts' words and spoken attributes too; the code of scripts and styles left out."""
    shown = re.sub(r"<style>.*?</style>|<script>.*?</script>", "", document, flags=re.DOTALL)
    return html.unescape(re.sub(r"</?(?:b|i|span|strong|small)\b[^>]*>", "", shown))


def test_there_are_enough_texts_to_look_for() -> None:
    assert len(telling()) > 200
    assert leaks("Or: Count the tools: as many as before the job. And so on") != []


def test_the_page_is_german(german: Edition, media: Path) -> None:
    for document in (page(german, templates=TEMPLATES), phone(german, templates=TEMPLATES, media=media).decode()):
        assert '<html lang="de-DE">' in document
        assert leaks(read(document)) == []
        assert labels(block for blocks in blocks_of(document).values() for block in blocks) == []


def test_sheets_and_quotation_are_german(german: Edition) -> None:
    for document in (sheets_page(german, templates=TEMPLATES), quotation_page(german, templates=TEMPLATES)):
        assert '<html lang="de-DE">' in document
        assert leaks(read(document)) == []
        assert labels(block for blocks in blocks_of(document).values() for block in blocks) == []


def test_print_is_german(german: Edition, media: Path) -> None:
    for print_it in (pdf, sheets_pdf):
        printed = print_it(german, templates=TEMPLATES, media=media, epoch=EPOCH)
        assert leaks(whole(printed.data)) == []
        assert printed.unprintable == ()


def test_film_self_test_and_task_are_german(german: Edition) -> None:
    told = [
        line
        for scene in storyboard(german, panels(TEMPLATES))
        for card in (*scene.before, *scene.after)
        for line in card.lines
    ]
    assert leaks(" ¶ ".join(f"{line.label} {line.text}" for line in told)) == []
    assert leaks(" ¶ ".join(f"{each.ask} {each.why}" for each in selftest(german))) == []
    assert leaks(dita(german).decode()) == []


def test_the_estimate_is_told_in_german(german: Edition) -> None:
    assert sentences(german.estimate, GERMAN)[0].startswith(
        "Reine Arbeitszeit mindestens 0,5 h (eine Untergrenze: nicht jeder Schritt hat eine eigene Zeit), "
        "Wartezeit 10 min"
    )


def test_what_was_typed_stays_as_typed(german: Edition) -> None:
    document = read(page(german, templates=TEMPLATES))
    for typed in ("15 N·m then 30 N·m", "25 mm stub axle, four-stud hub", "Der Mechaniker gibt an: 1.5 h."):
        assert typed in document


def test_labels_terms_and_sources_are_german(german: Edition) -> None:
    document = " ".join(read(page(german, templates=TEMPLATES)).split())
    for said in ("WARNUNG", "gesagt strip", "aus D1 p. 4", "noch offen", "Schritt 1 von 11", "Befund:"):
        assert said in document, said


def test_the_data_are_the_same_in_every_language(german: Edition) -> None:
    english = edition_json(replace(german, language="en-GB")).replace(b'"language": "en-GB"', b'"language": "de-DE"')
    assert edition_json(german) == english
