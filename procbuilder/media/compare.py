"""Two small pictures of the same place compared: how far the camera has turned, and what else is different."""

import math
from functools import cache

import cv2
import numpy as np
from numpy.typing import NDArray

from procbuilder.media.look import SMALL, Grey, Look

_POINTS = np.array([[[x, y]] for y in range(5, SMALL[1], 16) for x in range(8, SMALL[0], 16)], dtype=np.float32)
"""Points all over the picture whose way is followed."""
_AROUND_POINT, _HALVINGS = (9, 9), 2
"""Surroundings so small that few hold two things that move apart; halved twice, for a twentieth of the width."""
_ENOUGH = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_COUNT, 10, 0.03)
"""Rounds, or pixels of a last step, after which a point is taken as found."""
_GRID = (16, 9)
_NOISE = 4.0
"""Grey levels by which two small pictures of the same thing may differ."""
_EDGE = 0.35
"""Share of the local contrast that a small turn of the camera may leave as difference."""
_DIFFERENT = 6.0
"""Grey levels beyond noise and edges from which on something else is seen."""
_LEAST = 0.01
"""Share of the picture below which a difference is passed over."""
_RIM = 3
"""Pixels from the edge of the picture within which a difference reaches in from outside."""
_CLEAR = 4.0
"""Grey levels by which an edge must be stronger in one picture than in the other to count."""
_AROUND = (25, 25)
"""Width and height in pixels of the surroundings for which a piece of outline votes."""
_DOUBT = 0.004
"""Share of outline in the surroundings that is as good as none."""
_SPREAD = 0.45
"""Share of half a picture at which the weight of the middle has fallen to 0.6."""
_NEAR, _WIDE = np.ones((3, 3), np.uint8), np.ones((5, 5), np.uint8)

Mask = NDArray[np.bool_]

Move = tuple[float, float]
"""Pixels to the right and down."""


def turn(one: Grey, two: Grey) -> Move:
    """How far the view has moved from one picture to the other: the median of points all over it, whatever moves else.

    The points are followed by optical flow (Lucas and Kanade, 1981), once the light is the same.
    """
    before, after = cv2.convertScaleAbs(one), cv2.convertScaleAbs(two * brighter(one, two))
    points, found, _ = cv2.calcOpticalFlowPyrLK(
        before, after, _POINTS, None, winSize=_AROUND_POINT, maxLevel=_HALVINGS, criteria=_ENOUGH
    )  # type: ignore[call-overload]  # it takes None and makes the points itself
    ways = (points - _POINTS)[found.astype(bool)]
    across, down = np.median(ways, axis=0) if len(ways) else (0.0, 0.0)
    return float(across), float(down)


def brighter(one: Grey, two: Grey) -> float:
    """How many times the first is brighter: the median, since a mean would take a bright hand for light."""
    return float(np.median((one + 1) / (two + 1)))


def widths(move: Move) -> float:
    """A move in picture widths."""
    return math.hypot(*move) / SMALL[0]


def motion(one: Grey, two: Grey, move: Move) -> float:
    """Grey levels by which the part of the picture differs that differs most, the turn of the camera taken out."""
    return float(cv2.resize(_difference(one, _matched(one, two, move)), _GRID, interpolation=cv2.INTER_AREA).max())


def central(places: Grey | Mask) -> float:
    """The mean of a value over the picture; the middle, where the part is, counts more than the sides."""
    return float((places * _weights()).mean())


def in_front(one: Look, two: Look) -> Grey:
    """For each place whether something stands there in the first and not in the second: 1 yes, -1 the other way round.

    Where two pictures differ, the outline of the difference is an edge in the one in which something stands in front,
    and mere ground in the other: each piece of the outline votes for the difference around it. Only what reaches in
    from the edge of the picture counts, as hands and tools do; elsewhere it is 0.
    """
    first, second = _pair(one, two)
    mask = _reaching(_different(first, second))
    stronger = _contrast(first, _WIDE).max(axis=2) - _contrast(second, _WIDE).max(axis=2)
    outline = (cv2.dilate(mask, _NEAR) - cv2.erode(mask, _NEAR)).astype(np.float32)
    outline[[0, 1, 2, -3, -2, -1], :] = 0
    outline[:, [0, 1, 2, -3, -2, -1]] = 0
    votes = outline * ((stronger > _CLEAR).astype(np.float32) - (stronger < -_CLEAR))
    local = cv2.blur(votes, _AROUND) / (cv2.blur(np.abs(votes), _AROUND) + _DOUBT)
    return np.asarray(mask * local, dtype=np.float32)


def against(ground: Look, look: Look) -> tuple[Grey, Mask]:
    """The colours of a picture, turned and lit like another one, and where something reaches into one of them."""
    first, second = _pair(ground, look)
    return second, _reaching(_different(first, second)).astype(bool)


def _pair(one: Look, two: Look) -> tuple[Grey, Grey]:
    """Both in colour, the second turned and lit like the first."""
    first = one.colour.astype(np.float32)
    return first, _matched(first, two.colour.astype(np.float32), turn(one.small, two.small))


def _different(first: Grey, second: Grey) -> NDArray[np.uint8]:
    """A mask of what is another thing in the one than in the other, small gaps closed."""
    rest = cv2.GaussianBlur(_difference(first, second).max(axis=2), (0, 0), 1.0)
    closed = cv2.morphologyEx((rest > _DIFFERENT).astype(np.uint8), cv2.MORPH_CLOSE, _WIDE)
    return closed.astype(np.uint8, copy=False)


@cache
def _weights() -> Grey:
    """Weight of each place of the picture, 1 on average."""
    across, down = np.meshgrid(np.linspace(-1, 1, SMALL[0]), np.linspace(-1, 1, SMALL[1]))
    weights = np.exp(-(across**2 + down**2) / (2 * _SPREAD**2)).astype(np.float32)
    return np.asarray(weights / weights.mean(), dtype=np.float32)


def _reaching(mask: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """The parts of a mask that reach in from the edge of the picture and are large enough."""
    _, labels, places, _ = cv2.connectedComponentsWithStats(mask)
    left, top, width, height, area = places.T
    reaches = (left <= _RIM) | (top <= _RIM) | (left + width >= SMALL[0] - _RIM) | (top + height >= SMALL[1] - _RIM)
    counts = reaches & (area >= _LEAST * mask.size)
    counts[0] = False
    return np.asarray(counts[labels], dtype=np.uint8)


def _matched(one: Grey, two: Grey, move: Move) -> Grey:
    """The second picture turned and lit like the first, which fills what it does not show."""
    back = np.array([[1, 0, -move[0]], [0, 1, -move[1]]], dtype=np.float64)
    moved = cv2.warpAffine(two, back, SMALL, borderMode=cv2.BORDER_CONSTANT, borderValue=-1)
    there = moved >= 0
    if not there.any():
        return one
    light = brighter(one[there], moved[there].astype(np.float32))
    return np.asarray(np.where(there, moved * light, one), dtype=np.float32)


def _difference(one: Grey, two: Grey) -> Grey:
    """Grey levels of difference beyond noise and what small turns leave at edges."""
    edges = np.maximum(_contrast(one, _NEAR), _contrast(two, _NEAR))
    return np.asarray(np.maximum(np.abs(one - two) - _NOISE - _EDGE * edges, 0), dtype=np.float32)


def _contrast(grey: Grey, near: NDArray[np.uint8]) -> Grey:
    """Difference between the brightest and the darkest of each pixel and its neighbours."""
    return np.asarray(cv2.dilate(grey, near) - cv2.erode(grey, near), dtype=np.float32)
