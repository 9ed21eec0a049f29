"""The belt housing of the drill, and what is in it."""

from collections.abc import Callable

import numpy as np
from drill_belt import End
from drill_canvas import Canvas, Colour, Solid, shaded
from drill_shapes import bar, circle, flat, plate, prism, turned

PAINT: Colour = (128, 136, 96)
METAL: Colour = (198, 194, 188)
STEEL: Colour = (168, 164, 158)
BLACK: Colour = (58, 54, 52)
RED: Colour = (52, 52, 190)

MOTOR = 200.0
"""Where the motor's shaft stands when the belt is tight; the spindle stands at 0."""
IN = 26.0
"""How far the motor can be pushed towards the spindle."""
RADII = (22.0, 31.0, 40.0, 49.0)
"""Of the belt on the four steps of a pulley."""
FOOT, RISE = 14.0, 19.0
"""Height of the pulleys' lower end, and of one step."""
_INSIDE = plate(-72, -72, 268, 72, 60)
_OUTSIDE = plate(-77, -77, 273, 77, 65)


def groove(step: int, x: float, *, largest_on_top: bool) -> End:
    """The belt's end on a step of a pulley; steps count from the top, from 0."""
    radius = RADII[3 - step] if largest_on_top else RADII[step]
    return End(x, 0.0, radius, FOOT + (3.5 - step) * RISE)


def pulley(x: float, *, largest_on_top: bool) -> list[Solid]:
    """A stepped pulley with its shaft and the screw that holds it."""
    profile: list[tuple[float, float]] = []
    for step in (3, 2, 1, 0):
        radius, low = groove(step, x, largest_on_top=largest_on_top).radius, (3 - step) * RISE
        for height, beyond in ((0.0, 5), (3.0, 5), (RISE / 2 - 2, -4), (RISE / 2 + 2, -4), (RISE - 3, 5), (RISE, 5)):
            profile.append((low + height + (0.01 if height == 0 else 0), radius + beyond))
    top = FOOT + 4 * RISE
    shaft = [(0.0, 9.0), (7.0, 9.0), (8.0, 8.0)]
    return [
        turned(x, 0, FOOT, profile, METAL),
        flat(top, lambda canvas: canvas.fill([circle(x, 0, 13)], top, shaded(METAL, 0.8))),
        turned(x, 0, top + 0.1, shaft, STEEL),
    ]


def head() -> list[Solid]:
    """What carries the housing: the pillar and the head of the drill."""
    body = plate(-62, -58, 100, 58, 30)
    return [
        turned(70, 0, -190, [(0, 30), (110, 30)], STEEL),
        prism([body], -85, 0, shaded(PAINT, 0.9)),
    ]


def tray() -> list[Solid]:
    """The open housing: floor, slot for the motor, wall."""
    slot = plate(150, -22, 232, 22, 20)
    return [
        prism([_OUTSIDE], -2, 3, PAINT),
        flat(3, lambda canvas: canvas.fill([_INSIDE], 3, shaded(PAINT, 1.22))),
        flat(3.1, lambda canvas: canvas.fill([slot], 3, (52, 50, 48))),
        flat(3.2, lambda canvas: canvas.outline(slot, 3)),
        prism([_OUTSIDE, _INSIDE], 3.3, 24, PAINT),
    ]


def floor_shadow(motor: float) -> Solid:
    """The shadow of both pulleys on the floor."""
    areas = [circle(10, 8, 58), circle(motor + 10, 8, 58)]
    return flat(3.25, lambda canvas: canvas.shadow(areas, 3, _INSIDE, soft=9, depth=0.5))


def motor(x: float) -> list[Solid]:
    """The motor below the housing, and the plate in it that slides with the motor."""
    rings: list[tuple[float, float]] = []
    for low in range(0, 96, 8):
        rings += [(low, 56), (low + 5, 56), (low + 5.1, 52.5), (low + 7.9, 52.5)]
    sheet = plate(x - 52, -54, x + 46, 54, 8)
    screws = [circle(x + side, y, 6, 24) for side, y in ((-42, -44), (-42, 44), (36, -44), (36, 44))]
    return [
        turned(x, 0, -102, [*rings, (96, 56)], (112, 108, 104), gloss=0.45),
        prism([sheet], 3.4, 7, STEEL),
        *(flat(7.1, _slot(x - 3, y)) for y in (-44, 44)),
        *(prism([screw], 7, 12, METAL) for screw in screws),
    ]


def _slot(x: float, y: float) -> Callable[[Canvas], None]:
    """A long hole in the motor's plate."""
    hole = plate(x - 24, y - 5, x + 24, y + 5, 4.9)

    def draw(canvas: Canvas) -> None:
        canvas.fill([hole], 7, (70, 68, 66))
        canvas.outline(hole, 7, 0.5)

    return draw


def lever(turn: float) -> list[Solid]:
    """The tension lever at the front of the housing; ``turn`` in degrees, 0 points to the right."""
    angle = np.radians(turn)
    pivot = (206.0, 90.0)
    end = (pivot[0] + 74 * float(np.cos(angle)), pivot[1] + 74 * float(np.sin(angle)))
    ball = [(0.0, 5.0), (2.5, 9.0), (8.0, 11.0), (13.5, 9.0), (17.0, 3.0)]
    return [
        prism([plate(191, 70, 221, 106, 12)], -8, 6, shaded(PAINT, 0.9)),
        turned(*pivot, 6, [(0, 10), (5, 10)], STEEL),
        prism([bar(pivot, end, 9)], 7, 12, STEEL),
        turned(*pivot, 12, [(0, 7), (4, 7)], METAL),
        turned(*end, 5, ball, RED, gloss=0.5),
    ]
