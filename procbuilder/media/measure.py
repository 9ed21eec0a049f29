"""Measuring every picture at the end of a step: how sharp, how still, how well lit, how unlike the rest."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import cv2
import numpy as np
from av.video.frame import VideoFrame
from numpy.typing import NDArray

from procbuilder.media.decode import frames
from procbuilder.media.stretches import kept, tail
from procbuilder.model.footage import Measure
from procbuilder.model.timecode import Span

Grey = NDArray[np.uint8]

WINDOW = Fraction(10)
"""Seconds of footage, counted from the end of a step, among which its picture is looked for."""

_SPACING = Fraction(1, 16)
"""Pictures that follow closer than this many seconds tell nothing new."""

_WIDTH = 640
_SMALL = (80, 45)
_BLOCKS = (8, 6)
_PERCENTILE = 90
_MOTION_RADIUS = 2
"""Pictures on each side over which motion is averaged: five in all."""

_BLACK, _WHITE = 4, 251
_NOISE = 0.1
"""Added to a mean difference, in grey levels, so that a frozen picture has a logarithm."""


@dataclass(frozen=True, slots=True)
class _Look:
    """One picture, reduced to what is needed once it is gone."""

    time: Fraction
    sharpness: float
    brightness: float
    clipped: float
    small: Grey


def measure(path: Path, span: Span, *, skips: Iterable[Span] = ()) -> tuple[Measure, ...]:
    """Measures the pictures in the last 10 seconds of a step that are not skipped, in order of time.

    Sharpness is taken on an area-averaged picture 640 pixels wide: sensor noise makes fine-grained measures
    call a blurred picture sharp. Damaged pictures are left out; a stretch without any gives an empty result.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    stretches = [list(_looks(path, part)) for part in tail(kept(span, skips), WINDOW)]
    looks = [look for stretch in stretches for look in stretch]
    if not looks:
        return ()
    motions = [motion for stretch in stretches for motion in _motions(stretch)]
    usual = np.median(np.stack([look.small for look in looks]), axis=0)
    return tuple(
        Measure(
            time=look.time,
            sharpness=look.sharpness,
            motion=motion,
            brightness=look.brightness,
            clipped=look.clipped,
            strangeness=float(np.mean(np.abs(look.small - usual))),
        )
        for look, motion in zip(looks, motions, strict=True)
    )


def _looks(path: Path, part: Span) -> Iterator[_Look]:
    due = part.start
    for time, frame in frames(path, part.start, part.end):
        if time >= due and not frame.is_corrupt:
            due = time + _SPACING
            yield _look(time, frame)


def _look(time: Fraction, frame: VideoFrame) -> _Look:
    width = min(_WIDTH, frame.width)
    height = max(round(frame.height * width / frame.width), 1)
    grey = frame.reformat(width, height, "gray", interpolation="AREA").to_ndarray().astype(np.uint8, copy=False)
    clipped = float(np.mean((grey <= _BLACK) | (grey >= _WHITE)))
    small = cv2.resize(grey, _SMALL, interpolation=cv2.INTER_AREA).astype(np.uint8, copy=False)
    return _Look(time, _sharpness(grey), float(grey.mean()), clipped, small)


def _sharpness(grey: Grey) -> float:
    """Log of the Tenengrad of the sharp parts: nine blocks in ten may be plain or out of focus."""
    across = cv2.Sobel(grey, cv2.CV_32F, 1, 0, ksize=3)
    down = cv2.Sobel(grey, cv2.CV_32F, 0, 1, ksize=3)
    blocks = cv2.resize(across * across + down * down, _BLOCKS, interpolation=cv2.INTER_AREA)
    return math.log1p(float(np.percentile(blocks, _PERCENTILE)))


def _motions(looks: list[_Look]) -> list[float]:
    """Log of the mean difference between neighbours, averaged over five pictures of one stretch."""
    steps = [float(np.mean(cv2.absdiff(one.small, two.small))) for one, two in pairwise(looks)]
    steps = steps[:1] + steps or [0.0] * len(looks)
    near = (steps[max(i - _MOTION_RADIUS, 0) : i + _MOTION_RADIUS + 1] for i in range(len(looks)))
    return [math.log(sum(part) / len(part) + _NOISE) for part in near]
