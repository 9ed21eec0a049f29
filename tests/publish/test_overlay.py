"""The marks that the browser draws over a picture lie where they are burnt in."""

import re
from pathlib import Path

import cv2
import numpy as np
import pytest
from playwright.sync_api import Browser

from procbuilder.media.drawing import draw
from procbuilder.model.edition import Edition, Figure
from procbuilder.model.footage import TYPED_MOMENT, Still
from procbuilder.model.marks import Mark, MarkShape, PictureState
from procbuilder.model.origin import Place
from procbuilder.publish.html import page
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.overlay import drawing, outline
from procbuilder.publish.teller import Teller
from procbuilder.publish.told import ToldFigure
from tests.publish.blocks import TEMPLATES

HERE = Place("procedure.md", 1)
MARKS = (
    Mark(MarkShape.ARROW, (0.61, 0.40, 0.52, 0.47), "", HERE),
    Mark(MarkShape.RING, (0.1, 0.1, 0.3, 0.5), "", HERE),
    Mark(MarkShape.BOX, (0.7, 0.55, 0.97, 0.9), "", HERE),
    Mark(MarkShape.LINE, (0.05, 0.9, 0.4, 0.7), "", HERE),
)


def _figure(width: int, height: int) -> ToldFigure:
    still = Still("grey.jpg", width, height, "", None, "grey.jpg", TYPED_MOMENT)
    return Teller(ENGLISH).figure(Figure(still, "", PictureState.DONE, MARKS), "Turn it")


def test_the_path_holds_the_typed_fractions() -> None:
    """Of 1000 by 500 units; an ellipse begins at its left and goes round in two arcs (SVG 2, 9.3.8)."""
    signs = drawing(_figure(1000, 500)).marks
    assert outline(signs[:1]).startswith("M610 200 L520 235 M")
    assert outline(signs[1:2]) == "M100 150 a100 100 0 1 0 200 0 a100 100 0 1 0 -200 0"
    assert outline(signs[2:3]) == "M700 275 L970 275 L970 450 L700 450 L700 275"
    assert outline(signs[3:]) == "M50 450 L400 350"


@pytest.mark.parametrize(("width", "height"), [(1280, 720), (720, 1280)])
def test_the_browser_draws_what_is_burnt_in(browser: Browser, width: int, height: int, tmp_path: Path) -> None:
    """Nine dark pixels in ten of either lie within two pixels of a dark one of the other."""
    drawn = drawing(_figure(width, height))
    css = (TEMPLATES / "html" / "figure.css").read_text()
    box = f"0 0 {drawn.width} {drawn.height}"
    paths = "".join(f'<path class="{kind}" d="{outline(drawn.marks)}"/>' for kind in ("halo", "line"))
    svg = f'<body style="margin:0;background:#808080"><svg class="marks" viewBox="{box}">{paths}</svg>'
    page = browser.new_page(viewport={"width": width, "height": height})
    page.set_content(f"<style>{css}</style>{svg}")
    page.screenshot(path=tmp_path / "shot.png")
    page.close()
    shot = cv2.imread(str(tmp_path / "shot.png"))
    assert shot is not None
    burnt = np.full((height, width, 3), 128, np.uint8)
    draw(burnt, MARKS)
    one, other = ((image.max(axis=2) < 60).astype(np.uint8) for image in (shot, burnt))
    assert one.sum() > 3000
    near = np.ones((5, 5), np.uint8)
    assert (one & cv2.dilate(other, near)).sum() > 0.9 * one.sum()
    assert (other & cv2.dilate(one, near)).sum() > 0.9 * other.sum()


def test_all_of_the_outline_is_numbers_and_letters_of_paths() -> None:
    assert re.fullmatch(r"[MLa0-9. -]+", outline(drawing(_figure(640, 360)).marks))


def test_the_alternative_text_and_the_words_below_tell_the_marks(edition: Edition) -> None:
    """The drawing itself is hidden from screen readers: all it says is said in words."""
    html = page(edition, templates=TEMPLATES)
    at = html.index('<svg class="marks"')
    svg = html[at : html.index("</svg>", at)]
    assert 'aria-hidden="true"' in svg
    assert re.findall(r"<tspan[^>]*>([^<]*)</tspan>", svg) == ["start here", "then here"]
    assert "style=" not in svg
    assert "Marked: start here; then here" in html
