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


def _mark(shape: MarkShape, *points: float) -> Mark:
    return Mark(shape, points, "start here", HERE)


@pytest.mark.parametrize("grey", [0, 128, 255])
@pytest.mark.parametrize("shape", list(MarkShape))
def test_draw_reads_on_any_ground(shape: MarkShape, grey: int) -> None:
    """On black, grey and white ground each mark has white and black lines side by side."""
    image = _ground(grey)
    draw(image, [_mark(shape, 0.3, 0.3, 0.7, 0.7)])
    beyond_disc = image[190:, 240:]
    assert (beyond_disc == 255).all(axis=2).sum() > 150
    assert (beyond_disc == 0).all(axis=2).sum() > 150


@pytest.mark.parametrize(
    ("shape", "drawn", "empty"),
    [
        (MarkShape.ARROW, [(320, 240), (448, 336)], [(448, 144)]),
        (MarkShape.LINE, [(320, 240), (445, 334)], [(448, 144)]),
        (MarkShape.BOX, [(320, 336), (448, 240), (448, 336)], [(320, 240)]),
        (MarkShape.RING, [(320, 336), (448, 240)], [(320, 240), (445, 333)]),
    ],
)
def test_draw_shapes_lie_where_they_were_put(
    shape: MarkShape, drawn: list[tuple[int, int]], empty: list[tuple[int, int]]
) -> None:
    """Points on the mark are white, points inside or beside it untouched (x, y of 640 by 480)."""
    image = _ground(128)
    draw(image, [_mark(shape, 0.3, 0.3, 0.7, 0.7)])
    assert all(image[y - 3 : y + 4, x - 3 : x + 4].max() > 240 for x, y in drawn)
    assert all((image[y - 3 : y + 4, x - 3 : x + 4] == 128).all() for x, y in empty)


def test_draw_arrow_has_its_head_at_the_second_point() -> None:
    """There is more of it around the second point than around the middle."""
    image = _ground(128)
    draw(image, [_mark(MarkShape.ARROW, 0.2, 0.5, 0.8, 0.5)])
    head, middle = (np.count_nonzero(image[200:280, x : x + 20] != 128) for x in (495, 300))
    assert head > 1.5 * middle


def test_draw_numbers_count_from_one_and_differ() -> None:
    """Each mark has its own number; a mark that is not seen keeps its own."""
    ring = _mark(MarkShape.RING, 0.5, 0.5)
    first, second, third = _ground(128), _ground(128), _ground(128)
    draw(first, [ring])
    draw(second, [None, ring])
    draw(third, [None, _mark(MarkShape.RING, 0.5, 0.5)])
    assert (first != second).any()
    assert (second == third).all()


@pytest.mark.parametrize("points", [(0.0, 0.0), (1.0, 1.0), (0.0, 1.0), (1.7, -0.4)])
@pytest.mark.parametrize("shape", list(MarkShape))
def test_draw_mark_at_the_edge_keeps_its_number_inside(shape: MarkShape, points: tuple[float, float]) -> None:
    """The whole disc stays in the picture, so that the number can be read."""
    image = _ground(128)
    draw(image, [_mark(shape, *points)])
    black = np.argwhere((image == 0).all(axis=2))
    rows, columns = np.ptp(black, axis=0)
    assert rows >= 28
    assert columns >= 28
