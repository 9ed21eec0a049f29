"""Setting words in a picture, in the typeface of the printed sheet."""

from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files
from io import BytesIO

import numpy as np
from PIL import Image as Pillow
from PIL import ImageDraw, ImageFont

from procbuilder.media.image import Image

Colour = tuple[int, int, int]
"""Red, green, blue."""


@cache
def face(size: int, weight: str = "Semibold") -> ImageFont.FreeTypeFont:
    """The typeface in a size in pixels and a weight: Regular, Semibold or Bold."""
    data = (files("font_source_sans_pro") / "files" / f"SourceSansPro-{weight}.otf").read_bytes()
    return ImageFont.truetype(BytesIO(data), size, layout_engine=ImageFont.Layout.BASIC)


def wrapped(text: str, font: ImageFont.FreeTypeFont, width: float) -> Iterator[str]:
    """The lines of a text that fit a width; a word that is wider stands alone and is broken."""
    line = ""
    for word in _broken(text.split(), font, width):
        longer = f"{line} {word}".strip()
        if line and font.getlength(longer) > width:
            yield line
            longer = word
        line = longer
    if line:
        yield line


def _broken(words: Iterable[str], font: ImageFont.FreeTypeFont, width: float) -> Iterator[str]:
    for word in words:
        rest = word
        while font.getlength(rest) > width and len(rest) > 1:
            fits = max((n for n in range(1, len(rest)) if font.getlength(rest[:n]) <= width), default=1)
            yield rest[:fits]
            rest = rest[fits:]
        yield rest


def paper(image: Image) -> Pillow.Image:
    """A copy of a picture on which can be drawn."""
    return Pillow.fromarray(np.ascontiguousarray(image[:, :, ::-1]))


def picture(drawn: Pillow.Image) -> Image:
    """The way back from :func:`paper`."""
    return np.ascontiguousarray(np.asarray(drawn)[:, :, ::-1])


def write(sheet: Pillow.Image, text: str, at: tuple[float, float], font: ImageFont.FreeTypeFont,
          colour: Colour, *, anchor: str = "ls", halo: int = 0, ground: Colour = (255, 255, 255)) -> None:  # fmt: skip
    """One line of text; ``anchor`` as in Pillow, ``halo`` the width in pixels of its outline."""
    ImageDraw.Draw(sheet).text(at, text, colour, font, anchor, stroke_width=halo, stroke_fill=ground)
