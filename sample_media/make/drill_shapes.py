"""Solids of slices: upright prisms, turned parts, belts; and marks that lie flat on them."""

from collections.abc import Callable, Sequence

import cv2
import numpy as np
from drill_canvas import INK, Canvas, Colour, Points, Solid, shaded


def circle(x: float, y: float, radius: float, points: int = 96) -> Points:
    """A circle in the plane."""
    turn = np.linspace(0, 2 * np.pi, points, endpoint=False)
    return np.stack([x + radius * np.cos(turn), y + radius * np.sin(turn)], axis=1)


def plate(left: float, back: float, right: float, front: float, corner: float) -> Points:
    """A rectangle with round corners."""
    quarter = np.linspace(0, np.pi / 2, 24)
    middles = [(right - corner, front - corner), (left + corner, front - corner),
               (left + corner, back + corner), (right - corner, back + corner)]  # fmt: skip
    arcs = [
        np.stack([x + corner * np.cos(quarter + i * np.pi / 2), y + corner * np.sin(quarter + i * np.pi / 2)], axis=1)
        for i, (x, y) in enumerate(middles)
    ]
    return np.concatenate(arcs)


def bar(start: tuple[float, float], end: tuple[float, float], width: float) -> Points:
    """A straight bar with round ends."""
    x, y = end[0] - start[0], end[1] - start[1]
    turn = np.arctan2(y, x)
    half = np.linspace(np.pi / 2, 3 * np.pi / 2, 14)
    ends = [(start, half + turn), (end, half + turn + np.pi)]
    return np.concatenate(
        [np.stack([p[0] + width / 2 * np.cos(a), p[1] + width / 2 * np.sin(a)], axis=1) for p, a in ends]
    )


def prism(contours: Sequence[Points], low: float, high: float, colour: Colour, *, gloss: float = 0.25) -> Solid:
    """An upright body over a plan; further contours are holes through it."""
    return growing(lambda _z: contours, low, high, colour, gloss=gloss)


def growing(
    plan: Callable[[float], Sequence[Points]], low: float, high: float, colour: Colour, *, gloss: float = 0.25
) -> Solid:
    """An upright body whose plan changes with its height."""

    def paint(canvas: Canvas, z: float) -> None:
        contours = plan(z)
        if z + canvas.step >= high:
            canvas.fill(contours, z, shaded(colour, 1.08))
            for contour in contours:
                canvas.outline(contour, z)
            return
        canvas.fill(contours, z, shaded(colour, 0.72))
        for index, contour in enumerate(contours):
            _rim(canvas, contour, z, colour, gloss, front=not index)

    return Solid(low, high, paint)


def _rim(
    canvas: Canvas, contour: Points, z: float, colour: Colour, gloss: float, *, front: bool = True, ends: bool = True
) -> None:
    """The edge of one slice, lighter where it faces the light, with ink where the body ends left and right.

    Only its front half is drawn, of a hole the half at the back: nothing else of a wall is seen.
    """
    pixels = canvas.place(contour, z)
    along = np.roll(contour, -1, axis=0) - contour
    facing = np.arctan2(-along[:, 0], along[:, 1])
    light = 0.72 + gloss * (np.clip(np.cos(facing - 2.2), 0, 1) ** 4 + 0.5 * np.clip(np.cos(facing - 0.9), 0, 1) ** 8)
    seen = np.flatnonzero((along[:, 0] <= 0) if front else (along[:, 0] >= 0))
    for here, there, one in zip(pixels[seen], np.roll(pixels, -1, axis=0)[seen], light[seen], strict=True):
        cv2.line(canvas.image, here.tolist(), there.tolist(), shaded(colour, float(one)), 5)
    if not ends:
        return
    for end in pixels[np.argmin(pixels @ np.array([[1000, -1000], [-1, -1]]), axis=0)]:
        cv2.circle(canvas.image, end.tolist(), canvas.thick(0.35), INK, cv2.FILLED)


def turned(
    x: float, y: float, low: float, profile: Sequence[tuple[float, float]], colour: Colour, *, gloss: float = 0.6
) -> Solid:
    """A body turned on a lathe; its profile is (height above its foot, radius) from the bottom up."""
    heights, radii = (np.array(values) for values in zip(*profile, strict=True))

    def paint(canvas: Canvas, z: float) -> None:
        radius = float(np.interp(z - low, heights, radii))
        contour = circle(x, y, radius)
        above = float(np.interp(z - low + canvas.step, heights, radii))
        _rim(canvas, contour, z, colour, gloss, ends=above == radius)
        at_top = z + canvas.step >= low + heights[-1]
        if at_top or above < radius:
            _brushed(canvas, contour, (x, y), z, colour)
        if at_top or above < radius - 1:
            canvas.outline(contour, z, 0.55)

    return Solid(low, low + float(heights[-1]), paint)


def _brushed(canvas: Canvas, contour: Points, middle: tuple[float, float], z: float, colour: Colour) -> None:
    """A flat turned face: two bright fans across it."""
    inner = np.array(middle) + (contour - middle) * (1 - 5 / (canvas.scale * max(float(np.ptp(contour[:, 0])) / 2, 1)))
    canvas.fill([inner], z, shaded(colour, 1.0))
    centre = canvas.place(np.array([middle]), z)[0]
    pixels = canvas.place(inner, z)
    turn = np.arctan2(contour[:, 1] - middle[1], contour[:, 0] - middle[0])
    light = 0.93 + 0.2 * np.clip(np.cos(2 * (turn - 2.5)), 0, 1) ** 3
    for here, there, one in zip(pixels, np.roll(pixels, -1, axis=0), light, strict=True):
        cv2.fillConvexPoly(canvas.image, np.stack([centre, here, there]), shaded(colour, float(one)))


def flat(z: float, draw: Callable[[Canvas], None]) -> Solid:
    """Something without thickness, drawn once at a height."""

    def paint(canvas: Canvas, _z: float) -> None:
        draw(canvas)

    return Solid(z, z, paint)
