"""The drawings of the safety signs.

Shapes and colours: ISO 3864-1 (triangle, disc, ring with bar, square; yellow, blue, red, green), colours by their RAL
numbers 1003, 5005, 3001, 6032, as sRGB from memory. Contrast: WCAG 2.2, 1.4.11, at least 3:1.
"""

import re
from pathlib import Path
from xml.etree import ElementTree

import cv2
import numpy as np
import pytest

from procbuilder.infer.lexicon import load
from procbuilder.model.edition import Edition
from procbuilder.model.sign import Sign
from procbuilder.publish.html import page
from procbuilder.publish.signs import drawing, drawings, used
from tests.publish.sheet import TEMPLATES

SHOWN = [Sign(number, sign.meaning) for number, sign in sorted(load().signs.items())]
YELLOW, BLUE, RED, GREEN = "#f9a800", "#005387", "#9b2423", "#237f52"
COLOURS = {
    "W": {YELLOW, "#000"}, "M": {BLUE, "#fff"}, "P": {RED, "#fff", "#000"}, "E": {GREEN, "#fff"}, "F": {RED, "#fff"},
}  # fmt: skip
FRAMES = {
    "W": ["path", "M50 10 93 85H7Z"], "M": ["circle", "49"], "P": ["circle", "49"],
    "E": ["rect", "100"], "F": ["rect", "100"],
}  # fmt: skip
ACROSS = 96
"""Pixels of a rendered sign: 12 mm at 200 dots an inch."""


def _root(sign: Sign) -> ElementTree.Element:
    return ElementTree.fromstring(drawing(sign.number, TEMPLATES).read_text(encoding="utf-8"))


def _name(element: ElementTree.Element) -> str:
    return element.tag.rpartition("}")[2]


@pytest.fixture(scope="module")
def rendered(tmp_path_factory: pytest.TempPathFactory) -> dict[str, np.ndarray]:
    """Grey pictures of all signs at 12 mm, as a printer without colour would show them."""
    import typst

    room = tmp_path_factory.mktemp("signs")
    for sign in SHOWN:
        (room / f"{sign.number}.svg").write_bytes(drawing(sign.number, TEMPLATES).read_bytes())
    names = ", ".join(f'"{sign.number}"' for sign in SHOWN)
    source = f'#set page(width: 12mm, height: 12mm, margin: 0mm)\n#for name in ({names}) {{ image(name + ".svg") }}'
    (room / "main.typ").write_text(source, encoding="utf-8")
    pictures = typst.compile(str(room / "main.typ"), format="png", ppi=ACROSS * 25.4 / 12)
    assert isinstance(pictures, list)
    found = [cv2.imdecode(np.frombuffer(data, np.uint8), cv2.IMREAD_GRAYSCALE) for data in pictures]
    return {sign.number: picture for sign, picture in zip(SHOWN, found, strict=True) if picture is not None}


def test_each_sign_has_a_drawing_and_each_drawing_a_sign() -> None:
    files = sorted(path.stem for path in (TEMPLATES / "signs").glob("*.svg"))
    assert files == [sign.number for sign in SHOWN]


@pytest.mark.parametrize("sign", SHOWN, ids=lambda sign: sign.number)
def test_each_drawing_has_the_shape_and_the_colours_of_its_kind(sign: Sign) -> None:
    root, kind = _root(sign), sign.number[0]
    title, frame = root[0], root[1]
    assert title.text == f"{sign.number} {sign.meaning}"
    shape, measure = FRAMES[kind]
    assert _name(frame) == shape
    assert measure in frame.attrib.values()
    text = drawing(sign.number, TEMPLATES).read_text(encoding="utf-8")
    assert set(re.findall(r"#[0-9a-f]{3,6}\b", text)) <= COLOURS[kind]
    assert {_name(element) for element in root.iter()} <= {"svg", "title", "g", "path", "circle", "ellipse", "rect"}
    assert len(text) < 3000


@pytest.mark.parametrize("sign", SHOWN, ids=lambda sign: sign.number)
def test_no_symbol_runs_out_of_its_frame(sign: Sign, rendered: dict[str, np.ndarray]) -> None:
    picture = rendered[sign.number]
    frame = np.zeros(picture.shape, np.uint8)
    scale = ACROSS / 100
    if sign.number[0] == "W":
        corners = (np.array([[50, 10], [93, 85], [7, 85]]) * scale).astype(np.int32)
        cv2.fillPoly(frame, [corners], 255)
        cv2.polylines(frame, [corners], True, 255, round(11 * scale))
    elif sign.number[0] in "MP":
        cv2.circle(frame, (ACROSS // 2, ACROSS // 2), ACROSS // 2 + 1, 255, -1)
    else:
        frame[:] = 255
    assert picture.shape == (ACROSS, ACROSS)
    assert picture[frame == 0].min(initial=255) > 240


def test_the_symbol_stands_out_in_grey() -> None:
    def light(colour: str) -> float:
        digits = colour[1:] if len(colour) == 7 else "".join(digit * 2 for digit in colour[1:])
        parts = [int(digits[place : place + 2], 16) / 255 for place in (0, 2, 4)]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        return float(np.dot(linear, (0.2126, 0.7152, 0.0722)))

    pairs = [(YELLOW, "#000"), (BLUE, "#fff"), (RED, "#fff"), (GREEN, "#fff")]
    contrasts = [sorted((light(one) + 0.05, light(other) + 0.05)) for one, other in pairs]
    assert min(high / low for low, high in contrasts) > 4.5


def test_no_two_signs_of_a_kind_look_alike_in_grey_at_12_mm(rendered: dict[str, np.ndarray]) -> None:
    """At least one part in fifty of the picture differs clearly."""
    alike = [
        (one, other)
        for one, picture in rendered.items()
        for other, second in rendered.items()
        if one < other and one[0] == other[0] and np.mean(cv2.absdiff(picture, second) > 60) < 0.02
    ]
    assert alike == []


def test_the_page_draws_each_sign_that_it_shows_and_no_other(edition: Edition) -> None:
    html = page(edition, templates=TEMPLATES)
    shown = set(re.findall(r'href="#_sign-(\w+)"', html))
    assert shown == set(re.findall(r'<symbol id="_sign-(\w+)"', html)) == {"W019", "P024", "M004", "M009"}
    assert list(used(edition)) == ["M004", "M009", "P024", "W019"]


def test_drawings_of_no_sign_are_empty() -> None:
    assert "<symbol" not in drawings([], Path())
