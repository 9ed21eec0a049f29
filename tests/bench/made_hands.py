"""Hands, sleeves and tools that reach into a made step window, each with its shape, tone and side of entry."""

import math
from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from tests.bench.made_scenes import SIZE

Layer = NDArray[np.float32]
"""Height x width x 4: colour times cover, and cover from 0 to 1."""

_TONES = {
    "light skin": (125, 155, 205), "dark skin": (55, 75, 115), "blue glove": (150, 95, 45), "black glove": (38, 36, 35),
    "orange glove": (35, 105, 215), "leather glove": (95, 140, 175), "white glove": (205, 208, 210),
}  # fmt: skip
_SLEEVES = ((90, 55, 35), (60, 60, 65), (45, 45, 140), (120, 130, 125))
_METALS = ((170, 172, 175), (95, 98, 102), (60, 110, 190))
_CANVAS = 900
_TIP = (450, 300)
"""Where the finger tips are on the canvas; the arm reaches down from there."""


@dataclass(frozen=True)
class Hand:
    """A hand with an arm, and perhaps a tool, on a canvas of its own."""

    layer: Layer
    angle: float
    """Degrees by which it is turned, 0 when it reaches in from below."""

    @property
    def away(self) -> tuple[float, float]:
        """The direction out of the picture, of length 1."""
        turn = math.radians(self.angle)
        return math.sin(turn), math.cos(turn)

    def drawn(self, tip: tuple[float, float]) -> Layer:
        """The hand in a picture, its finger tips at a place in pixels."""
        turn = cv2.getRotationMatrix2D(_TIP, self.angle, 1.0)
        turn[0, 2] += tip[0] - _TIP[0]
        turn[1, 2] += tip[1] - _TIP[1]
        return np.asarray(cv2.warpAffine(self.layer, turn, SIZE, flags=cv2.INTER_LINEAR), dtype=np.float32)


def hand(chance: np.random.Generator) -> Hand:
    """A hand of random size, tone and side; two in five hold a tool."""
    colour, cover = np.zeros((_CANVAS, _CANVAS, 3), np.float32), np.zeros((_CANVAS, _CANVAS), np.uint8)
    size, tone = chance.uniform(0.8, 1.5), _TONES[str(chance.choice(list(_TONES)))]
    if chance.random() < 0.4:
        _tool(colour, cover, size, chance)
    _arm(colour, cover, size, _SLEEVES[chance.integers(len(_SLEEVES))], chance)
    _palm(colour, cover, size, tone, chance)
    shade = cv2.resize(chance.normal(1, 0.16, (9, 9)), (_CANVAS, _CANVAS), interpolation=cv2.INTER_CUBIC)
    grain = chance.normal(1, 0.05, (_CANVAS, _CANVAS))
    lit = np.clip(colour * (shade * grain)[:, :, None], 0, 255)
    soft = cv2.GaussianBlur(cover.astype(np.float32) / 255, (0, 0), 0.8)
    sides = ((0, 0.4), (90, 0.2), (-90, 0.3), (180, 0.1))
    side = chance.choice([angle for angle, _ in sides], p=[share for _, share in sides])
    return Hand(np.dstack([lit * soft[:, :, None], soft]).astype(np.float32), float(side) + chance.uniform(-30, 30))


def _palm(
    colour: Layer, cover: NDArray[np.uint8], size: float, tone: tuple[int, ...], chance: np.random.Generator
) -> None:
    x, y = _TIP
    _stroke(colour, cover, (x, y + 75 * size), (x + 5, y + 125 * size), 82 * size, tone)
    spread, bend = chance.uniform(0.5, 1.2), chance.uniform(0.6, 1.0)
    for finger in range(int(chance.integers(3, 6))):
        lean = (finger - 1.6) * 0.22 * spread
        root = (x + (finger - 1.6) * 20 * size, y + 70 * size)
        end = (root[0] + math.sin(lean) * 60 * size, root[1] - math.cos(lean) * 68 * size * bend)
        darker = tuple(value * (0.86 + 0.05 * finger) for value in tone)
        _stroke(colour, cover, root, end, 21 * size, darker)
    _stroke(colour, cover, (x - 38 * size, y + 110 * size), (x - 70 * size, y + 50 * size), 24 * size, tone)


def _arm(
    colour: Layer, cover: NDArray[np.uint8], size: float, sleeve: tuple[int, ...], chance: np.random.Generator
) -> None:
    x, y = _TIP
    lean = chance.uniform(-60, 60)
    _stroke(colour, cover, (x, y + 150 * size), (x + lean, y + 900), chance.uniform(62, 95) * size, sleeve)


def _tool(colour: Layer, cover: NDArray[np.uint8], size: float, chance: np.random.Generator) -> None:
    x, y = _TIP
    metal, long = _METALS[chance.integers(len(_METALS))], chance.uniform(70, 170) * size
    lean = chance.uniform(-0.6, 0.6)
    end = (x + math.sin(lean) * long, y + 40 - math.cos(lean) * long)
    _stroke(colour, cover, (x, y + 90 * size), end, chance.uniform(7, 18) * size, metal)
    if chance.random() < 0.5:
        _stroke(colour, cover, end, (end[0] + 2, end[1] + 2), 34 * size, metal)


def _stroke(
    colour: Layer, cover: NDArray[np.uint8], start: tuple[float, float], end: tuple[float, float],
    width: float, tone: tuple[float, ...],
) -> None:  # fmt: skip
    first, last = (int(start[0]), int(start[1])), (int(end[0]), int(end[1]))
    cv2.line(colour, first, last, tone, max(int(width), 1), cv2.LINE_AA)
    cv2.line(cover, first, last, 255, max(int(width), 1), cv2.LINE_AA)
