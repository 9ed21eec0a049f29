"""Drawing marks on a picture so that they read on any ground, in colour and in black-and-white print."""

from collections.abc import Callable, Sequence

import cv2
import numpy as np

from procbuilder.media.image import Image
from procbuilder.model.marks import Mark, MarkShape

Point = tuple[int, int]

_WHITE, _BLACK = (255, 255, 255), (0, 0, 0)
_STROKE = 150
"""The white line is the shorter side of the picture divided by this."""
_SIZE = 0.06
"""Half the extent of a mark that has one point only, as a share of the shorter side."""
_FONT = cv2.FONT_HERSHEY_SIMPLEX


def draw(image: Image, marks: Sequence[Mark | None]) -> None:
    """Draws marks into a picture, each with its number, counted from 1, in a disc.

    Lines are white with a black edge on both sides. Labels are not drawn: they are printed below.
    None stands for a mark that is not to be seen; the others keep their numbers.
    """
    placed = [(number, mark.shape, *_ends(mark, image)) for number, mark in enumerate(marks, start=1) if mark]
    for _, shape, start, end in placed:
        _outlined(image, shape, start, end)
    for number, shape, start, end in placed:
        _disc(image, number, _anchor(image, shape, start, end))


def _stroke(image: Image) -> int:
    height, width = image.shape[:2]
    return max(int(min(height, width)) // _STROKE, 2)


def _ends(mark: Mark, image: Image) -> tuple[Point, Point]:
    """The two points of a mark in pixels; a mark with one point gets a fixed size around or up to it."""
    height, width = image.shape[:2]
    xs = [round(min(max(x, 0.0), 1.0) * (width - 1)) for x in mark.points[0::2]]
    ys = [round(min(max(y, 0.0), 1.0) * (height - 1)) for y in mark.points[1::2]]
    if len(ys) > 1:
        return (xs[0], ys[0]), (xs[1], ys[1])
    size = round(_SIZE * min(width, height))
    x, y = xs[0], ys[0]
    if mark.shape is MarkShape.ARROW:
        return (x + 3 * size * (1 if x < width / 2 else -1), y + 3 * size * (1 if y < height / 2 else -1)), (x, y)
    return (x - size, y - size), (x + size, y + size)


def _outlined(image: Image, shape: MarkShape, start: Point, end: Point) -> None:
    stroke = _stroke(image)
    for colour, width in ((_BLACK, stroke * 2 + 1), (_WHITE, stroke)):
        _SHAPES[shape](image, start, end, colour, width)


def _line(image: Image, start: Point, end: Point, colour: tuple[int, int, int], width: int) -> None:
    cv2.line(image, start, end, colour, width, cv2.LINE_AA)


def _box(image: Image, start: Point, end: Point, colour: tuple[int, int, int], width: int) -> None:
    cv2.rectangle(image, start, end, colour, width, cv2.LINE_AA)


def _ring(image: Image, start: Point, end: Point, colour: tuple[int, int, int], width: int) -> None:
    centre = ((start[0] + end[0]) // 2, (start[1] + end[1]) // 2)
    axes = (abs(end[0] - start[0]) // 2, abs(end[1] - start[1]) // 2)
    cv2.ellipse(image, centre, axes, 0, 0, 360, colour, width, cv2.LINE_AA)


def _arrow(image: Image, start: Point, end: Point, colour: tuple[int, int, int], width: int) -> None:
    """A shaft and two barbs, the barbs as long as six white strokes whatever the shaft."""
    cv2.line(image, start, end, colour, width, cv2.LINE_AA)
    along = np.array(start, dtype=float) - end
    length = float(np.hypot(*along)) or 1.0
    unit = along / length * _stroke(image) * 6
    for turn in (0.5, -0.5):
        x = unit[0] * np.cos(turn) - unit[1] * np.sin(turn)
        y = unit[0] * np.sin(turn) + unit[1] * np.cos(turn)
        cv2.line(image, end, (round(end[0] + x), round(end[1] + y)), colour, width, cv2.LINE_AA)


_SHAPES: dict[MarkShape, Callable[[Image, Point, Point, tuple[int, int, int], int], None]] = {
    MarkShape.ARROW: _arrow,
    MarkShape.RING: _ring,
    MarkShape.BOX: _box,
    MarkShape.LINE: _line,
}


def _radius(image: Image) -> int:
    return _stroke(image) * 5


def _anchor(image: Image, shape: MarkShape, start: Point, end: Point) -> Point:
    """Where the number goes: at the tail of an arrow or line, at the upper left of a ring or box."""
    if shape in (MarkShape.ARROW, MarkShape.LINE):
        x, y = start
    else:
        x, y = min(start[0], end[0]), min(start[1], end[1])
    edge = _radius(image) + _stroke(image)
    height, width = image.shape[:2]
    return min(max(x, edge), max(width - edge, edge)), min(max(y, edge), max(height - edge, edge))


def _disc(image: Image, number: int, centre: Point) -> None:
    radius, stroke = _radius(image), _stroke(image)
    cv2.circle(image, centre, radius + stroke, _WHITE, cv2.FILLED, cv2.LINE_AA)
    cv2.circle(image, centre, radius, _BLACK, cv2.FILLED, cv2.LINE_AA)
    text, thick = str(number), max(stroke * 3 // 4, 1)
    scale = radius / 18 / max(len(text) * 0.75, 1)
    (width, height), _ = cv2.getTextSize(text, _FONT, scale, thick)
    corner = (centre[0] - width // 2, centre[1] + height // 2)
    cv2.putText(image, text, corner, _FONT, scale, _WHITE, thick, cv2.LINE_AA)
