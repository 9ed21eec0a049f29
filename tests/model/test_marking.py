"""Where marks and their labels go."""

import math
from collections.abc import Sequence

import pytest

from procbuilder.model.marking import LEADING, LETTERS, Anchor, Drawing, Words, layout
from procbuilder.model.marks import Box, Mark, MarkShape, Picture, PictureState
from procbuilder.model.origin import Place

HERE = Place("procedure.md", 1)


def _mark(shape: MarkShape, *points: float, label: str = "") -> Mark:
    return Mark(shape, points, label, HERE)


def _room(words: Words) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of letters that are half as wide as high, as those of most typefaces are."""
    wide = max(map(len, words.lines)) * LETTERS / 2
    left = words.x - wide * {Anchor.START: 0, Anchor.MIDDLE: 0.5, Anchor.END: 1}[words.anchor]
    return left, words.y - LETTERS * 0.7, left + wide, words.y + LEADING * (len(words.lines) - 1) + LETTERS * 0.2


def _labels(drawing: Drawing) -> list[Words]:
    return [mark.words for mark in drawing.marks if mark.words]


@pytest.mark.parametrize(("width", "height"), [(1280, 720), (640, 360), (720, 1280)])
def test_fractions_of_the_picture_become_the_same_fractions_of_the_drawing(width: int, height: int) -> None:
    """The longer side has 1000 units, whatever its pixels."""
    drawing = layout([_mark(MarkShape.LINE, 0.25, 0.5, 0.75, 1.0)], width, height)
    assert max(drawing.width, drawing.height) == 1000
    assert drawing.width / drawing.height == pytest.approx(width / height)
    (path,) = drawing.marks[0].paths
    shares = [(x / drawing.width, y / drawing.height) for x, y in path]
    assert shares == [pytest.approx((0.25, 0.5)), pytest.approx((0.75, 1.0))]


def test_an_arrow_ends_at_its_second_point_with_barbs_on_both_sides_of_the_shaft() -> None:
    drawing = layout([_mark(MarkShape.ARROW, 0.2, 0.5, 0.8, 0.5)], 1000, 500)
    shaft, (one, tip, other) = drawing.marks[0].paths
    assert shaft == ((200, 250), (800, 250))
    assert tip == (800, 250)
    assert one[0] == pytest.approx(other[0]) == pytest.approx(800 - 34 * math.cos(0.5))
    assert (one[1] - 250) == pytest.approx(-(other[1] - 250))


def test_a_ring_of_one_point_has_a_fixed_size_around_it() -> None:
    ring = layout([_mark(MarkShape.RING, 0.5, 0.5)], 1280, 720).marks[0].ring
    assert ring
    assert (ring.x, ring.y, ring.across, ring.down) == (500, 281.25, 34, 34)


@pytest.mark.parametrize(
    ("points", "side"),
    [((0.5, 0.5, 0.4, 0.5), "right"), ((0.5, 0.5, 0.6, 0.5), "left"),
     ((0.5, 0.5, 0.5, 0.7), "above"), ((0.5, 0.5, 0.5, 0.3), "below")],
)  # fmt: skip
def test_the_label_of_an_arrow_stands_behind_its_tail(points: tuple[float, ...], side: str) -> None:
    (words,) = _labels(layout([_mark(MarkShape.ARROW, *points, label="eye")], 1000, 1000))
    left, top, right, bottom = _room(words)
    assert {"right": left > 500, "left": right < 500, "above": bottom < 500, "below": top > 500}[side]


@pytest.mark.parametrize("x", [0.0, 0.1, 0.5, 0.9, 1.0])
@pytest.mark.parametrize("y", [0.0, 0.1, 0.5, 0.9, 1.0])
@pytest.mark.parametrize("shape", list(MarkShape))
def test_labels_stay_inside_the_picture(shape: MarkShape, x: float, y: float) -> None:
    drawing = layout([_mark(shape, x, y, 1 - x, y, label="slot and hole in line with each other")], 720, 1280)
    (words,) = _labels(drawing)
    left, top, right, bottom = _room(words)
    assert left >= 0
    assert top >= 0
    assert right <= drawing.width
    assert bottom <= drawing.height


def _apart(rooms: Sequence[tuple[float, float, float, float]]) -> bool:
    pairs = [(a, b) for i, a in enumerate(rooms) for b in rooms[i + 1 :]]
    return all(a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1] for a, b in pairs)


def test_labels_of_marks_close_together_do_not_cover_each_other() -> None:
    """Four nuts of a wheel, numbered, and two knobs side by side."""
    rings = [(0.48, 0.33, 0.54, 0.42), (0.38, 0.50, 0.44, 0.59), (0.38, 0.33, 0.44, 0.42), (0.48, 0.50, 0.54, 0.59)]
    marks = [_mark(MarkShape.RING, *ring, label=f"nut {number}") for number, ring in enumerate(rings, 1)]
    marks += [_mark(MarkShape.RING, x, 0.8, label="left knob") for x in (0.40, 0.52)]
    labels = _labels(layout(marks, 640, 360))
    assert len(labels) == 6
    assert _apart([_room(words) for words in labels])


def test_a_mark_outside_the_crop_is_left_out_and_the_others_are_in_fractions_of_it() -> None:
    marks = (_mark(MarkShape.RING, 0.1, 0.1), _mark(MarkShape.LINE, 0.7, 0.5, 0.8, 0.5))
    picture = Picture(HERE, "strip", None, "", "", PictureState.DONE, marks, (), Box(0.5, 0, 1, 1))
    (left,) = picture.seen_marks
    assert left.points == pytest.approx((0.4, 0.5, 0.6, 0.5))
