"""Marks on a picture."""

import numpy as np
import pytest

from procbuilder.media.drawing import draw
from procbuilder.model.marks import Mark, MarkShape
from procbuilder.model.origin import Place
from tests.media.filming import Image

HERE = Place("procedure.md", 1)


def _ground(grey: int) -> Image:
    return np.full((480, 640, 3), grey, dtype=np.uint8)


def _mark(shape: MarkShape, *points: float, label: str = "") -> Mark:
    return Mark(shape, points, label, HERE)


def _luminance(image: Image) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    """Relative luminance of blue, green, red (WCAG 2.2, definition of relative luminance)."""
    share = image / 255
    linear = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    return np.asarray(linear @ np.array([0.0722, 0.7152, 0.2126]))


@pytest.mark.parametrize("grey", range(0, 256, 15))
@pytest.mark.parametrize("shape", list(MarkShape))
def test_draw_stands_out_from_any_ground(shape: MarkShape, grey: int) -> None:
    """On every grey a mark has enough of a colour whose contrast is 3:1 or more (WCAG 2.2, 1.4.11)."""
    image = _ground(grey)
    draw(image, [_mark(shape, 0.3, 0.3, 0.7, 0.7)])
    ground = _luminance(_ground(grey))[0, 0]
    drawn = _luminance(image)
    contrast = (np.maximum(drawn, ground) + 0.05) / (np.minimum(drawn, ground) + 0.05)
    assert (contrast >= 3).sum() > 600


@pytest.mark.parametrize("grey", [0, 128, 255])
def test_draw_letters_stand_out_from_any_ground(grey: int) -> None:
    """A label is dark with a light edge: both are there on black, grey and white ground."""
    image = _ground(grey)
    draw(image, [_mark(MarkShape.BOX, 0.3, 0.5, 0.7, 0.9, label="press here")])
    above = image[:228]
    assert (above > 250).all(axis=2).sum() > 300
    assert (above < 20).all(axis=2).sum() > 300


@pytest.mark.parametrize(
    ("shape", "drawn", "empty"),
    [
        (MarkShape.ARROW, [(320, 240), (445, 334)], [(448, 144)]),
        (MarkShape.LINE, [(320, 240), (445, 334)], [(448, 144)]),
        (MarkShape.BOX, [(320, 336), (448, 240), (448, 336)], [(320, 240)]),
        (MarkShape.RING, [(320, 336), (448, 240)], [(320, 240), (445, 333)]),
    ],
)
def test_draw_shapes_lie_where_they_were_put(
    shape: MarkShape, drawn: list[tuple[int, int]], empty: list[tuple[int, int]]
) -> None:
    """Points on the mark are dark, points inside or beside it untouched (x, y of 640 by 480)."""
    image = _ground(128)
    draw(image, [_mark(shape, 0.3, 0.3, 0.7, 0.7)])
    assert all(image[y - 1 : y + 2, x - 1 : x + 2].min() < 30 for x, y in drawn)
    assert all((image[y - 3 : y + 4, x - 3 : x + 4] == 128).all() for x, y in empty)


def test_draw_arrow_has_its_head_at_the_second_point() -> None:
    """There is more of it around the second point than around the middle."""
    image = _ground(128)
    draw(image, [_mark(MarkShape.ARROW, 0.2, 0.5, 0.8, 0.5)])
    head, middle = (np.count_nonzero(image[200:280, x : x + 20] != 128) for x in (490, 300))
    assert head > 1.5 * middle


@pytest.mark.parametrize("points", [(0.0, 0.0), (1.0, 1.0), (0.0, 1.0), (1.7, -0.4)])
@pytest.mark.parametrize("shape", list(MarkShape))
def test_draw_mark_at_the_edge_keeps_its_label_inside(shape: MarkShape, points: tuple[float, float]) -> None:
    """All letters are there: as many dark pixels as with room all around."""
    middle, edge = _ground(128), _ground(128)
    draw(middle, [_mark(shape, 0.5, 0.5, label="HHHHH")])
    draw(edge, [_mark(shape, *points, label="HHHHH")])
    bare = _ground(128)
    draw(bare, [_mark(shape, *points)])
    whole = _ground(128)
    draw(whole, [_mark(shape, 0.5, 0.5)])

    def letters(image: Image, without: Image) -> int:
        return int(((image < 40) & (without > 40)).all(axis=2).sum())

    assert letters(middle, whole) > 300
    assert letters(edge, bare) == pytest.approx(letters(middle, whole), rel=0.2)
