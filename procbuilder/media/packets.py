"""What the packets of a recording tell before a single picture is decoded."""

from array import array
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise
from statistics import median, mode

import numpy as np
from av.packet import Packet
from av.stream import Stream
from numpy.typing import NDArray

from procbuilder.model.stretch import Stretch, Stretches

_Sizes = NDArray[np.float64]

_FROZEN_BITS, _PLAIN_BITS = 0.005, 0.03
"""Bits for each pixel below which a picture repeats the one before, and a key frame is of one plain colour."""
_FREEZE = Fraction(1)
"""Seconds from which repeated pictures are a frozen picture."""

_NEAR = 8
"""Packets on each side with which the size of one is compared."""
_SPIKE = 1.5
"""A picture that takes this many times the bytes of the larger ones near it may be the first after a cut."""
_RHYTHM = 0.6
"""Share of the key frames that must follow at the same distance for others to be out of rhythm."""


@dataclass(slots=True)
class Tally:
    """The packets of one track; times in ticks of the track."""

    base: Fraction
    times: "array[int]" = field(default_factory=lambda: array("q"))
    sizes: "array[int]" = field(default_factory=lambda: array("q"))
    keys: bytearray = field(default_factory=bytearray)
    end: int = 0
    last_length: int = 0
    damaged: int = 0

    def add(self, packet: "Packet[Stream]") -> None:
        """Counts one packet; the empty closing one and those that players pass over do not count."""
        time = packet.pts if packet.pts is not None else packet.dts
        if time is None or packet.size == 0 or packet.is_discard:
            return
        self.damaged += packet.is_corrupt
        if not self.times or time + (packet.duration or 0) >= self.end:
            self.end, self.last_length = time + (packet.duration or 0), packet.duration or 0
        self.times.append(time)
        self.sizes.append(packet.size)
        self.keys.append(packet.is_keyframe)

    @property
    def gaps(self) -> list[int]:
        """Ticks between one picture and the next, in the order in which they are shown."""
        ordered = sorted(self.times)
        return [late - early for early, late in pairwise(ordered) if late > early]

    def ends(self, zero: Fraction) -> Fraction:
        """Seconds from zero to the end of the last packet; one without a length lasts as long as is usual."""
        usual = 0 if self.last_length else round(median(self.gaps or [0]))
        return (self.end + usual) * self.base - zero

    def starts(self, zero: Fraction) -> Fraction:
        """Seconds from zero to the first packet."""
        return min(self.times) * self.base - zero


@dataclass(frozen=True, slots=True)
class Packets:
    """The packets of the pictures in the order in which they are shown."""

    times: tuple[Fraction, ...]
    sizes: _Sizes
    """Bytes."""
    keys: NDArray[np.bool_]
    pixels: int
    """Of one picture as stored."""

    @classmethod
    def of(cls, tally: Tally, zero: Fraction, pixels: int) -> "Packets":
        """Times in seconds from zero."""
        order = np.argsort(np.array(tally.times), kind="stable")
        times = tuple(tally.times[i] * tally.base - zero for i in order)
        sizes = np.array(tally.sizes, dtype=np.float64)[order]
        return cls(times, sizes, np.array(tally.keys, dtype=bool)[order], max(pixels, 1))

    @property
    def spacing(self) -> Fraction:
        """Usual seconds between pictures; 0 for a single one."""
        return median([late - early for early, late in pairwise(self.times)] or [Fraction(0)])

    @property
    def key_spacing(self) -> Fraction:
        """Usual seconds between key frames; 0 for a single one."""
        keys = [time for time, key in zip(self.times, self.keys, strict=True) if key]
        return median([late - early for early, late in pairwise(keys)] or [Fraction(0)])

    def frozen(self, end: Fraction) -> tuple[Stretches, Stretches]:
        """Stretches of at least a second in which the same picture is shown, and those of one plain colour.

        Repeating a picture takes next to nothing, and so does a key frame of a covered lens. Measured against the
        frozen and the black stretches that FFmpeg's filters find in decoded pictures: exact to a picture.
        """
        frozen, plain = [], []
        bits = self.sizes * 8 / self.pixels
        for first, last in _runs((bits < _FROZEN_BITS) | self.keys):
            start = max(first - 1, 0) if not self.keys[first] else first
            until = self.times[last + 1] if last + 1 < len(self.times) else end
            stretch = Stretch(self.times[start], until)
            inner = bits[first : last + 1][self.keys[first : last + 1]]
            if stretch.seconds < _FREEZE or np.all(self.keys[first : last + 1]):
                continue
            frozen.append(stretch)
            if len(inner) and np.all(inner < _PLAIN_BITS):
                plain.append(stretch)
        return tuple(frozen), tuple(plain)

    def candidates(self) -> tuple[Fraction, ...]:
        """Times at which there may be a cut: key frames out of rhythm, and pictures that take unusually many bytes.

        An encoder that notices a cut writes a key frame; one that does not has to write nearly the whole picture.
        """
        found = {*self._out_of_rhythm(), *self._spikes()}
        return tuple(self.times[index] for index in sorted(found))

    def _out_of_rhythm(self) -> Iterator[int]:
        keys = np.flatnonzero(self.keys)
        gaps = np.diff(keys).tolist()
        if not gaps:
            return
        usual = mode(gaps)
        if gaps.count(usual) < max(_RHYTHM * len(gaps), 2):
            usual = max(gaps) + 1
        yield from (int(key) for key, gap in zip(keys[1:], gaps, strict=True) if gap != usual)

    def _spikes(self) -> Iterator[int]:
        sizes = np.where(self.keys, np.nan, self.sizes)
        for index in np.flatnonzero(~self.keys).tolist():
            near = np.concatenate([sizes[max(index - _NEAR, 0) : index], sizes[index + 1 : index + 1 + _NEAR]])
            near = near[~np.isnan(near)]
            if len(near) and sizes[index] > _SPIKE * np.percentile(near, 90):
                yield index


def _runs(true: NDArray[np.bool_]) -> Iterator[tuple[int, int]]:
    """First and last index of each run of true values."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], true, [False]]).astype(np.int8)))
    for first, after in zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True):
        yield first, after - 1
