"""How two small grey pictures differ, beyond what grain and light explain, and whether it lasts."""

from collections.abc import Callable, Sequence

import cv2
import numpy as np
from numpy.typing import NDArray

Grey = NDArray[np.uint8]
Soft = NDArray[np.float32]
"""Grey levels without their grain."""
Levels = NDArray[np.float64]
"""Grey levels by which two pictures differ, one or more."""
Differ = Callable[[Soft, Soft], Levels]

_GRAIN = 1.0
"""Pixels by which grain is smoothed away."""
_BLACK, _BURNT = 2.0, 250.0
"""Grey levels below and above which a camera tells no difference."""
_BESIDE = np.ones((7, 7), np.uint8)
"""How far what is burnt out reaches when grain is smoothed away."""
_BLOCKS = (16, 9)
"""Parts of the picture by which it is told how far a change is spread, and where it is largest."""
_LARGEST = 14
"""So many of them, a tenth of the picture, tell how much of it has moved: a hand at work, or a tool."""


def soft(picture: Grey) -> Soft:
    """A picture without its grain."""
    return np.asarray(cv2.GaussianBlur(picture.astype(np.float32), (0, 0), _GRAIN), dtype=np.float32)


def apart(one: Soft, other: Soft) -> Levels:
    """Mean difference."""
    return np.array(cv2.mean(_plain(one, other))[0])


def moved(one: Soft, other: Soft) -> Levels:
    """Mean difference, light taken out: of the whole picture, and of the tenth of it that has changed most."""
    blocks = cv2.resize(unlit(one, other), _BLOCKS, interpolation=cv2.INTER_AREA).ravel()
    return np.array([blocks.mean(), np.partition(blocks, -_LARGEST)[-_LARGEST:].mean()], dtype=np.float64)


def _plain(one: Soft, other: Soft) -> Soft:
    return np.asarray(cv2.absdiff(one, other), dtype=np.float32)


def unlit(one: Soft, other: Soft) -> Soft:
    """Difference of each pixel that a change of light leaves: both are brought to one brightness and contrast.

    Nothing is left where one of them is burnt out or black, or all of a single grey: that is a change of light as far
    as anyone can tell.
    """
    seen = _seen(one, other)
    (our_mean, our_contrast), (their_mean, their_contrast) = (_light(picture, seen) for picture in (one, other))
    contrast = (our_contrast * their_contrast) ** 0.5
    if not contrast:
        return np.zeros_like(one)
    ours, theirs = contrast / our_contrast, contrast / their_contrast
    evened = cv2.addWeighted(one, ours, other, -theirs, theirs * their_mean - ours * our_mean)
    left = np.asarray(cv2.copyTo(np.abs(evened), seen), dtype=np.float32)
    return min(_plain(one, other), left, key=lambda each: cv2.mean(each)[0])


def _seen(one: Soft, other: Soft) -> Grey:
    """255 where both tell light from dark, 0 elsewhere."""
    not_burnt = cv2.inRange(cv2.max(one, other), 0, _BURNT)
    not_black = cv2.inRange(cv2.min(one, other), _BLACK, 255)
    return np.asarray(cv2.erode(cv2.bitwise_and(not_burnt, not_black), _BESIDE), dtype=np.uint8)


def _light(picture: Soft, seen: Grey) -> tuple[float, float]:
    """Brightness and contrast, mean and standard deviation, of what can be seen."""
    mean, deviation = cv2.meanStdDev(picture, mask=seen)
    return float(mean[0, 0]), float(deviation[0, 0])


def spread(difference: Soft) -> float:
    """As large as the mean when all parts of the picture differ alike, and the smaller the fewer do."""
    blocks = cv2.resize(difference, _BLOCKS, interpolation=cv2.INTER_AREA)
    return float(np.sqrt(blocks).mean()) ** 2


def least(before: Sequence[Soft], after: Sequence[Soft], differ: Differ) -> Levels:
    """The least by which any picture on the one side differs from any on the other."""
    return np.asarray(np.min([differ(one, other) for one in before for other in after], axis=0), dtype=np.float64)
