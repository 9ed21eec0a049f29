"""The colours of a part of a picture, and how alike two of them are."""

from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from procbuilder.media.compare import Mask
from procbuilder.media.look import Floats

_STEPS = (8, 16, 16)
"""Into how many steps lightness and the two colour axes of CIE L*a*b* are divided."""


def palette(colour: NDArray[Any], where: Mask) -> Floats:
    """Share of each step of lightness and colour in a part of a picture; zeros when the part is empty.

    Args:
        colour: Blue, green and red, 0 to 255.
        where: The part.
    """
    whole = np.clip(colour, 0, 255).astype(np.uint8)
    lab = cv2.cvtColor(whole, cv2.COLOR_BGR2LAB)[where].astype(np.int64)
    steps = lab * np.array(_STEPS) // 256
    counts = np.bincount(np.ravel_multi_index(tuple(steps.T), _STEPS), minlength=int(np.prod(_STEPS)))
    return counts / max(int(counts.sum()), 1)


def likeness(one: Floats, two: Floats) -> float:
    """Bhattacharyya coefficient of two palettes: 1 for the same colours, 0 when they share none."""
    return float(np.sqrt(one * two).sum())
