"""Writing the picture of a step: from a moment of a recording or from a picture file."""

import struct
from collections.abc import Sequence
from fractions import Fraction
from io import BytesIO
from pathlib import Path

import cv2
import numpy as np
from PIL.JpegImagePlugin import JpegImageFile
from PIL.PngImagePlugin import PngImageFile

from procbuilder.media.decode import picture_at
from procbuilder.media.drawing import draw
from procbuilder.media.hiding import hide, pixels
from procbuilder.media.image import Image
from procbuilder.media.limits import MOST_BYTES, MOST_PIXELS, TOO_HEAVY, too_large
from procbuilder.model.facts import Phrase
from procbuilder.model.fault import CannotWrite, Cause, UnreadablePicture, cause_of
from procbuilder.model.marks import Box, Picture

_WIDEST = 1280
_THUMBNAIL = 320
_QUALITY = 85
_COARSER = ((75, _WIDEST), (60, _WIDEST), (60, 960), (55, 720), (50, 480))
"""Quality and pixels across, one after the other, of a picture that takes too many bytes."""
_JPEG, _PNG = b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n"
_READ = ((2**24, cv2.IMREAD_COLOR), (MOST_PIXELS, cv2.IMREAD_REDUCED_COLOR_2))
"""How a picture of at most so many pixels is read: one of more than 16 million in half its width and height, which is
still more than what is published of a quarter of it."""


def still(
    source: Path,
    time: Fraction | None,
    *,
    picture: Picture | None,
    target: Path,
    hidden: Sequence[Box] = (),
    marked: bool = False,
) -> tuple[int, int]:
    """Writes a JPEG without any metadata and returns its width and height in pixels.

    First the hidden boxes are made unreadable at full size, then the picture is cropped, scaled down to
    at most 1280 pixels across, and, where it is asked for, marked. All boxes and marks are fractions of the
    whole upright picture, so that a crop does not move them; a mark outside the crop is not drawn.

    Args:
        source: A recording, or a JPEG or PNG file.
        time: Seconds into the recording; None for a picture file.
        picture: What the technician asked for: marks, hidden boxes, crop.
        target: Written over when it is there.
        hidden: Further boxes to be hidden, such as those of the step's clip at that time.
        marked: Whether the marks are drawn into it.

    Raises:
        Unreadable: The recording has no picture that can be decoded there.
        UnreadablePicture: The file is no JPEG or PNG picture.
        CannotWrite: The target cannot be written.
    """
    image = loaded(source) if time is None else picture_at(source, time)[1]
    for box in (*hidden, *(picture.hidden if picture else ())):
        hide(image, box)
    image = _scaled(_cropped(image, picture.crop if picture else None), _WIDEST)
    if picture and marked:
        draw(image, picture.seen_marks)
    _write(_encoded(image, _QUALITY), target)
    return image.shape[1], image.shape[0]


def fitted(source: Path, most: int, *, target: Path) -> tuple[int, int]:
    """Writes a published picture again in at most so many bytes, and returns its width and height.

    It gets coarser first, then smaller. One that is still larger at 480 pixels across is taken as it is.

    Raises:
        UnreadablePicture: The source is no picture.
        CannotWrite: The target cannot be written.
    """
    whole = loaded(source)
    for quality, widest in _COARSER:
        image = _scaled(whole, widest)
        data = _encoded(image, quality)
        if len(data) <= most:
            break
    _write(data, target)
    return image.shape[1], image.shape[0]


def thumbnail(source: Path, time: Fraction, *, target: Path, hidden: Sequence[Box] = ()) -> tuple[int, int]:
    """Writes a small JPEG of a moment, at most 320 pixels across, and returns its width and height.

    The hidden boxes are made unreadable at full size first, as in the published picture.

    Raises:
        Unreadable: The recording has no picture that can be decoded there.
        CannotWrite: The target cannot be written.
    """
    image = picture_at(source, time)[1]
    for box in hidden:
        hide(image, box)
    image = _scaled(image, _THUMBNAIL)
    _write(_encoded(image, _QUALITY), target)
    return image.shape[1], image.shape[0]


def loaded(path: Path) -> Image:
    """A JPEG or PNG file, turned as its EXIF orientation says; a large one in half its size or less.

    Raises:
        UnreadablePicture: It is none, or larger than what is read.
    """
    try:
        with path.open("rb") as file:
            signature = file.read(len(_PNG))
            if path.stat().st_size > MOST_BYTES and signature.startswith((_JPEG, _PNG)):
                raise UnreadablePicture(path, TOO_HEAVY)
            data = signature + file.read()
    except OSError as error:
        raise UnreadablePicture(path, cause_of(error.errno)) from None
    if not data.startswith((_JPEG, _PNG)):
        raise UnreadablePicture(path, Phrase(Cause.NO_STILL))
    size = _size(data)
    if size and (why := too_large(*size)):
        raise UnreadablePicture(path, why)
    image = _decoded(data, *size) if size else None
    if image is None:
        raise UnreadablePicture(path, Phrase(Cause.DAMAGED))
    return image


def _size(data: bytes) -> tuple[int, int] | None:
    """Width and height as the head of the file says, without decoding it; None when it is damaged."""
    try:
        return (PngImageFile if data.startswith(_PNG) else JpegImageFile)(BytesIO(data)).size
    except (OSError, SyntaxError, ValueError, struct.error):
        return None


def _decoded(data: bytes, width: int, height: int) -> Image | None:
    flags = next(flags for most, flags in _READ if width * height <= most)
    try:
        image = cv2.imdecode(np.frombuffer(data, np.uint8), flags)
    except cv2.error:
        return None
    return None if image is None else image.astype(np.uint8, copy=False)


def _cropped(image: Image, crop: Box | None) -> Image:
    left, top, right, bottom = pixels(image, crop or Box(0, 0, 1, 1))
    part = image[top:bottom, left:right]
    return part.copy() if part.size else image


def _scaled(image: Image, widest: int) -> Image:
    height, width = image.shape[:2]
    if width <= widest:
        return image
    size = (widest, max(round(height * widest / width), 1))
    return cv2.resize(image, size, interpolation=cv2.INTER_AREA).astype(np.uint8, copy=False)


def _encoded(image: Image, quality: int) -> bytes:
    return cv2.imencode(".jpg", image, [cv2.IMWRITE_JPEG_QUALITY, quality])[1].tobytes()


def _write(data: bytes, target: Path) -> None:
    try:
        target.write_bytes(data)
    except OSError as error:
        raise CannotWrite(target, error.errno) from None
