"""Cards: pages of text for a film, white on black, readable from across a workbench."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from PIL import Image as Pillow
from PIL import ImageColor, ImageDraw, ImageFont

from procbuilder.media.image import Image
from procbuilder.media.lettering import Colour, face, picture, wrapped
from procbuilder.model.film import Card, CardLine, Panel, Style

WIDTH, HEIGHT = 1280, 720
BLACK: Colour = (17, 17, 17)
WHITE: Colour = (255, 255, 255)

_LEFT, _TOP, _GAP, _PAD = 64, 48, 18, 14
_ROOM = WIDTH - 2 * _LEFT
_SHRINK = (1.0, 0.85, 0.7)
"""Sizes that are tried before a card is shared out over several."""
_TYPE: dict[Style, tuple[int, str]] = {
    Style.WHERE: (34, "Semibold"), Style.TITLE: (64, "Bold"), Style.FACT: (38, "Regular"),
    Style.SIGNAL: (36, "Semibold"), Style.STANDING: (34, "Semibold"), Style.STOP: (56, "Bold"),
    Style.SMALL: (28, "Regular"),
}  # fmt: skip
"""Size in pixels and weight."""


@dataclass(frozen=True, slots=True)
class _Set:
    """A line of a card, set: its rows of letters and the room it takes."""

    line: CardLine
    rows: tuple[str, ...]
    font: ImageFont.FreeTypeFont
    label: ImageFont.FreeTypeFont
    leading: int
    indent: int
    padding: int

    @property
    def height(self) -> int:
        """In pixels, the frame included."""
        return len(self.rows) * self.leading + 2 * self.padding


def cards(card: Card, foot: str) -> list[Image]:
    """The card as one picture of 1280 by 720, smaller where it must be, or as several; ``foot`` stands below each."""
    room = HEIGHT - _TOP - 72
    for size in _SHRINK:
        lines = [_set(line, size) for line in card.lines]
        if sum(line.height + _GAP for line in lines) <= room:
            return [_drawn(lines, foot)]
    return [_drawn(page, foot) for page in _pages(lines, room)]


def _pages(lines: Sequence[_Set], room: int) -> Iterator[list[_Set]]:
    page: list[_Set] = []
    for line in (part for whole in lines for part in _parts(whole, room)):
        if page and sum(each.height + _GAP for each in (*page, line)) > room:
            yield page
            page = []
        page.append(line)
    yield page


def _parts(line: _Set, room: int) -> Iterator[_Set]:
    """The line itself, or what fits on a card of it and then the rest."""
    most = max((room - 2 * line.padding - _GAP) // line.leading, 1)
    for first in range(0, len(line.rows), most):
        yield _Set(line.line, line.rows[first : first + most], line.font, line.label, line.leading,
                   line.indent, line.padding)  # fmt: skip


def _set(line: CardLine, size: float) -> _Set:
    pixels, weight = _TYPE[line.style]
    font, label = face(round(pixels * size), weight), face(round(pixels * size), "Bold")
    framed = line.style in (Style.SIGNAL, Style.STANDING, Style.STOP)
    padding = _PAD if framed else 0
    indent = round(label.getlength(_labelled(line))) if line.label else 0
    if line.style is Style.SIGNAL:
        indent += 2 * _PAD + round(pixels * size)
    rows = tuple(wrapped(line.text, font, _ROOM - indent - 2 * padding)) or ("",)
    return _Set(line, rows, font, label, round(pixels * size * 1.22), indent, padding)


def _labelled(line: CardLine) -> str:
    return line.label if line.style is Style.SIGNAL else f"{line.label}: " if line.label else ""


def _drawn(lines: Sequence[_Set], foot: str) -> Image:
    sheet = Pillow.new("RGB", (WIDTH, HEIGHT), BLACK)
    pen = ImageDraw.Draw(sheet)
    y = _TOP
    for line in lines:
        _draw(pen, line, y)
        y += line.height + _GAP
    one_line(pen, foot, (_LEFT, HEIGHT - 28), _ROOM, 24, WHITE)
    return picture(sheet)


def _draw(pen: ImageDraw.ImageDraw, line: _Set, y: int) -> None:
    ink = WHITE
    right, bottom = _LEFT + _ROOM, y + line.height
    if line.line.style is Style.STANDING:
        pen.rectangle((_LEFT, y, right, bottom), WHITE)
        ink = BLACK
    elif line.line.style is Style.STOP:
        pen.rectangle((_LEFT, y, right, bottom), outline=WHITE, width=5)
    elif line.line.panel:
        _signal(pen, line, line.line.panel, y)
    left, top = _LEFT + line.padding, y + line.padding + round(line.leading * 0.78)
    if line.line.label and line.line.style is not Style.SIGNAL:
        pen.text((left, top), _labelled(line.line), ink, line.label, "ls")
    for number, row in enumerate(line.rows):
        pen.text((left + line.indent, top + number * line.leading), row, ink, line.font, "ls")


def _signal(pen: ImageDraw.ImageDraw, line: _Set, panel: Panel, y: int) -> None:
    """A panel with the safety alert sign and the signal word, and a frame around it and its hazard."""
    ground, ink = ImageColor.getrgb(panel.ground), ImageColor.getrgb(panel.ink)
    bottom, size = y + line.height, line.font.size
    pen.rectangle((_LEFT, y, _LEFT + line.indent, bottom), ground)
    pen.rectangle((_LEFT, y, _LEFT + _ROOM, bottom), outline=ground, width=4)
    top, left = y + line.padding + line.leading * 0.12, _LEFT + _PAD * 0.8
    if panel.alert:
        corners = [(left + size * 0.45, top), (left + size * 0.9, top + size * 0.8), (left, top + size * 0.8)]
        pen.polygon(corners, ink)
        pen.text((left + size * 0.45, top + size * 0.74), "!", ground, face(round(size * 0.68), "Bold"), "ms")
    at = (left + size + _PAD * 0.2, y + line.padding + round(line.leading * 0.78))
    pen.text(at, line.line.label, ink, line.label, "ls")


def one_line(pen: ImageDraw.ImageDraw, text: str, at: tuple[float, float], room: float, size: int, ink: Colour) -> None:
    """A text in one row, smaller where it must be, and cut off with … where even that is too long."""
    font = next((face(s) for s in range(size, 19, -1) if face(s).getlength(text) <= room), face(20))
    while font.getlength(text) > room:
        text = text.removesuffix("…")[:-1].rstrip() + "…"
    pen.text(at, text, ink, font, "ls")
