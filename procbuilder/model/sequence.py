"""In which order the fasteners of a joint are tightened, worked out from how they lie.

A circle is tightened in opposite pairs; a plate, cover or head from the middle outwards. Both are common practice, and
the maker's own order comes first wherever there is one.
"""

import math
from dataclasses import dataclass
from enum import StrEnum

FEWEST, MOST = 3, 64
"""With fewer there is no order to keep; more could not be read on a picture."""


class Shape(StrEnum):
    """How the fasteners lie."""

    CIRCLE = "circle"
    ROWS = "rows"


@dataclass(frozen=True, slots=True)
class Sequence:
    """Fasteners with their turns."""

    shape: Shape
    columns: int
    """Fasteners in a row; in a circle all of them."""
    order: tuple[int, ...]
    """Numbers of the fasteners in the order of tightening. They are numbered from 1: clockwise from the top in a
    circle, row by row from the top left otherwise."""

    @property
    def turns(self) -> tuple[int, ...]:
        """For each fastener in its place: as which one it is tightened."""
        return tuple(self.order.index(number) + 1 for number in range(1, len(self.order) + 1))

    @property
    def places(self) -> tuple[tuple[float, float], ...]:
        """For each fastener its place on a picture, from 0 to 1 to the right and downwards."""
        count = len(self.order)
        if self.shape is Shape.CIRCLE:
            angles = (2 * math.pi * number / count for number in range(count))
            return tuple((0.5 + 0.5 * math.sin(angle), 0.5 - 0.5 * math.cos(angle)) for angle in angles)
        rows = count // self.columns
        return tuple(
            (_share(number % self.columns, self.columns), _share(number // self.columns, rows))
            for number in range(count)
        )


def star(count: int) -> Sequence:
    """Crosswise over a circle: each fastener, then the one opposite, then the two a quarter on where there are such.

    Raises:
        ValueError: fewer than 3 or more than 64 fasteners.
    """
    _countable(count)
    parts = 4 if count % 4 == 0 else 2 if count % 2 == 0 else 1
    across = {4: (0, count // 2, count // 4, 3 * count // 4), 2: (0, count // 2), 1: (0,)}[parts]
    order = tuple(start + offset + 1 for start in _spread(count // parts) for offset in across)
    return Sequence(Shape.CIRCLE, count, order)


def spiral(rows: int, columns: int) -> Sequence:
    """From the middle outwards; of those that lie equally far each one is followed by the one opposite.

    Raises:
        ValueError: fewer than 3 or more than 64 fasteners.
    """
    count = rows * columns
    _countable(count)
    left = sorted(range(count), key=lambda number: (_from_middle(number, rows, columns), number))
    order: list[int] = []
    while left:
        first = left.pop(0)
        order.append(first + 1)
        opposite = count - 1 - first
        if opposite in left:
            left.remove(opposite)
            order.append(opposite + 1)
    return Sequence(Shape.ROWS, columns, tuple(order))


def _countable(count: int) -> None:
    if not FEWEST <= count <= MOST:
        raise ValueError(f"{count} fasteners are not {FEWEST} to {MOST}")


def _spread(count: int) -> list[int]:
    """The numbers below ``count`` so that neighbours follow each other as late as may be: 0 2 4 1 3."""
    step, at, found = max(1, count // 2), 0, list[int]()
    for _ in range(count):
        while at in found:
            at = (at + 1) % count
        found.append(at)
        at = (at + step) % count
    return found


def _from_middle(number: int, rows: int, columns: int) -> tuple[int, int]:
    """Twice the distance from the middle, along the longer side first, as whole numbers."""
    across, down = abs(2 * (number % columns) - (columns - 1)), abs(2 * (number // columns) - (rows - 1))
    return (across, down) if columns >= rows else (down, across)


def _share(number: int, count: int) -> float:
    return number / (count - 1) if count > 1 else 0.5
