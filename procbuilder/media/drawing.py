"""Drawing marks into a picture so that they read on any ground, in colour and in black-and-white print."""

from collections.abc import Sequence

import cv2
import numpy as np

from procbuilder.media.image import Image
from procbuilder.media.lettering import face, paper, picture, write
from procbuilder.model.marking import EDGE, HALO, LEADING, LETTERS, LINE, UNITS, Anchor, DrawnMark, layout
from procbuilder.model.marks import Mark

_LIGHT, _DARK = (255, 255, 255), (17, 17, 17)
_ANCHORS = {Anchor.START: "ls", Anchor.MIDDLE: "ms", Anchor.END: "rs"}
"""How Pillow calls them, on the foot of the letters."""
_FINE = 4
"""Binary digits behind the point of a coordinate."""


def draw(image: Image, marks: Sequence[Mark]) -> None:
    """Draws marks with their labels into the picture itself: dark lines and letters with a light edge."""
    height, width = image.shape[:2]
    drawn = layout(marks, width, height).marks
    scale = max(width, height) / UNITS
    for colour, units in ((_LIGHT, HALO), (_DARK, LINE)):
        for mark in drawn:
            _lines(image, mark, scale, colour, max(round(units * scale), 1))
    if any(mark.words for mark in drawn):
        image[:] = _labelled(image, drawn, scale)


def _lines(image: Image, mark: DrawnMark, scale: float, colour: tuple[int, int, int], thick: int) -> None:
    for path in mark.paths:
        points = np.array([[_fine(x, scale), _fine(y, scale)] for x, y in path], np.int32)
        cv2.polylines(image, [points], False, colour, thick, cv2.LINE_AA, _FINE)
    if ring := mark.ring:
        centre = (_fine(ring.x, scale), _fine(ring.y, scale))
        axes = (round(ring.across * scale * (1 << _FINE)), round(ring.down * scale * (1 << _FINE)))
        cv2.ellipse(image, centre, axes, 0, 0, 360, colour, thick, cv2.LINE_AA, _FINE)


def _fine(units: float, scale: float) -> int:
    """A coordinate from the edge of the picture, counted from the middle of the first pixel."""
    return round((units * scale - 0.5) * (1 << _FINE))


def _labelled(image: Image, drawn: Sequence[DrawnMark], scale: float) -> Image:
    sheet = paper(image)
    font = face(max(round(LETTERS * scale), 9), "Bold")
    halo = max(round(EDGE * scale), 1)
    for words in (mark.words for mark in drawn if mark.words):
        for number, line in enumerate(words.lines):
            foot = (words.x * scale, (words.y + number * LEADING) * scale)
            write(sheet, line, foot, font, _DARK, anchor=_ANCHORS[words.anchor], halo=halo, ground=_LIGHT)
    return picture(sheet)
