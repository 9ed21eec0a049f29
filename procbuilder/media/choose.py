"""Choosing the moment that shows the finished state of a step best, and saying why."""

import math
from collections.abc import Sequence
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from procbuilder.model.footage import Choice, Measure
from procbuilder.model.timecode import Span, format_time

_Scores = NDArray[np.float64]

_SHARPEST = 1.5
"""Beyond this many standard deviations a sharper picture is no better."""
_SHARPNESS_NOISE, _MOTION_NOISE, _STRANGE_NOISE = 0.05, 0.1, 0.5
"""Differences that mean nothing, in the units of each measure."""
_LIT_TOLERANCE, _LIT_WEIGHT = 0.15, 6.0
_CLIPPED_TOLERANCE, _CLIPPED_WEIGHT = 0.05, 5.0
_LATE_WEIGHT, _LATE_FROM, _LATE_WIDTH = 1.6, 0.5, 0.07
_STRANGE_WEIGHT = 0.5

_DARK = 40.0
"""Mean grey below which a picture is called dark."""
_GLARING = 0.3
"""Share of detailless pixels above which a bright picture is called glaring."""
_SOFT = 4.5
"""Log of block Tenengrad below which nothing in a picture has a clean edge."""
_SOFTER = 0.7
"""How much less sharp than the sharpest of its step a picture may be before it is called blurred."""
_MOVING = math.log(6.0)
"""Log of the mean difference between pictures from which on something large moves."""
_STILL = math.log(1.5)


def choose(measures: Sequence[Measure], span: Span) -> Choice:
    """The best measured moment of a step: sharp, still, well lit, late in the step.

    Without a measured picture inside the span it is the middle of the span, and the reason says so.
    """
    inside = [measure for measure in measures if span.start <= measure.time < span.end]
    if not inside:
        middle = (span.start + span.end) / 2
        return Choice(span.recording, middle, "no picture of this step could be measured; taken from its middle")
    best = inside[int(np.argmax(_score(inside, span)))]
    return Choice(span.recording, best.time, f"{_quality(best, inside)}, {_moment(best.time, span)}")


def _score(measures: Sequence[Measure], span: Span) -> _Scores:
    start, end = measures[0].time, span.end
    lateness = np.array([float((m.time - start) / (end - start)) for m in measures])
    light = np.log(np.array([m.brightness for m in measures]) + 1.0)
    off_light = np.maximum(np.abs(light - np.median(light)) - _LIT_TOLERANCE, 0)
    clipped = np.maximum(np.array([m.clipped for m in measures]) - _CLIPPED_TOLERANCE, 0)
    score: _Scores = (
        np.minimum(_standard([m.sharpness for m in measures], _SHARPNESS_NOISE), _SHARPEST)
        - _standard([m.motion for m in measures], _MOTION_NOISE)
        - _LIT_WEIGHT * off_light
        - _CLIPPED_WEIGHT * clipped
        + _LATE_WEIGHT / (1 + np.exp((_LATE_FROM - lateness) / _LATE_WIDTH))
        - _STRANGE_WEIGHT * _standard([m.strangeness for m in measures], _STRANGE_NOISE)
    )
    return score


def _standard(values: Sequence[float], least: float) -> _Scores:
    """Distance from the mean in standard deviations, of which one is at least ``least``.

    Otherwise the noise between pictures that are all alike would outweigh everything else.
    """
    array = np.array(values, dtype=np.float64)
    scores: _Scores = (array - array.mean()) / max(float(array.std()), least)
    return scores


def _quality(best: Measure, measures: Sequence[Measure]) -> str:
    faults = _faults(best, max(measure.sharpness for measure in measures))
    if faults:
        return f"the best there is, but {' and '.join(faults)}"
    return "sharp and still" if best.motion <= _STILL else "sharp"


def _faults(best: Measure, sharpest: float) -> list[str]:
    found = (
        (best.brightness < _DARK, "dark"),
        (best.clipped > _GLARING and best.brightness > 255 / 2, "glaring"),
        (best.sharpness < _SOFT or sharpest - best.sharpness > _SOFTER, "blurred"),
        (best.motion > _MOVING, "in motion"),
    )
    return [word for true, word in found if true]


def _moment(time: Fraction, span: Span) -> str:
    left = round(span.end - time)
    return f"{format_time(Fraction(left))} before the end of the step" if left else "at the end of the step"
