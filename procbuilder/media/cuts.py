"""Cuts: moments at which the picture changes more than the motion around them explains."""

from collections import deque
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import chain, repeat
from pathlib import Path

import numpy as np
from av.video.frame import VideoFrame

from procbuilder.media.decode import frames
from procbuilder.media.difference import Differ, Grey, Levels, Soft, apart, least, moved, soft
from procbuilder.media.scaling import rescaled
from procbuilder.model.footage import Cut, Looked, PacketFacts
from procbuilder.model.stretch import Stretch, Stretches, joined

SIZE = (160, 90)
NEAR = 6
"""Pictures on each side with which a change is compared."""

_PLACE_LEAST, _PLACE_RATIO = 3.0, 1.25
"""Grey levels to another place, and how many times every change near it that is."""
_JUMP_LEAST, _JUMP_RATIO = np.array([1.5, 4.0]), np.array([1.5, 1.75])
"""The same for a jump, light taken out: in the whole picture, and in the tenth of it that changes most."""
_NOISE = np.array([0.5, 1.0])
"""Grey levels that are added to every change with which a jump is compared."""
_FURTHER, _GROWTH = 2, 0.3
"""So many pictures further away on both sides a jump has grown, by at most that share of itself with each."""
_LASTING, _AFTER = 0.6, 4
"""Share of a change that is there between all of so many pictures on each side; after a flash there is none."""
_SAME_PLACE = 0.5
"""Correlation of the pictures on both sides from which the camera has not moved."""


def small(frame: VideoFrame) -> Grey:
    """A decoded picture as ``find`` takes it: 160 by 90 grey levels, area-averaged."""
    return rescaled(frame, *SIZE, "gray", interpolation="AREA").to_ndarray().astype(np.uint8, copy=False)


@dataclass(frozen=True, slots=True)
class _Seen:
    """A picture, and how it differs from those before it in grey levels; 0 where there is none."""

    time: Fraction
    picture: Soft
    apart: float = 0.0
    """From the picture before."""
    moved: Levels = field(default_factory=lambda: np.zeros(2))
    """The same, light taken out: in the whole picture, and in the tenth of it that has changed most."""
    cut: bool = False
    """It shows another place than the picture before."""


_Window = Sequence[_Seen | None]
"""A picture in the middle and ``NEAR`` on each side; None beyond the ends."""


def find(pictures: Iterable[tuple[Fraction, Grey]]) -> Iterator[Cut]:
    """Cuts in a row of pictures that follow on each other, each with the time of the first picture after it.

    To another place: the pictures on both sides are not alike, and differ by more than 1.25 times what any two
    neighbours near them do.

    A jump at the same place: more than light has changed, by more than 1.5 times what any two neighbours near it do, or
    by 1.75 times in the tenth of the picture that changes most, as when a hand moves before a large ground. What moves
    is the further off the more time goes by, what jumps is not, so that pictures lost on the way are no jump: one
    picture further on both sides it may grow by 0.3 of itself, two further by 0.6. It is compared with pictures of its
    own shot alone, and with the largest changes there: pictures that are repeated do not count.

    Both must last, as a flash does not. Measured with ``tests/bench/cut_finding.py``: ratios were chosen on one set of
    films and told of others.

    Args:
        pictures: Every picture of a stretch, none left out, as made by ``small``.
    """
    placed = (replace(seen, cut=_elsewhere(window)) for seen, window in _windows(_seen(pictures)))
    for seen, window in _windows(placed):
        if seen.cut or _jumps(window):
            yield Cut(seen.time, jump=not seen.cut)


def _seen(pictures: Iterable[tuple[Fraction, Grey]]) -> Iterator[_Seen]:
    last: Soft | None = None
    for time, grey in pictures:
        now = soft(grey)
        if last is None:
            yield _Seen(time, now)
        else:
            yield _Seen(time, now, float(apart(last, now)), moved(last, now))
        last = now


def _windows(row: Iterable[_Seen]) -> Iterator[tuple[_Seen, _Window]]:
    """Each with what is around it."""
    near: deque[_Seen | None] = deque([None] * NEAR, maxlen=2 * NEAR + 1)
    for seen in chain(row, repeat(None, NEAR)):
        near.append(seen)
        if len(near) == near.maxlen and (middle := near[NEAR]):
            yield middle, tuple(near)


def _elsewhere(window: _Window) -> bool:
    """Whether the picture in the middle shows another place than the one before, and goes on to."""
    before, now, after = _sides(window)
    usual = max((seen.apart for seen in (*before, *after[1:])), default=0.0)
    if now.apart <= max(_PLACE_LEAST, _PLACE_RATIO * usual) or alike(before[-1].picture, now.picture):
        return False
    return bool(_lasting(before, after, apart) > _LASTING * now.apart)


def _jumps(window: _Window) -> bool:
    """Whether the picture in the middle shows the same place at a later time than the one before."""
    before, now, after = _sides(window)
    large = now.moved > _JUMP_LEAST
    if not large.any() or min(len(before), len(after)) < _AFTER:
        return False
    usual = np.max([seen.moved for seen in (*before[1:], *after[1:])], axis=0) + _NOISE
    large &= now.moved > _JUMP_RATIO * usual
    if not large.any():
        return False
    for further in range(1, _FURTHER + 1):
        large &= moved(before[-1 - further].picture, after[further].picture) <= (1 + _GROWTH * further) * now.moved
    return bool((large & (_lasting(before, after, moved) > _LASTING * now.moved)).any())


def _sides(window: _Window) -> tuple[list[_Seen], _Seen, list[_Seen]]:
    """What is before the middle, the middle, and what begins with it; all of one shot on either side."""
    middle = window[NEAR]
    assert middle is not None
    before, after = list[_Seen](), [middle]
    for seen in reversed(window[:NEAR]):
        if seen is None or (before and before[0].cut):
            break
        before.insert(0, seen)
    for seen in window[NEAR + 1 :]:
        if seen is None or seen.cut:
            break
        after.append(seen)
    return before, middle, after


def _lasting(before: Sequence[_Seen], after: Sequence[_Seen], differ: Differ) -> Levels:
    """What there is of a change between any picture before it and any after it."""
    ours, theirs = ([seen.picture for seen in side] for side in (before[-_AFTER:], after[:_AFTER]))
    return least(ours, theirs, differ)


def alike(one: Grey | Soft, other: Grey | Soft) -> bool:
    """Whether the camera stands where it stood: bright is bright and dark is dark in both."""
    a, b = (picture.astype(np.float64) - picture.mean() for picture in (one, other))
    contrast = float(np.sqrt((a * a).sum() * (b * b).sum()))
    if not contrast:
        return not (a.any() or b.any())
    return float((a * b).sum()) / contrast >= _SAME_PLACE


def suspects(film: PacketFacts, looked: Looked) -> Stretches:
    """Where a cut may be, found without decoding more than key frames."""
    near = (Stretch(time - film.spacing, time + film.spacing) for time in film.candidates)
    # the second of two key frames may itself be the first picture after the cut
    between = (Stretch(each.start, each.end + film.spacing) for each in looked.unlike)
    return joined((*near, *between))


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
