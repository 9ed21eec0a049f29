"""Where nothing moves: from key frames when a phone writes one each second, else from the sizes of packets."""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import cv2
import numpy as np

from procbuilder.media.cuts import SIZE, alike, small
from procbuilder.media.decode import pictures_of
from procbuilder.media.difference import Grey, soft, spread, unlit
from procbuilder.media.opening import only, opened, packets, picture_track, time_zero
from procbuilder.model.fault import Cause, Unreadable
from procbuilder.model.footage import Looked, PacketFacts
from procbuilder.model.stretch import Stretch, Stretches, joined

PAUSE = Fraction(2)
"""Seconds from which stillness counts; a shorter pause belongs to the work."""

_OFTEN, _SELDOM = Fraction(2), Fraction(5)
"""Seconds between key frames up to which they tell of motion, and up to which they tell of cuts between them."""
_APART = Fraction(9, 10)
"""Seconds within which slow work changes too little to be told from grain."""
_SWAY = 8.0
"""Pixels of 160 by which a hand holding the camera moves it within a second or two."""
_MOVED = 4.0
"""Grey levels by which a moving thing changes one block in twenty."""
_BLOCKS, _PERCENTILE = (12, 8), 95
_ALL_OVER = 9.0
"""Grey levels by which all parts of the picture differ when a place that is like another one comes after it."""


def look(path: Path, film: PacketFacts) -> Looked:
    """Still stretches of a recording, and between which key frames the place changes.

    A phone writes a key frame each second at a constant bit rate: there packets say nothing of motion, and key
    frames do. A program for cutting keeps the quality constant and writes few key frames: there packets tell.
    Measured on real clips with held pictures between, before a camera that sways, as the chance that a moving moment
    ranks above a still one: at a constant bit rate 0.64 to 0.79 by packets and 1.00 by key frames; at constant
    quality 0.999 to 1.00 by packets, with too few key frames to say anything. What moves is larger there than two
    fingers: such work may be taken for still.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    often = film.key_spacing <= _OFTEN
    if not 0 < film.key_spacing <= _SELDOM:
        return Looked(_lasting((*film.quiet, *film.frozen)), ())
    still, unlike = [*film.frozen, *(() if often else film.quiet)], []
    # a key frame out of rhythm is itself the first picture after the cut
    noticed = set(() if often else film.candidates)
    for (start, before), (end, after) in pairwise(_key_pictures(path)):
        if _elsewhere(before, after):
            if end not in noticed:
                unlike.append(Stretch(start, end))
        elif often and end - start <= _OFTEN and motion(before, after) < _MOVED:
            still.append(Stretch(start, end))
    return Looked(_lasting(still), tuple(unlike))


def _elsewhere(before: Grey, after: Grey) -> bool:
    """Whether two pictures show different places, even if one is bright where the other is."""
    return not alike(before, after) or spread(unlit(soft(before), soft(after))) > _ALL_OVER


def motion(before: Grey, after: Grey) -> float:
    """Grey levels by which one block in twenty differs, once the sway of the camera is taken out; infinite beyond it.

    Args:
        before, after: Pictures as made by ``small``.
    """
    (right, down), _ = cv2.phaseCorrelate(before.astype(np.float32), after.astype(np.float32))
    if max(abs(right), abs(down)) > _SWAY:
        return float("inf")
    move = np.array([[1, 0, right], [0, 1, down]], dtype=np.float32)
    steady = cv2.warpAffine(before, move, SIZE, borderMode=cv2.BORDER_REPLICATE)
    soft = [cv2.GaussianBlur(picture, (0, 0), 1) for picture in (steady, after)]
    inside = cv2.absdiff(*soft)[int(_SWAY) : -int(_SWAY), int(_SWAY) : -int(_SWAY)]
    blocks = cv2.resize(inside.astype(np.float32), _BLOCKS, interpolation=cv2.INTER_AREA)
    return float(np.percentile(blocks, _PERCENTILE))


def _key_pictures(path: Path) -> Iterator[tuple[Fraction, Grey]]:
    """Key frames at least ``_APART`` from each other; the others, and all that lies between, is not decoded."""
    with opened(path) as container:
        track = picture_track(container)
        if track is None or track.time_base is None:
            raise Unreadable(path, Cause.NO_PICTURES)
        zero = time_zero(container)
        only(container, track)
        track.codec_context.skip_frame = "NONKEY"
        track.codec_context.options = {"skip_loop_filter": "all"}  # it smooths edges that are not seen in 160 pixels
        due: Fraction | None = None
        for packet in packets(container, track):
            time = (packet.pts or packet.dts or 0) * track.time_base
            if packet.size and not (packet.is_keyframe and (due is None or time >= due)):
                continue
            due = time + _APART
            for frame in pictures_of(packet):
                if frame.pts is not None and frame.time_base is not None and not frame.is_corrupt:
                    yield frame.pts * frame.time_base - zero, small(frame)


def _lasting(stretches: Iterable[Stretch]) -> Stretches:
    return tuple(each for each in joined(stretches) if each.seconds >= PAUSE)
