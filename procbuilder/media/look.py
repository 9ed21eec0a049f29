"""What is kept of a decoded picture once it is gone: a small grey copy, its light and its detail."""

from dataclasses import dataclass
from fractions import Fraction

import cv2
import numpy as np
from av.video.frame import VideoFrame
from numpy.typing import NDArray

from procbuilder.media.scaling import rescaled

Grey = NDArray[np.float32]
Floats = NDArray[np.float64]

SMALL = (160, 90)
"""Width and height of the small copy."""

_WIDTH = 640
_BLOCKS = (8, 6)
_WHITE = 251


@dataclass(frozen=True, slots=True)
class Look:
    """One picture, reduced to what is needed to compare it with others."""

    time: Fraction
    small: Grey
    """90 x 160, area-averaged, 0 to 255."""
    colour: NDArray[np.uint8]
    """90 x 160 x 3, blue, green and red, area-averaged."""
    detail: Floats
    """Tenengrad (mean squared Sobel gradient) of 6 x 8 blocks, at 640 pixels across."""
    coarse: Floats
    """The same at a quarter of that size: blur takes from the fine detail first."""
    brightness: float
    white: float
    """Share of pixels that are white without detail."""


def look(time: Fraction, frame: VideoFrame) -> Look:
    """Reduces a decoded picture.

    Detail is taken on an area-averaged picture 640 pixels wide: sensor noise makes finer measures call a blurred
    picture sharp.
    """
    width = min(_WIDTH, frame.width)
    height = max(round(frame.height * width / frame.width), 1)
    grey = rescaled(frame, width, height, "gray", interpolation="AREA").to_ndarray().astype(np.uint8, copy=False)
    small = cv2.resize(grey, SMALL, interpolation=cv2.INTER_AREA).astype(np.float32)
    quarter = cv2.resize(grey, (max(width // 4, 1), max(height // 4, 1)), interpolation=cv2.INTER_AREA)
    colour = rescaled(frame, *SMALL, "bgr24", interpolation="AREA").to_ndarray().astype(np.uint8, copy=False)
    white = float(np.mean(grey >= _WHITE))
    return Look(
        time, small, colour, _tenengrad(grey), _tenengrad(quarter.astype(np.float32)), float(grey.mean()), white
    )


def _tenengrad(grey: NDArray[np.uint8] | Grey) -> Floats:
    across = cv2.Sobel(grey, cv2.CV_32F, 1, 0, ksize=3)
    down = cv2.Sobel(grey, cv2.CV_32F, 0, 1, ksize=3)
    return cv2.resize(across * across + down * down, _BLOCKS, interpolation=cv2.INTER_AREA).astype(np.float64).ravel()
