"""The V-belt: where it runs, how it bows when it is slack, and how it is painted."""

from collections.abc import Callable
from dataclasses import dataclass, replace

import cv2
import numpy as np
from drill_canvas import Canvas, Points, Solid, shaded

WIDE, HIGH = 10.0, 7.0
"""The section of the belt."""
_RUN = 60
"""Points of each of the two runs."""


@dataclass(frozen=True)
class End:
    """One end of the loop: its middle, radius and height."""

    x: float
    y: float
    radius: float
    z: float


@dataclass(frozen=True)
class Belt:
    """A loop round two ends; ``bow`` is how far the runs swing out, ``press`` how far the front run is pushed in."""

    near: End
    far: End
    bow: float = 0.0
    press: float = 0.0
    worn: bool = False

    @property
    def path(self) -> Points:
        """Points x, y, z along its middle."""
        along = np.array([self.far.x - self.near.x, self.far.y - self.near.y])
        turn = float(np.arctan2(along[1], along[0]))
        lean = float(np.arccos((self.near.radius - self.far.radius) / np.hypot(*along)))
        near = _arc(self.near, turn + lean, turn + 2 * np.pi - lean)
        far = _arc(self.far, turn - lean, turn + lean)
        return np.concatenate([near, self._run(near[-1], far[0], 0.0), far, self._run(far[-1], near[0], self.press)])

    def _run(self, start: Points, end: Points, press: float) -> Points:
        share = np.linspace(0, 1, _RUN + 2)[1:-1, None]
        aside = np.array([end[1] - start[1], start[0] - end[0], 0.0])
        aside /= max(float(np.hypot(*aside[:2])), 1e-6)
        swing = self.bow * np.sin(np.pi * share) ** 2 - press * (1 - np.abs(2 * share - 1)) ** 1.1
        points: Points = start + (end - start) * share + aside * swing
        return points


def _arc(end: End, start: float, stop: float) -> Points:
    turn = np.linspace(start, stop, 60)
    return np.stack(
        [end.x + end.radius * np.cos(turn), end.y + end.radius * np.sin(turn), np.full(len(turn), end.z)], axis=1
    )


def length(belt: Belt) -> float:
    """Length of its middle line, seen from straight above."""
    path = belt.path[:, :2]
    return float(np.hypot(*(np.roll(path, -1, axis=0) - path).T).sum())


def slack(total: float, near: End, far: End, *, worn: bool) -> Belt:
    """The belt round two ends that is as long as it was: what is over makes it bow."""
    bow = _solved(total, lambda value: Belt(near, far, value), 0.0, 90.0)
    return Belt(near, far, bow, worn=worn)


def lifted(total: float, near: End, far: End, bow: float) -> Belt:
    """The worn belt, one end of it free, as long as it was: the free end widens."""
    radius = _solved(total, lambda value: Belt(near, replace(far, radius=value), bow), 10.0, 110.0)
    return Belt(near, replace(far, radius=radius), bow, worn=True)


def _solved(total: float, make: Callable[[float], Belt], low: float, high: float) -> float:
    """The value that gives the belt its length."""
    for _ in range(24):
        middle = (low + high) / 2
        low, high = (middle, high) if length(make(middle)) < total else (low, middle)
    return low


def painted(belt: Belt) -> Solid:
    """The belt as slices; each piece of it at its own height."""
    path = belt.path
    along = np.roll(path, -1, axis=0)[:, :2] - np.roll(path, 1, axis=0)[:, :2]
    out = np.stack([along[:, 1], -along[:, 0]], axis=1) / np.hypot(*along.T)[:, None]
    heights = path[:, 2]

    def paint(canvas: Canvas, z: float) -> None:
        for index in np.flatnonzero(np.abs(z - heights) <= HIGH / 2):
            _piece(canvas, path, out, int(index), z, belt.worn)

    return Solid(float(heights.min()) - HIGH / 2, float(heights.max()) + HIGH / 2, paint)


def _piece(canvas: Canvas, path: Points, out: Points, index: int, z: float, worn: bool) -> None:
    """One piece at one height: its slice, and on the uppermost slice its edges and its wear."""
    pair = np.array([index, (index + 1) % len(path)])
    share = (z - path[index, 2]) / HIGH + 0.5
    half = WIDE / 2 * (0.7 + 0.3 * share)
    outer, inner = path[pair, :2] + out[pair] * half, path[pair, :2] - out[pair] * half
    top = share + canvas.step / HIGH >= 1
    base = (74, 82, 92) if worn else (60, 56, 54)
    light = 1.25 if top else 0.55 + 0.3 * max(float(out[index] @ np.array([-0.6, 0.8])), 0.0)
    quad = canvas.place(np.concatenate([outer, inner[::-1]]), z)
    cv2.fillConvexPoly(canvas.image, quad, shaded(base, light))
    if top:
        for edge in (outer, inner):
            canvas.outline(edge, z, 0.5, (22, 20, 20), closed=False)
        if worn:
            _wear(canvas, outer, inner, out[index], z, index)


def _wear(canvas: Canvas, outer: Points, inner: Points, out: Points, z: float, index: int) -> None:
    """Cracks across the belt, and threads that stand out of its edge."""
    chance = np.random.default_rng(index)
    if index % 4 == 0:
        canvas.outline(np.stack([outer[0], outer[0] + (inner[0] - outer[0]) * 0.7]), z, 0.7, (30, 32, 34), closed=False)
    if chance.random() < 0.35:
        stray = outer[0] + out * chance.uniform(2, 6) + chance.normal(0, 2, 2)
        canvas.outline(np.stack([outer[0], stray]), z, 0.45, (150, 190, 205), closed=False)
