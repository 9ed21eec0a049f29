"""What is drawn beside the parts: arrows, the line of the belt at rest, the pulled plug with its tag."""

import cv2
import numpy as np
from drill_canvas import INK, TILT, Canvas, Colour, Image, Points, Solid, View
from drill_shapes import bar, circle, flat, plate, prism

_SIGN: Colour = (30, 110, 240)
_WHITE: Colour = (250, 250, 250)
_GREY: Colour = (92, 88, 86)
_ABOVE = 230.0
"""Painted after everything else."""
Spot = tuple[float, float, float]


def arrow(start: Spot, end: Spot, width: float = 9.0) -> Solid:
    """A broad arrow between two points of the scene, drawn over everything."""

    def draw(canvas: Canvas) -> None:
        tail, tip = (np.array([x, (y - z) * TILT]) for x, y, z in (start, end))
        along = (tip - tail) / np.hypot(*(tip - tail))
        side = np.array([-along[1], along[0]]) * width / 2
        neck = tip - along * width * 1.5
        shape = np.array(
            [tail + side, neck + side, neck + 2.2 * side, tip, neck - 2.2 * side, neck - side, tail - side]
        )
        shape[:, 1] /= TILT
        canvas.fill([shape], 0, _SIGN)
        canvas.outline(shape, 0, 2.2, _WHITE)
        canvas.outline(shape, 0, 0.6, INK)

    return flat(_ABOVE, draw)


def dashes(start: Spot, end: Spot, pieces: int = 15) -> Solid:
    """A dashed line over everything, between two points at one height."""

    def draw(canvas: Canvas) -> None:
        share = np.linspace(0, 1, 2 * pieces)[:, None]
        line = np.array(start) + (np.array(end) - np.array(start)) * share
        for piece in range(pieces):
            pair = line[2 * piece : 2 * piece + 2, :2]
            canvas.outline(pair, start[2], 2.0, _WHITE, closed=False)
            canvas.outline(pair, start[2], 1.1, _SIGN, closed=False)

    return flat(_ABOVE - 1, draw)


def plug_picture(size: tuple[int, int]) -> Image:
    """The mains plug, pulled, on a bench, with a tag on its cable."""
    canvas = Canvas(size, View(across=12, down=2, width=236))
    cable = _cable()
    tag = plate(30, -14, 112, 46, 6)
    body = np.array([[-62, -19], [-14, -19], [10, -7], [10, 7], [-14, 19], [-62, 19]], dtype=float)
    ground = plate(-400, -400, 400, 400, 1)
    canvas.fill([ground], 0, (206, 214, 218))
    canvas.shadow([body + 5, tag + 4, _stroke(cable + 4, 8)], 0, ground, soft=4, depth=0.45)
    pins = [bar((-98, y), (-60, y), 6) for y in (-10, 10)]
    canvas.paint(
        [
            *(prism([pin], 10, 15, (190, 200, 206)) for pin in pins),
            prism([_stroke(cable, 8)], 8, 16, _GREY, gloss=0.4),
            prism([body], 1, 25, _GREY, gloss=0.4),
            prism([plate(-62, -23, -54, 23, 4)], 0, 28, _GREY, gloss=0.4),
            prism([tag], 16.5, 18, _WHITE, gloss=0.0),
            flat(18.2, _tag_face),
        ]
    )
    return canvas.finished()


def _cable() -> Points:
    along = np.linspace(0, 1, 80)
    return np.stack([8 + 190 * along, 34 * np.sin(along * 5.2) * along], axis=1)


def _stroke(line: Points, width: float) -> Points:
    """The outline of a line drawn with a broad pen."""
    along = np.gradient(line, axis=0)
    side = np.stack([-along[:, 1], along[:, 0]], axis=1) / np.hypot(*along.T)[:, None] * width / 2
    outline: Points = np.concatenate([line + side, (line - side)[::-1]])
    return outline


def _tag_face(canvas: Canvas) -> None:
    """Red head with a bar, and lines as of handwriting."""
    canvas.fill([plate(33, -11, 109, 12, 4)], 18, (48, 48, 200))
    canvas.fill([circle(45, 0.5, 5)], 18, (206, 214, 218))
    canvas.outline(circle(45, 0.5, 5), 18, 0.5)
    spot = canvas.place(np.array([[55.0, 6.0]]), 18)[0]
    cv2.putText(canvas.image, "OFF", spot.tolist(), cv2.FONT_HERSHEY_DUPLEX, canvas.scale / 1.75, _WHITE,
                canvas.thick(1.6), cv2.LINE_AA)  # fmt: skip
    for row, end in ((22.0, 102.0), (30.0, 92.0), (38.0, 98.0)):
        canvas.outline(np.array([[38.0, row], [end, row]]), 18, 0.9, (120, 110, 100), closed=False)
    cord = np.array([[45.0, 0.5], [40.0, -8.0], [33.0, -12.0], [26.0, -4.0], [29.0, 5.0]])
    canvas.outline(cord, 18, 1.4, (70, 90, 110), closed=False)


def inset(picture: Image, small: Image, corner: tuple[int, int]) -> None:
    """Set a small picture into a larger one, in a white frame."""
    x, y = corner
    height, width = small.shape[:2]
    cv2.rectangle(picture, (x - 6, y - 6), (x + width + 5, y + height + 5), _WHITE, cv2.FILLED)
    cv2.rectangle(picture, (x - 6, y - 6), (x + width + 5, y + height + 5), INK, 1, cv2.LINE_AA)
    picture[y : y + height, x : x + width] = small
