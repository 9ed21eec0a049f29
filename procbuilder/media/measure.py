"""Measuring the pictures of a step against each other: how sharp, how still, how well lit, with what in front."""

import math
from collections.abc import Sequence

import numpy as np

from procbuilder.media.calm import paces, runs
from procbuilder.media.front import covered
from procbuilder.media.look import Floats, Look
from procbuilder.model.footage import Measure

_PERCENTILE = 90
"""Of the blocks of a picture: nine in ten may be plain or out of focus."""
_FAINT = 200.0
"""Mean squared gradient that noise alone may leave in a block."""


def measured(looks: Sequence[Look]) -> tuple[Measure, ...]:
    """The measures of pictures in order of time.

    Neighbours are compared with each other, and each calm moment with the rest. Sharpness within one step can be
    compared, between steps it cannot.
    """
    if not looks:
        return ()
    pace = paces(looks)
    calm = runs([each.calm for each in pace])
    numbers, front = [0] * len(looks), [False] * len(looks)
    for number, (stretch, in_front) in enumerate(zip(calm, covered(looks, calm), strict=True), 1):
        for index in stretch:
            numbers[index], front[index] = number, in_front
    light = np.log(np.array([look.brightness for look in looks]) + 1)
    usual, lost = float(np.median(light)), _lost(looks)
    acuity = [_acuity(look) for look in looks]
    sharp = float(np.median(acuity))
    return tuple(
        Measure(
            time=look.time, sharpness=math.log1p(float(np.percentile(look.detail, _PERCENTILE))), lost=lost[i],
            acuity=acuity[i], blunter=sharp - acuity[i],
            brightness=look.brightness, light=float(light[i]) - usual, white=look.white,
            motion=pace[i].motion, camera=pace[i].camera, away=pace[i].away, calm=numbers[i],
            covered=front[i], alone=pace[i].alone,
        )
        for i, look in enumerate(looks)
    )  # fmt: skip


def _lost(looks: Sequence[Look]) -> list[float]:
    """How much less detail each picture has than the best of each place: log, median over the places with detail.

    Light is taken out. A hand adds edges in some places and hides others, but blur takes them everywhere.
    """
    light = np.array([look.brightness + 5 for look in looks])
    details = np.log(np.array([look.detail for look in looks]) / light[:, None] ** 2 + _FAINT / 128**2)
    best = np.percentile(details, 95, axis=0)
    rich = best >= np.median(best)
    return [float(value) for value in np.median((best - details)[:, rich], axis=1)]


def _acuity(look: Look) -> float:
    """Log of fine against coarse detail in the sharp parts, that of the plain parts taken off as noise."""
    return _above_noise(look.detail) - _above_noise(look.coarse)


def _above_noise(detail: Floats) -> float:
    low, high = np.percentile(detail, [10, _PERCENTILE])
    return math.log(max(float(high - low), 0.0) + 1)
