"""How marks are laid out on a picture: once for the page, the print and the clips, so that all show the same.

Lengths are in units of which the longer side of the picture has 1000, so that a mark looks alike at any size.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from textwrap import wrap

from procbuilder.model.marks import Box, Mark, MarkShape

UNITS = 1000
LINE = 5
"""Width of a line, which is dark."""
HALO = 13
"""Width of the light line under it: one of the two stands out from any ground."""
EDGE = 6
"""Width of the light edge of a letter."""
LETTERS = 40
"""Size of type of a label."""
LEADING = 46
"""From one line of a label to the next."""

_SIZE = 34
"""Half the extent of a mark that has one point only."""
_BARB, _TURN = 34, 0.5
"""Length of the barbs of an arrow, and their angle from its shaft."""
_SHARE = 0.5
"""Of the width of the picture that a line of a label may take."""
_LETTER = 0.6
"""Mean width of a letter, as a share of the size of type; a little more than that of most."""
_RISE = 0.85
"""From the foot of the letters to the top of the line, as a share of the size of type."""
_GAP = 16
"""Between a mark and its label."""
_MARGIN = 8
_NEVER = 4
"""How much worse it is to write over another label than over a line."""
_LATER = 400
"""What each next side costs, as an area: the first one is taken unless something is in the way."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Ring:
    """An ellipse along the sides of the picture."""

    x: float
    y: float
    across: float
    """Half its width."""
    down: float


class Anchor(StrEnum):
    """The part of a line of letters that is held fast."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True)
class Words:
    """A label, written at its mark."""

    lines: tuple[str, ...]
    x: float
    y: float
    """Foot of the letters of the first line."""
    anchor: Anchor = Anchor.MIDDLE
    """Which part of each line lies at x: letters that turn out wider grow away from it."""


@dataclass(frozen=True, slots=True)
class DrawnMark:
    """One mark, ready to be drawn."""

    paths: tuple[tuple[Point, ...], ...]
    """Lines from point to point."""
    ring: Ring | None
    words: Words | None


@dataclass(frozen=True, slots=True)
class Drawing:
    """All marks of a picture of this width and height."""

    width: float
    height: float
    marks: tuple[DrawnMark, ...]


def layout(marks: Sequence[Mark], width: int, height: int) -> Drawing:
    """Where lines and words of the marks of a picture go; width and height are its pixels.

    Each label stands beside its own mark, inside the picture, and off the other labels where there is room.
    """
    scale = UNITS / max(width, height)
    size = (width * scale, height * scale)
    drawn: list[DrawnMark] = []
    for mark in marks:
        ends = _ends(mark, size)
        drawn.append(DrawnMark(_paths(mark.shape, *ends), _ring(mark.shape, *ends), None))
    busy = [Box(x - _GAP / 2, y - _GAP / 2, x + _GAP / 2, y + _GAP / 2) for one in drawn for x, y in _outline(one)]
    for at, mark in enumerate(marks):
        if words := _words(mark, *_ends(mark, size), size, busy):
            busy += [_room(words)] * _NEVER
            drawn[at] = replace(drawn[at], words=words)
    return Drawing(*size, tuple(drawn))


def _ends(mark: Mark, size: Point) -> tuple[Point, Point]:
    """The two points of a mark; one that has a single point gets a fixed size around or up to it."""
    xs = [min(max(x, 0.0), 1.0) * size[0] for x in mark.points[0::2]]
    ys = [min(max(y, 0.0), 1.0) * size[1] for y in mark.points[1::2]]
    if len(ys) > 1:
        return (xs[0], ys[0]), (xs[1], ys[1])
    x, y = xs[0], ys[0]
    if mark.shape is MarkShape.ARROW:
        return (
            x + 3 * _SIZE * (1 if x < size[0] / 2 else -1),
            y + 3 * _SIZE * (1 if y < size[1] / 2 else -1),
        ), (x, y)
    return (x - _SIZE, y - _SIZE), (x + _SIZE, y + _SIZE)


def _paths(shape: MarkShape, start: Point, end: Point) -> tuple[tuple[Point, ...], ...]:
    (x, y), (x2, y2) = start, end
    match shape:
        case MarkShape.RING:
            return ()
        case MarkShape.BOX:
            return (((x, y), (x2, y), (x2, y2), (x, y2), (x, y)),)
        case MarkShape.ARROW:
            back = math.atan2(y - y2, x - x2)
            one, other = ((x2 + _BARB * math.cos(back + t), y2 + _BARB * math.sin(back + t)) for t in (_TURN, -_TURN))
            return ((start, end), (one, end, other))
    return ((start, end),)


def _ring(shape: MarkShape, start: Point, end: Point) -> Ring | None:
    if shape is not MarkShape.RING:
        return None
    (x, y), (x2, y2) = start, end
    return Ring((x + x2) / 2, (y + y2) / 2, abs(x2 - x) / 2, abs(y2 - y) / 2)


def _outline(mark: DrawnMark) -> Iterator[Point]:
    """Points along the lines of a mark, close enough that no label slips between them."""
    for (x, y), (x2, y2) in (pair for path in mark.paths for pair in pairwise(path)):
        count = max(round(math.dist((x, y), (x2, y2)) / _GAP), 1)
        yield from ((x + (x2 - x) * i / count, y + (y2 - y) * i / count) for i in range(count + 1))
    if ring := mark.ring:
        count = max(round(2 * math.pi * max(ring.across, ring.down) / _GAP), 8)
        for turn in (2 * math.pi * i / count for i in range(count)):
            yield ring.x + ring.across * math.cos(turn), ring.y + ring.down * math.sin(turn)


def _words(mark: Mark, start: Point, end: Point, size: Point, busy: Sequence[Box]) -> Words | None:
    """The label at the tail of an arrow or line, or beside a ring or box, where the least is in its way."""
    lines = tuple(wrap(mark.label, max(int(size[0] * _SHARE / LETTERS / _LETTER), 8)))
    if not lines:
        return None
    best, least = None, math.inf
    for rank, spot in enumerate(_spots(lines, mark.shape, start, end)):
        words, moved = _inside(spot, size)
        cost = rank * _LATER + moved + sum(_shared(_room(words), box) for box in busy)
        if cost < least:
            best, least = words, cost
    return best


def _spots(lines: tuple[str, ...], shape: MarkShape, start: Point, end: Point) -> Iterator[Words]:
    """Above, below, right and left; at an arrow first what lies away from its head."""
    open_ended = shape in (MarkShape.ARROW, MarkShape.LINE)
    left, right = sorted((start[0], start[0] if open_ended else end[0]))
    top, bottom = sorted((start[1], start[1] if open_ended else end[1]))
    wide, high = _extent(lines)
    across, down = (left + right) / 2, (top + bottom) / 2
    spots = [
        (across, top - _GAP - high / 2, Anchor.MIDDLE),
        (across, bottom + _GAP + high / 2, Anchor.MIDDLE),
        (right + _GAP + wide / 2, down, Anchor.START),
        (left - _GAP - wide / 2, down, Anchor.END),
    ]
    if open_ended:
        spots.sort(key=lambda spot: _away(spot[:2], start, end), reverse=True)
    for x, y, anchor in spots:
        yield _anchored(Words(lines, x, y - high / 2 + LETTERS * _RISE), anchor)


def _away(spot: Point, start: Point, end: Point) -> float:
    """How squarely a spot lies on the far side of the start, seen from the end: 1 is right behind it."""
    length = math.dist(start, end) * math.dist(spot, start) or 1.0
    return ((spot[0] - start[0]) * (start[0] - end[0]) + (spot[1] - start[1]) * (start[1] - end[1])) / length


def _extent(lines: Sequence[str]) -> tuple[float, float]:
    return max(map(len, lines)) * LETTERS * _LETTER, (len(lines) - 1) * LEADING + LETTERS


_ANCHORED = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}


def _room(words: Words) -> Box:
    wide, high = _extent(words.lines)
    left, top = words.x - wide * _ANCHORED[words.anchor], words.y - LETTERS * _RISE
    return Box(left, top, left + wide, top + high)


def _anchored(words: Words, anchor: Anchor) -> Words:
    """The same words at the same place, held at another part."""
    wide, _ = _extent(words.lines)
    return replace(words, x=words.x + wide * (_ANCHORED[anchor] - _ANCHORED[words.anchor]), anchor=anchor)


def _inside(words: Words, size: Point) -> tuple[Words, float]:
    """The same words moved into the picture, and what moving them that far costs."""
    room = _room(words)
    right = max(_MARGIN - room.left, 0) or min(size[0] - _MARGIN - room.right, 0)
    down = max(_MARGIN - room.top, 0) or min(size[1] - _MARGIN - room.bottom, 0)
    moved = replace(words, x=words.x + right, y=words.y + down)
    held = Anchor.START if right > 0 else Anchor.END if right < 0 else words.anchor
    return _anchored(moved, held), (abs(right) + abs(down)) * _MARGIN


def _shared(one: Box, other: Box) -> float:
    """The area that two boxes have in common."""
    across = min(one.right, other.right) - max(one.left, other.left)
    down = min(one.bottom, other.bottom) - max(one.top, other.top)
    return max(across, 0) * max(down, 0)
