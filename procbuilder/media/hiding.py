"""Making a region of a picture unreadable for good."""

import math

import cv2

from procbuilder.media.image import Image
from procbuilder.model.marks import Box

_CELLS = 3
"""Colours that are left along each side of a hidden region: too few for a letter or a feature of a face."""

_MARGIN = 2
"""Pixels by which a region is widened, since scaling and compression carry colour over its edge."""


def hide(image: Image, box: Box) -> None:
    """Replaces a region by a soft blend of at most nine mean colours, in the picture itself.

    The region is rounded outwards. Nothing else of its content is kept, so it cannot be brought back.
    """
    left, top, right, bottom = pixels(image, box, margin=_MARGIN)
    region = image[top:bottom, left:right]
    if region.size == 0:
        return
    height, width = region.shape[:2]
    few = cv2.resize(region, (min(_CELLS, width), min(_CELLS, height)), interpolation=cv2.INTER_AREA)
    image[top:bottom, left:right] = cv2.resize(few, (width, height), interpolation=cv2.INTER_LINEAR)


def pixels(image: Image, box: Box, *, margin: int = 0) -> tuple[int, int, int, int]:
    """Left, top, right and bottom of a box in whole pixels, rounded outwards, within the picture."""
    height, width = image.shape[:2]
    left, right = sorted((box.left, box.right))
    top, bottom = sorted((box.top, box.bottom))
    return (
        max(math.floor(left * width) - margin, 0),
        max(math.floor(top * height) - margin, 0),
        min(math.ceil(right * width) + margin, width),
        min(math.ceil(bottom * height) + margin, height),
    )
