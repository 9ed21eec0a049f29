"""The sound of a recording by the time at which it is heard."""

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
"""Samples a second of a clip, one channel."""

_LOOK_BACK = Fraction(1, 2)
_DRIFT = Fraction(1, 20)
"""Seconds by which a piece may stray from the end of the one before and still follow on it."""


def sound(path: Path, start: Fraction, end: Fraction) -> Samples | None:
    """Mono samples from ``start`` to ``end``, silence where there is none; None when there is none at all.

    A track that cannot be decoded is treated as missing.
    """
    whole = np.zeros(round((end - start) * RATE), dtype=np.float32)
    heard = False
    for first, samples in _placed(path, RATE, start, end):
        low, high = max(first, 0), min(first + len(samples), len(whole))
        if low < high:
            whole[low:high] = samples[low - first : high - first]
        heard = heard or low < high
    return whole if heard else None


def windows(path: Path, rate: int, size: int) -> Iterator[tuple[int, Samples]]:
    """All sound of a recording in windows of ``size`` mono samples, each with the number of its first sample.

    Numbers count from 0:00 of the recording, at ``rate`` a second. Where sound is missing there is no window;
    the last one before a gap is filled up with silence. Only a window and a packet are held at a time.
    """
    held = np.zeros(0, dtype=np.float32)
    at = 0
    for first, samples in _placed(path, rate, Fraction(0), None):
        if first != at + len(held):
            if len(held):
                yield at, np.pad(held, (0, size - len(held)))
            held, at = held[:0], first
        held = np.concatenate([held, samples])
        while len(held) >= size:
            yield at, held[:size]
            held, at = held[size:], at + size
    if len(held):
        yield at, np.pad(held, (0, size - len(held)))


def _placed(path: Path, rate: int, start: Fraction, end: Fraction | None) -> Iterator[tuple[int, Samples]]:
    """Pieces of sound, each with its first sample counted from ``start``; small errors of their times are evened out.

    No piece begins before the end of the one before; the first ones may begin before ``start``.
    """
    follows: int | None = None
    for time, samples in _pieces(path, rate, start, end):
        first = round((time - start) * rate)
        if follows is not None and (first < follows or first - follows < _DRIFT * rate):
            late = follows - first
            samples = samples[max(late, 0) :] if late >= _DRIFT * rate else samples
            first = follows
        if len(samples):
            follows = first + len(samples)
            yield first, samples


def _pieces(path: Path, rate: int, start: Fraction, end: Fraction | None) -> Iterator[tuple[Fraction, Samples]]:
    with opened(path) as container:
        track = sound_track(container)
        if track is None:
            return
        zero = time_zero(container)
        only(container, track)
        if start > _LOOK_BACK:
            seek(container, track, zero + start - _LOOK_BACK)
        resampler = AudioResampler(format="flt", layout="mono", rate=rate)
        for packet in packets(container, track):
            for frame in _frames(packet, resampler):
                time = (frame.pts or 0) * (frame.time_base or Fraction(1, rate)) - zero
                if end is not None and time >= end:
                    return
                yield time, frame.to_ndarray().reshape(-1).astype(np.float32, copy=False)


def _frames(packet: "Packet[Stream]", resampler: AudioResampler) -> list[AudioFrame]:
    try:
        decoded = [frame for frame in packet.decode() if isinstance(frame, AudioFrame)]
        return [piece for frame in decoded for piece in resampler.resample(frame)]
    except (av.FFmpegError, OSError, ValueError):
        return []  # damaged, or it changes its format on the way, which the resampler refuses
