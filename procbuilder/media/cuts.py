"""Cuts: moments at which the picture changes more than the motion around them explains."""

from collections import deque
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain, repeat
from pathlib import Path

import cv2
import numpy as np
from av.video.frame import VideoFrame
from numpy.typing import NDArray

from procbuilder.media.decode import frames
from procbuilder.media.scaling import rescaled
from procbuilder.model.footage import Cut, Looked, PacketFacts
from procbuilder.model.stretch import Stretch, Stretches, joined

Grey = NDArray[np.uint8]

SIZE = (160, 90)
NEAR = 8
"""Pictures on each side with which a change is compared."""

_PERCENTILE = 75
_RATIO, _NOISE, _LEAST = 1.75, 0.5, 3.0
"""A cut is more than ``_RATIO`` times the usual change plus ``_NOISE``, and more than ``_LEAST``, in grey levels."""
_ALONE = 1.25
"""A cut is larger than this many times every other change near it: a hammer, or a film of few pictures, is none."""
_LASTING = 0.5
"""Share of the change that is still there some pictures later; after a flash there is none."""
_SAME_PLACE = 0.5
"""Correlation of the pictures on both sides from which the camera has not moved."""
_AFTER = 3


def small(frame: VideoFrame) -> Grey:
    """A decoded picture as ``find`` takes it: 160 by 90 grey levels, area-averaged."""
    return rescaled(frame, *SIZE, "gray", interpolation="AREA").to_ndarray().astype(np.uint8, copy=False)


@dataclass(frozen=True, slots=True)
class _Seen:
    time: Fraction
    picture: Grey
    change: float
    """Mean difference to the picture before, 0 to 255; 0 for the first."""


def find(pictures: Iterable[tuple[Fraction, Grey]]) -> Iterator[Cut]:
    """Cuts in a row of pictures that follow on each other, each with the time of the first picture after it.

    A change counts when it is more than 3 of 255 grey levels, than 1.75 times the 75th percentile of the changes
    within eight pictures on each side plus 0.5, and than 1.25 times the largest of them; and when it lasts, as that
    of a flash does not. It is a jump when the pictures before and after are of the same place.

    Measured with ``tests/bench/cut_finding.py``: ratios were chosen on one set of clips and told of another.

    Args:
        pictures: Every picture of a stretch, none left out, as made by ``small``.
    """
    near: deque[_Seen | None] = deque([None] * NEAR, maxlen=2 * NEAR + 1)
    for seen in chain(_seen(pictures), repeat(None, NEAR)):
        near.append(seen)
        if len(near) == near.maxlen and (cut := _judge(near)):
            yield cut


def _seen(pictures: Iterable[tuple[Fraction, Grey]]) -> Iterator[_Seen]:
    before: Grey | None = None
    for time, picture in pictures:
        yield _Seen(time, picture, 0.0 if before is None else _difference(before, picture))
        before = picture


def _judge(near: "deque[_Seen | None]") -> Cut | None:
    """Whether the change in the middle is a cut."""
    middle, before = near[NEAR], near[NEAR - 1]
    if middle is None or before is None or middle.change <= _LEAST:
        return None
    others = [seen.change for index, seen in enumerate(near) if seen and index != NEAR]
    usual = float(np.percentile(others, _PERCENTILE)) + _NOISE
    if middle.change <= max(_RATIO * usual, _ALONE * max(others)):
        return None
    after = [seen for seen in list(near)[NEAR : NEAR + _AFTER + 1] if seen][-1]
    if _difference(before.picture, after.picture) <= _LASTING * middle.change:
        return None
    return Cut(middle.time, jump=alike(before.picture, middle.picture))


def _difference(one: Grey, other: Grey) -> float:
    return float(np.mean(cv2.absdiff(one, other)))


def alike(one: Grey, other: Grey) -> bool:
    """Whether the camera stands where it stood: bright is bright and dark is dark in both."""
    a, b = (picture.astype(np.float64) - picture.mean() for picture in (one, other))
    spread = float(np.sqrt((a * a).sum() * (b * b).sum()))
    return spread == 0 or float((a * b).sum()) / spread >= _SAME_PLACE


def suspects(film: PacketFacts, looked: Looked) -> Stretches:
    """Where a cut may be, found without decoding more than key frames."""
    near = (Stretch(time - film.spacing, time + film.spacing) for time in film.candidates)
    return joined((*near, *looked.unlike))


def cuts_within(path: Path, film: PacketFacts, stretches: Iterable[Stretch]) -> tuple[Cut, ...]:
    """All cuts that can be found in these stretches; every picture of them, and some on each side, is decoded.

    Args:
        path: The recording.
        film: What its packets tell.
        stretches: Where to look.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    around = (NEAR + 1) * film.spacing
    wanted = joined(stretches)
    wider = (Stretch(max(each.start - around, Fraction(0)), each.end + around) for each in wanted)
    # decoding begins at a key frame: going on from one place to the next costs less than starting anew
    together = joined(wider, film.key_spacing)
    found = (cut for each in together for cut in find(_small_pictures(path, each)))
    return tuple(cut for cut in found if any(each.start <= cut.time < each.end for each in wanted))


def _small_pictures(path: Path, stretch: Stretch) -> Iterator[tuple[Fraction, Grey]]:
    return ((time, small(frame)) for time, frame in frames(path, stretch.start, stretch.end) if not frame.is_corrupt)
