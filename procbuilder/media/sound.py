"""The sound of a stretch of a recording, exactly as long as the stretch."""

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import av
import numpy as np
from av.audio.frame import AudioFrame
from av.audio.resampler import AudioResampler
from av.packet import Packet
from av.stream import Stream
from numpy.typing import NDArray

from procbuilder.media.opening import only, opened, packets, seek, sound_track, time_zero

Samples = NDArray[np.float32]

RATE = 48_000
"""Samples a second, one channel."""

_LOOK_BACK = Fraction(1, 2)
_DRIFT = RATE // 20
"""Samples by which a piece may stray from the end of the one before and still follow on it."""


def sound(path: Path, start: Fraction, end: Fraction) -> Samples | None:
    """Mono samples from ``start`` to ``end``, silence where there is none; None when there is none at all.

    A track that cannot be decoded is treated as missing.
    """
    whole = np.zeros(round((end - start) * RATE), dtype=np.float32)
    heard, follows = False, 0
    for time, samples in _pieces(path, start, end):
        first = round((time - start) * RATE)
        first = follows if heard and abs(first - follows) < _DRIFT else first
        follows = first + len(samples)
        low, high = max(first, 0), min(follows, len(whole))
        if low < high:
            whole[low:high] = samples[low - first : high - first]
        heard = heard or low < high
    return whole if heard else None


def _pieces(path: Path, start: Fraction, end: Fraction) -> Iterator[tuple[Fraction, Samples]]:
    with opened(path) as container:
        track = sound_track(container)
        if track is None:
            return
        zero = time_zero(container)
        only(container, track)
        if start > _LOOK_BACK:
            seek(container, track, zero + start - _LOOK_BACK)
        resampler = AudioResampler(format="flt", layout="mono", rate=RATE)
        for packet in packets(container, track):
            for frame in _frames(packet, resampler):
                time = (frame.pts or 0) * (frame.time_base or Fraction(1, RATE)) - zero
                if time >= end:
                    return
                yield time, frame.to_ndarray().reshape(-1).astype(np.float32, copy=False)


def _frames(packet: "Packet[Stream]", resampler: AudioResampler) -> list[AudioFrame]:
    try:
        decoded = [frame for frame in packet.decode() if isinstance(frame, AudioFrame)]
        return [piece for frame in decoded for piece in resampler.resample(frame)]
    except (av.FFmpegError, OSError, ValueError):
        return []  # damaged, or it changes its format on the way, which the resampler refuses
