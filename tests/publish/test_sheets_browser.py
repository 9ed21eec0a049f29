"""The page of sheets in a real browser, on the screen and printed."""

import io
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any
from unicodedata import normalize

import pytest
from pypdf import PdfReader

from procbuilder.publish.html import page, quotation_page, sheets_page
from procbuilder.publish.sheets.every import sheets
from tests.publish.blocks import TEMPLATES
from tests.publish.sample import sample_edition

pytest.importorskip("playwright.sync_api", reason="the browser tests need playwright")

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from tests.publish.visit import TARGETS, Visit, overflow

WIDTHS = {"phone": {"width": 360, "height": 740}, "desk": {"width": 1280, "height": 800}}


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("sheets")
    edition = sample_edition(folder / "media")
    german = replace(edition, language="de-DE")
    (folder / "sheets.html").write_text(sheets_page(edition, templates=TEMPLATES), encoding="utf-8")
    (folder / "german.html").write_text(sheets_page(german, templates=TEMPLATES), encoding="utf-8")
    (folder / "german-quotation.html").write_text(quotation_page(german, templates=TEMPLATES), encoding="utf-8")
    (folder / "german-page.html").write_text(page(german, templates=TEMPLATES), encoding="utf-8")
    return folder


@pytest.fixture
def visit(browser: Browser, site: Path, request: pytest.FixtureRequest) -> Iterator[Visit]:
    options: dict[str, Any] = {"viewport": WIDTHS["desk"]} | getattr(request, "param", {})
    context = browser.new_context(**options)
    visit = Visit(context, site)
    yield visit
    context.close()
    assert visit.faults == []
    assert visit.asked <= {"the site", "data", "about"}


both_widths = pytest.mark.parametrize(
    "visit", [{"viewport": size} for size in WIDTHS.values()], ids=WIDTHS, indirect=True
)


@both_widths
@pytest.mark.parametrize("name", ["sheets.html", "german.html", "german-quotation.html", "german-page.html"])
def test_sheets_keep_the_rules_of_accessibility_and_fit(visit: Visit, name: str) -> None:
    """axe-core, WCAG 2.2 A and AA; nothing is wider than the screen, targets are large enough for gloves."""
    page = visit.open(name)
    page.evaluate(Axe().axe_script)
    result = page.evaluate("axe.run()")
    assert [(entry["id"], entry["nodes"][0]["html"]) for entry in result["violations"]] == []
    assert overflow(page) <= 0
    assert [least for least in page.evaluate(TARGETS) if least < 0] == []


def _printed(visit: Visit, address: str) -> list[str]:
    reader = PdfReader(io.BytesIO(visit.open(address).pdf(format="A4")))
    return [" ".join(normalize("NFKC", page.extract_text()).split()) for page in reader.pages]


def test_each_sheet_is_printed_on_a_page_of_its_own(visit: Visit) -> None:
    told = _printed(visit, "sheets.html")
    titles = [sheet.title for sheet in sheets(sample_edition(visit.site / "media"))]
    assert len(told) == len(titles)
    assert all(title in page for title, page in zip(titles, told, strict=True))


def test_a_sheet_that_was_chosen_is_printed_alone(visit: Visit) -> None:
    [page] = _printed(visit, "sheets.html#tightening")
    assert "Tightening" in page
    assert "Sign-off" not in page
