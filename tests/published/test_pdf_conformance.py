"""The printed sheet against ISO 14289-1:2014 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a).

The first tests look for what the published veraPDF rules for ISO 14289-1 demand, clause by clause; the last one
runs those rules themselves over the file.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.ledger import Ledger
from procbuilder.publish.pdf import Printed, pdf, sheets_pdf
from procbuilder.publish.speaker import spoken
from tests.publish.sample import sample_edition
from tests.publish.sheet import EPOCH, TEMPLATES, sheet, with_step
from tests.publish.test_phoneaway import with_vapour
from tests.published import verapdf


@pytest.fixture(scope="module")
def media(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("media")


@pytest.fixture(scope="module")
def edition(media: Path) -> Edition:
    return with_vapour(sample_edition(media), {3: "petrol pipe", 4: "petrol pipe"})


@pytest.fixture(scope="module")
def document(edition: Edition, media: Path) -> Iterator[pikepdf.Pdf]:
    with pikepdf.open(BytesIO(sheet(edition, media))) as opened:
        yield opened


def _elements(node: Any) -> Iterator[Any]:
    """Every structure element below a node."""
    if isinstance(node, pikepdf.Array):
        for part in node:
            yield from _elements(part)
    elif isinstance(node, pikepdf.Dictionary):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from _elements(node.K)


def _roles(document: pikepdf.Pdf) -> list[str]:
    return [str(element.S) for element in _elements(document.Root.StructTreeRoot)]


def test_header_names_a_version_of_pdf_1(document: pikepdf.Pdf) -> None:
    """Clause 6.1: ``%PDF-1.n``, n from 0 to 7."""
    assert document.pdf_version in {f"1.{minor}" for minor in range(8)}


def test_file_says_that_it_is_tagged_and_in_which_language(document: pikepdf.Pdf) -> None:
    """Clauses 6.2 and 7.2: Marked, and a language for all text."""
    assert bool(document.Root.MarkInfo.Marked) is True
    assert str(document.Root.Lang) == "en-GB"


def test_title_is_there_and_shown(document: pikepdf.Pdf) -> None:
    """Clause 7.1: dc:title, and DisplayDocTitle true."""
    assert bool(document.Root.ViewerPreferences.DisplayDocTitle) is True
    assert str(document.open_metadata()["dc:title"]) == "Trailer wheel hub – renew the bearings"


def test_metadata_claims_both_standards(document: pikepdf.Pdf) -> None:
    """Clause 5 of ISO 14289-1, and clause 6.6.4 of ISO 19005-2."""
    metadata = document.open_metadata()
    assert metadata["pdfuaid:part"] == "1"
    assert (metadata["pdfaid:part"], metadata["pdfaid:conformance"]) == ("2", "A")


def test_metadata_names_no_person(document: pikepdf.Pdf) -> None:
    assert "dc:creator" not in document.open_metadata()
    assert "/Author" not in document.docinfo


def test_each_figure_has_words_for_those_who_cannot_see_it(edition: Edition, document: pikepdf.Pdf) -> None:
    """Clause 7.3: Alt on each Figure."""
    figures = [element for element in _elements(document.Root.StructTreeRoot) if element.S == "/Figure"]
    steps = [step for step in edition.steps if not step.reserved]
    told = spoken(edition)
    printed = [step for step in told.steps if not step.reserved]
    shown = [figure for step in printed for figure in (*step.figures, step.as_found) if figure]
    shown += [figure for pair in told.pairs for figure in (pair.found, pair.done) if figure]
    dangers = [*edition.hazards, *(hazard for step in edition.steps for hazard in step.hazards)]
    worn = [line for step in steps for line in step.wear]
    worn += [line for front in edition.lists for line in front.lines]
    marked = [*(danger.signs for danger in dangers), *(line.signs for line in worn)]
    signs = [f"{sign.number} {sign.meaning}" for each in marked for sign in each]
    words = [figure.alt for figure in shown] + signs
    assert sorted(str(figure.Alt) for figure in figures) == sorted(words)
    assert (len(shown), len(signs)) == (12, 6)


def test_a_picture_without_words_is_told_by_its_step(edition: Edition, media: Path) -> None:
    figure = edition.steps[0].figures[0]
    bare = with_step(edition, 1, figures=(figure, replace(figure, shows="")))
    with pikepdf.open(BytesIO(sheet(bare, media))) as opened:
        figures = [element for element in _elements(opened.Root.StructTreeRoot) if element.S == "/Figure"]
        shown = [str(figure.Alt) for figure in figures if not str(figure.Alt).startswith("M0")]
        assert shown[:2] == [
            "Chocks pushed home", "Done: Chock the other wheel in front and behind",
        ]  # fmt: skip


def test_headings_skip_no_level(document: pikepdf.Pdf) -> None:
    """Clause 7.4.2."""
    levels = [int(role[2:]) for role in _roles(document) if role[:2] == "/H" and role[2:].isdigit()]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(later <= before + 1 for before, later in pairwise(levels))


def test_each_table_has_header_cells_that_say_what_they_head(document: pikepdf.Pdf) -> None:
    """Clause 7.5."""
    tables = [element for element in _elements(document.Root.StructTreeRoot) if element.S == "/Table"]
    assert len(tables) == 12
    for table in tables:
        heads = [element for element in _elements(table.K) if element.S == "/TH"]
        assert len(heads) >= 3
        assert all("/Column" in str(head.A) or "/Column" in repr(head.A) for head in heads)


def _fonts(document: pikepdf.Pdf) -> Iterator[pikepdf.Object]:
    for thing in document.objects:
        if isinstance(thing, pikepdf.Dictionary) and thing.get("/Type") == "/FontDescriptor":
            yield thing


def test_each_font_is_in_the_file(document: pikepdf.Pdf) -> None:
    """Clause 7.21.4.1."""
    fonts = list(_fonts(document))
    assert any("SourceSansPro" in str(font.FontName) for font in fonts)
    assert all({"/FontFile2", "/FontFile3"} & set(font.keys()) for font in fonts)


def test_pages_are_walked_in_the_order_of_the_structure(document: pikepdf.Pdf) -> None:
    """Clause 7.18.3: Tabs is S on each page."""
    assert [str(page.obj.Tabs) for page in document.pages] == ["/S"] * len(document.pages)


def _bare(edition: Edition) -> Edition:
    """No step, no table, no list: what is left is what every sheet has."""
    bare = replace(edition, intro=(), hazards=(), lists=(), tools=(), supplies=(), parts=(), sections=())
    return replace(bare, torques=(), ledger=Ledger(), pairs=(), trays=(), closing=(), problems=(), recordings=())


def _long(edition: Edition, count: int) -> Edition:
    """The steps of the sample again and again."""
    steps = [edition.steps[number % len(edition.steps)] for number in range(count)]
    numbered = tuple(replace(step, number=number, id=f"s{number}") for number, step in enumerate(steps, 1))
    return replace(edition, sections=(replace(edition.sections[0], steps=numbered),))


@pytest.mark.skipif(bool(verapdf.missing()), reason=f"the published rules cannot run: {verapdf.missing()}")
@pytest.mark.parametrize("kind", ["sample", "almost empty", "two hundred steps"])
def test_the_published_rules_find_no_fault(edition: Edition, media: Path, tmp_path: Path, kind: str) -> None:
    """veraPDF's profiles PDFUA-1 and PDFA-2A."""
    file = tmp_path / "procedure.pdf"
    made = {"sample": edition, "almost empty": _bare(edition), "two hundred steps": _long(edition, 200)}[kind]
    file.write_bytes(sheet(made, media))
    found = verapdf.verdicts(file)
    assert {name: verdict.failed for name, verdict in found.items()} == {"PDFUA-1": {}, "PDFA-2A": {}}
    assert all(verdict.compliant and verdict.checks > 1000 for verdict in found.values())


@pytest.mark.skipif(bool(verapdf.missing()), reason=f"the published rules cannot run: {verapdf.missing()}")
@pytest.mark.parametrize("which", ["procedure", "sheets"])
def test_the_published_rules_find_no_fault_in_sheets_and_codes(
    edition: Edition, media: Path, tmp_path: Path, which: str
) -> None:
    """On the other paper too; the sheets have cards, pictures of turns and pairs of pictures, steps have QR codes."""
    other = replace(edition, paper="letter", address="https://shop.example/jobs/hub/out/")
    print_it = {"procedure": pdf, "sheets": sheets_pdf}[which]
    file = tmp_path / f"{which}.pdf"
    file.write_bytes(print_it(other, templates=TEMPLATES, media=media, epoch=EPOCH).data)
    found = verapdf.verdicts(file)
    assert {name: verdict.failed for name, verdict in found.items()} == {"PDFUA-1": {}, "PDFA-2A": {}}
    assert all(verdict.compliant and verdict.checks > 1000 for verdict in found.values())


@pytest.mark.skipif(bool(verapdf.missing()), reason=f"the published rules cannot run: {verapdf.missing()}")
@pytest.mark.parametrize("print_it", [pdf, sheets_pdf], ids=["procedure", "sheets"])
def test_the_published_rules_find_no_fault_in_german(
    edition: Edition, media: Path, tmp_path: Path, print_it: Callable[..., Printed]
) -> None:
    """Clause 7.2: the file names its language; no part of it is in another."""
    file = tmp_path / "german.pdf"
    german = replace(edition, language="de-DE")
    file.write_bytes(print_it(german, templates=TEMPLATES, media=media, epoch=EPOCH).data)
    with pikepdf.open(file) as opened:
        assert str(opened.Root.Lang) == "de-DE"
        languages = {str(element.Lang) for element in _elements(opened.Root.StructTreeRoot) if "/Lang" in element}
        assert languages == set()
    found = verapdf.verdicts(file)
    assert {name: verdict.failed for name, verdict in found.items()} == {"PDFUA-1": {}, "PDFA-2A": {}}
    assert all(verdict.compliant and verdict.checks > 1000 for verdict in found.values())


@pytest.mark.skipif(bool(verapdf.missing()), reason=f"the published rules cannot run: {verapdf.missing()}")
def test_the_published_rules_notice_a_picture_without_words(edition: Edition, media: Path, tmp_path: Path) -> None:
    """A rule that could not fail would prove nothing: clause 7.3, and no language, clause 7.2."""
    file = tmp_path / "spoilt.pdf"
    with pikepdf.open(BytesIO(sheet(edition, media))) as document:
        figure = next(element for element in _elements(document.Root.StructTreeRoot) if element.S == "/Figure")
        del figure["/Alt"]
        document.save(file)
    verdict = verapdf.verdicts(file)["PDFUA-1"]
    assert (verdict.compliant, verdict.failed) == (False, {"7.3-1": 1})
