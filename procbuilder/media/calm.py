"""When the camera and everything before it stand still, and when the camera has turned away from the work."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from procbuilder.media.compare import Move, motion, turn, widths
from procbuilder.media.look import Floats, Look

APART = Fraction(18, 100)
"""Seconds between two pictures that are compared: enough for a slow hand to show."""
_TOGETHER = Fraction(1, 2)
"""Seconds between neighbours beyond which the pictures do not follow each other."""

MOVING = 9.0
"""Grey levels of motion from which on something moves before the camera."""
TURNING = 0.08
"""Picture widths a second from which on the camera moves too fast for a sharp picture."""
AWAY = 0.08
"""Picture widths from the usual view beyond which the camera looks elsewhere."""
_SMOOTH = 2
"""Pictures on each side over which the turning of the camera is smoothed: a large hand can look like a turn."""


@dataclass(frozen=True, slots=True)
class Pace:
    """How a picture follows the one before it."""

    motion: float
    """Grey levels; 0 when nothing is known."""
    camera: float
    """Picture widths a second."""
    away: float
    """Picture widths between the view and the usual view of this footage."""
    calm: bool
    alone: bool
    """Whether no neighbour is near enough in time to tell."""


def paces(looks: Sequence[Look]) -> tuple[Pace, ...]:
    """The pace of each picture; a picture without a neighbour in time is not calm."""
    count = len(looks)
    calm, alone = [False] * count, [True] * count
    motions, speeds = [0.0] * count, np.zeros((count, 2))
    for index, look in enumerate(looks):
        before = _before(looks, index)
        if before is None:
            continue
        move = turn(looks[before].small, look.small)
        seconds = float(look.time - looks[before].time)
        alone[before : index + 1] = [False] * (index + 1 - before)
        motions[index] = motion(looks[before].small, look.small, move)
        speeds[index] = np.array(move) / seconds
        if motions[index] < MOVING and widths(move) / seconds < TURNING:
            calm[before : index + 1] = [True] * (index + 1 - before)
    aways = _aways(looks, speeds)
    return tuple(
        Pace(motions[i], widths(_pair(speeds[i])), aways[i], calm[i], alone[i]) for i in range(count)
    )  # fmt: skip


def runs(flags: Sequence[bool]) -> list[range]:
    """Stretches of neighbours that are all true."""
    edges = np.flatnonzero(np.diff([0, *map(int, flags), 0]))
    return [range(int(first), int(last)) for first, last in zip(edges[::2], edges[1::2], strict=True)]


def _before(looks: Sequence[Look], index: int) -> int | None:
    """The nearest picture that is far enough back, if pictures follow each other from there on."""
    back = index
    while looks[index].time - looks[back].time < APART:
        if back == 0 or looks[back].time - looks[back - 1].time > _TOGETHER:
            return None
        back -= 1
    return back


def _aways(looks: Sequence[Look], speeds: Floats) -> list[float]:
    """How far each view is from the usual one, by the way the camera went there."""
    smooth = [np.median(speeds[max(i - _SMOOTH, 0) : i + _SMOOTH + 1], axis=0) for i in range(len(looks))]
    place, path = np.zeros(2), []
    for index in range(len(looks)):
        if index:
            place = place + smooth[index] * float(min(looks[index].time - looks[index - 1].time, _TOGETHER))
        path.append(place)
    if not path:
        return []
    usual = np.median(np.array(path), axis=0)
    return [widths(_pair(each - usual)) for each in path]


def _pair(values: Floats) -> Move:
    return float(values[0]), float(values[1])
