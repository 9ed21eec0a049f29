"""Paper, margins and QR codes of the print."""

import io
from dataclasses import replace
from pathlib import Path
from typing import Any

import cv2
import numpy as np
import pytest
import typst
from pypdf import PageObject, PdfReader

from procbuilder.model.edition import Edition
from tests.publish.sheet import pages, sheet, whole, with_step

ADDRESS = "https://shop.example/jobs/hub/out/"
POINTS = {"a4": (595.28, 841.89), "letter": (612, 792)}
"""Width and height: ISO 216 A4, 210 × 297 mm; US Letter, 8.5 × 11 in, ANSI/ASME Y14.1 size A."""


@pytest.mark.parametrize("paper", POINTS)
def test_each_page_has_the_size_of_the_paper(edition: Edition, media: Path, paper: str) -> None:
    reader = PdfReader(io.BytesIO(sheet(replace(edition, paper=paper), media)))
    sizes = {(round(float(page.mediabox.width), 2), round(float(page.mediabox.height), 2)) for page in reader.pages}
    assert sizes == {POINTS[paper]}


def test_the_wide_margin_is_at_the_inner_edge(edition: Edition, media: Path) -> None:
    """On a right page left, on a left page right: 20 mm to punch, 15 mm outside."""
    reader = PdfReader(io.BytesIO(sheet(edition, media)))
    assert [_left(page) for page in list(reader.pages)[:4]] == [20, 15, 20, 15]


def _left(page: PageObject) -> int:
    """Where the leftmost text begins, in whole millimetres from the edge."""
    found: list[float] = []

    def note(text: str, outer: list[float], inner: list[float], *_: Any) -> None:
        if text.strip():
            found.append(outer[0] * inner[4] + outer[2] * inner[5] + outer[4])

    page.extract_text(visitor_text=note)
    return round(min(found) * 25.4 / 72)


def test_a_qr_code_leads_to_the_step_with_its_clip(edition: Edition, media: Path) -> None:
    """Read by OpenCV's own reader of QR codes (ISO/IEC 18004), from a print of 300 dots an inch."""
    printed = sheet(replace(edition, address=ADDRESS), media)
    [page] = [page for page in pages(printed) if "Step 3 of 11" in page]
    assert f"{ADDRESS}index.html#dust-cap" in page.replace(" ", "")
    code = _code(edition)
    assert cv2.QRCodeDetector().detectAndDecode(code)[0] == f"{ADDRESS}index.html#dust-cap"


def _code(edition: Edition) -> np.ndarray:
    """The code of step 3 as it is drawn for the print, at the size of the print."""
    from tempfile import TemporaryDirectory

    from procbuilder.publish.pdf import draw_codes

    with TemporaryDirectory() as name:
        room = Path(name)
        draw_codes(replace(edition, address=ADDRESS), room / "codes")
        assert [path.name for path in (room / "codes").iterdir()] == ["3.svg"]
        source = '#set page(width: 18mm, height: 18mm, margin: 0mm)\n#image("codes/3.svg", width: 18mm)'
        (room / "main.typ").write_text(source, encoding="utf-8")
        data = typst.compile(str(room / "main.typ"), format="png", ppi=300)
    assert isinstance(data, bytes)
    picture = cv2.imdecode(np.frombuffer(data, np.uint8), cv2.IMREAD_GRAYSCALE)
    assert picture is not None
    return picture


def test_without_an_address_there_is_no_code(text: str) -> None:
    assert "index.html#" not in text


def test_no_code_invites_a_phone_where_none_may_be(edition: Edition, media: Path) -> None:
    there = replace(edition, address=ADDRESS)
    assert there.address_of(there.steps[2]) == f"{ADDRESS}index.html#dust-cap"
    away = with_step(there, 3, no_phone="brake cleaner")
    assert away.address_of(away.steps[2]) == ""
    assert "index.html#" not in whole(sheet(away, media))
