"""The cover of the belt housing, closed and open, with its knobs and its chart of steps."""

from collections.abc import Callable, Sequence

import cv2
import numpy as np
from drill_canvas import INK, TILT, Canvas, Colour, Points, Solid, shaded
from drill_parts import BLACK, METAL, PAINT, STEEL
from drill_shapes import circle, flat, growing, plate, prism

KNOBS = (20.0, 140.0)
"""Where the two knobs stand along the front."""
_FRONT = 98.0
_YELLOW: Colour = (60, 205, 245)
_PAPER: Colour = (236, 240, 240)


def closed_cover() -> list[Solid]:
    """The cover over the pulleys, held by its two knobs."""

    def plan(z: float) -> Sequence[Points]:
        draft = max(z - 88, 0) ** 2 / 18
        return [plate(-79 + draft, -79 + draft, 275 - draft, 79 - draft, 65 - draft / 2)]

    knobs = [solid for x in KNOBS for solid in _knob(x)]
    return [growing(plan, 25, 104, PAINT), flat(104.2, _warning), *knobs]


def _warning(canvas: Canvas) -> None:
    """A warning triangle on the cover."""
    for reach, colour in ((34.0, INK), (29.0, _YELLOW)):
        turn = np.radians([-90, 30, 150])
        canvas.fill([np.stack([98 + reach * np.cos(turn), 4 + reach * np.sin(turn)], axis=1)], 104, colour)
    canvas.fill([plate(95.5, -13, 100.5, 7, 2.4)], 104, INK)
    canvas.fill([circle(98, 12, 3, 24)], 104, INK)


def lugs() -> list[Solid]:
    """The lugs of the housing into which the knobs screw."""
    return [solid for x in KNOBS for solid in (_lug(x, 10, 18), flat(18.1, _hole(x)))]


def _lug(x: float, low: float, high: float) -> Solid:
    return prism([plate(x - 18, 66, x + 18, _FRONT + 19, 14)], low, high, shaded(PAINT, 0.95))


def _hole(x: float) -> Callable[[Canvas], None]:
    return lambda canvas: canvas.fill([circle(x, _FRONT, 4, 24)], 18, BLACK)


def _knob(x: float) -> list[Solid]:
    """A star knob on a lug of the cover, which lies on the lug of the housing."""
    turn = np.linspace(0, 2 * np.pi, 120, endpoint=False)
    reach = 13 + 2.2 * np.cos(6 * turn)
    star = np.stack([x + reach * np.cos(turn), _FRONT + reach * np.sin(turn)], axis=1)
    return [
        _lug(x, 10, 18),
        _lug(x, 18.5, 25),
        prism([circle(x, _FRONT, 7)], 25, 29, METAL),
        prism([star], 29, 42, BLACK, gloss=0.6),
    ]


def open_cover() -> list[Solid]:
    """The cover swung up behind the housing, its hollow side to the front."""
    back, front = -176.0, -100.0

    def sides(z: float) -> tuple[float, float]:
        corner = max(58 - (z - 22), 0)
        inset = 58 - float(np.sqrt(58**2 - corner**2))
        return -77 + inset, 273 - inset

    def plan(z: float) -> Sequence[Points]:
        left, right = sides(z)
        if z < 28:
            return [_box(left, back, right, front)]
        return [_box(left, back, left + 6, front), _box(right - 6, back, right, front),
                _box(left, back, right, back + 6)]  # fmt: skip

    hinges = [prism([_box(x - 16, -102, x + 16, -74)], 12, 24, STEEL) for x in (20, 176)]
    shell = growing(plan, 22, 190, shaded(PAINT, 1.12), gloss=0.1)
    return [shell, *hinges, _edges(sides, front), flat(100, _chart)]


def _edges(sides: Callable[[float], tuple[float, float]], front: float) -> Solid:
    """Ink along the rim of the open cover, slice by slice, so that what stands before it hides it."""

    def paint(canvas: Canvas, z: float) -> None:
        for inner, foot in ((0.0, 22.0), (6.0, 28.0)):
            if z < foot:
                continue
            lower, upper = sides(z), sides(z + canvas.step)
            for side, inward in ((0, inner), (1, -inner)):
                pair = np.array([[lower[side] + inward, front], [upper[side] + inward, front]])
                canvas.outline(pair, z, closed=False)
            if z < foot + canvas.step:
                canvas.outline(np.array([[lower[0] + inner, front], [lower[1] - inner, front]]), z, closed=False)

    return Solid(22, 190, paint)


def _chart(canvas: Canvas) -> None:
    """The chart inside the cover: both pulleys from the side, their steps numbered from the top."""
    wall, low = -170.0, 24.0

    def put(corners: Sequence[tuple[float, float]], colour: Colour) -> None:
        points = np.array(corners, dtype=float)
        flat_points = np.stack([points[:, 0], np.full(len(points), wall)], axis=1)
        cv2.fillPoly(canvas.image, [canvas.place(flat_points, low + points[:, 1] / TILT)], colour)

    put([(38, 0), (158, 0), (158, 50), (38, 50)], INK)
    put([(39, 1), (157, 1), (157, 49), (39, 49)], _PAPER)
    for step in range(4):
        bottom = 37 - step * 10
        for middle, half in ((70, 8 + step * 4), (126, 20 - step * 4)):
            put([(middle - half, bottom), (middle + half, bottom), (middle + half, bottom + 8),
                 (middle - half, bottom + 8)], (150, 146, 140))  # fmt: skip
        put([(70, bottom + 3), (126, bottom + 3), (126, bottom + 5), (70, bottom + 5)], INK)
        spot = canvas.place(np.array([[40.8, wall]]), low + (bottom + 0.5) / TILT)[0]
        cv2.putText(canvas.image, str(step + 1), spot.tolist(), cv2.FONT_HERSHEY_SIMPLEX, canvas.scale / 2.9, INK,
                    canvas.thick(0.9), cv2.LINE_AA)  # fmt: skip


def _box(left: float, back: float, right: float, front: float) -> Points:
    return np.array([[left, back], [right, back], [right, front], [left, front]], dtype=float)
