"""The frame of a film while footage runs: words above and below it, nothing over it."""

from PIL import Image as Pillow
from PIL import ImageDraw

from procbuilder.media.cards import BLACK, HEIGHT, WHITE, WIDTH, one_line
from procbuilder.media.image import Image
from procbuilder.media.lettering import face, picture, wrapped

WINDOW = (144, 86, 992, 558)
"""Left, top, width and height of the footage."""

_LEFT = 24
_ROOM = WIDTH - 2 * _LEFT


def stage(head: str, standing: str, point: str, foot: str) -> Image:
    """The picture around the footage: the command, what is still dangerous, a point to mind, and the edition."""
    sheet = Pillow.new("RGB", (WIDTH, HEIGHT), BLACK)
    pen = ImageDraw.Draw(sheet)
    one_line(pen, head, (_LEFT, 38), _ROOM, 34, WHITE)
    if standing:
        pen.rectangle((0, 50, WIDTH, 82), WHITE)
        one_line(pen, standing, (_LEFT, 75), _ROOM, 26, BLACK)
    bottom = WINDOW[1] + WINDOW[3]
    _two_lines(pen, point, bottom)
    pen.text((WIDTH - _LEFT, HEIGHT - 8), foot, WHITE, face(16), "rs")
    return picture(sheet)


def _two_lines(pen: ImageDraw.ImageDraw, text: str, top: int) -> None:
    """As large as fits in two rows; the last size is cut off with …"""
    for size in range(28, 18, -1):
        rows = list(wrapped(text, face(size), _ROOM))
        if len(rows) <= 2:
            break
    if len(rows) > 2:
        rows = [rows[0], " ".join(rows[1:])]
    for number, row in enumerate(rows):
        one_line(pen, row, (_LEFT, top + 28 + number * 29), _ROOM, size, WHITE)
