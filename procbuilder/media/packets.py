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

_FROZEN_BITS, _PLAIN_BITS = 0.005, 0.03
"""Bits for each pixel below which a picture repeats the one before, and a key frame is of one plain colour."""
_FREEZE = Fraction(1)
"""Seconds from which repeated pictures are a frozen picture."""

_BIN = Fraction(1, 2)
"""Seconds over which bytes are averaged."""
_QUIET_SHARE, _QUIET, _KEY_SHARE = 10, 1.4, 0.1
"""Percent of the recording that sets what is quiet, how many times that still is, and the most beside a key frame."""

_NEAR = 8
"""Packets on each side with which the size of one is compared."""
_SPIKE, _LARGER = 2.0, 90
"""A picture may be the first after a cut when it takes this many times that percentile of the bytes near it."""
_DROP = 3.0
"""Times by which the bytes of a picture must fall for those after it alone to count as near."""
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
    """The packets of all pictures, at least one, in the order in which they are shown."""

    times: tuple[Fraction, ...]
    end: Fraction
    """Seconds at which the last picture ends."""
    sizes: NDArray[np.float64]
    """Bytes."""
    keys: NDArray[np.bool_]
    pixels: int
    """Of one picture as stored."""

    @classmethod
    def of(cls, tally: Tally, zero: Fraction, pixels: int) -> "Packets":
        """Times in seconds from zero."""
        order = np.argsort(np.array(tally.times), kind="stable").tolist()
        times = tuple(tally.times[i] * tally.base - zero for i in order)
        sizes = np.array(tally.sizes, dtype=np.float64)[order]
        return cls(times, tally.ends(zero), sizes, np.array(tally.keys, dtype=bool)[order], max(pixels, 1))

    @property
    def spacing(self) -> Fraction:
        """Usual seconds between pictures; 0 for a single one."""
        return _usual(self.times)

    @property
    def key_spacing(self) -> Fraction:
        """Usual seconds between key frames; 0 for a single one."""
        return _usual([time for time, key in zip(self.times, self.keys, strict=True) if key])

    def frozen(self) -> tuple[Stretches, Stretches]:
        """Stretches of at least a second in which the same picture is shown, and those of them of one plain colour.

        Repeating a picture takes next to nothing, and so does a key frame of a covered lens. Beside what FFmpeg's
        freezedetect and blackdetect find in decoded pictures, ends were off by up to three pictures. A key frame, and
        the touch-up after it, may stand between: whether something new begins with it shows only later.
        """
        frozen, plain = [], []
        bits = self.sizes * 8 / self.pixels
        repeated = (bits < _FROZEN_BITS) & ~self.keys
        anew = self.keys | np.concatenate([[False], self.keys[:-1]])
        for first, last in _runs(repeated | anew):
            while last > first and not repeated[last]:
                last -= 1
            start = first if self.keys[first] else max(first - 1, 0)
            stretch = Stretch(self.times[start], self._until(last))
            if stretch.seconds < _FREEZE or not repeated[last]:
                continue
            frozen.append(stretch)
            key_bits = bits[start : last + 1][self.keys[start : last + 1]]
            if len(key_bits) and np.all(key_bits < _PLAIN_BITS):
                plain.append(stretch)
        return tuple(frozen), tuple(plain)

    def quiet(self) -> Stretches:
        """Stretches in which the pictures take so few bytes that nothing seems to move before a camera held by hand.

        Half a second is quiet when its pictures take less than 1.4 times the bytes of the quietest tenth of the
        recording, and less than a tenth of those of a key frame. It holds for encoders of constant quality alone:
        one at a constant bit rate fills up what is quiet. A recording in which something moves all the time may have
        its quietest moments taken for still.
        """
        inner = ~self.keys
        if not inner.any() or not self.keys.any():
            return ()
        bins = np.array([int(time / _BIN) for time in self.times])
        first = int(bins.min())
        counts = np.bincount(bins[inner] - first, minlength=int(bins.max()) - first + 1)
        means = np.bincount(bins[inner] - first, self.sizes[inner], len(counts)) / np.maximum(counts, 1)
        least = _QUIET * float(np.percentile(means[counts > 0], _QUIET_SHARE))
        low = (counts > 0) & (means < min(least, _KEY_SHARE * float(np.median(self.sizes[self.keys]))))
        return tuple(Stretch((first + a) * _BIN, min((first + b + 1) * _BIN, self.end)) for a, b in _runs(low))

    def candidates(self) -> tuple[Fraction, ...]:
        """Times at which there may be a cut: key frames out of rhythm, and pictures that take unusually many bytes.

        An encoder that notices a cut writes a key frame; one that does not has to write nearly the whole picture. That
        is more than the pictures after it take, and more than those before it unless their scene was much busier.
        """
        found = {*self._out_of_rhythm(), *self._spikes()}
        return tuple(self.times[index] for index in sorted(found))

    def _out_of_rhythm(self) -> Iterator[int]:
        keys = np.flatnonzero(self.keys).tolist()
        gaps = [late - early for early, late in pairwise(keys)]
        if not gaps:
            return
        usual = mode(gaps)
        if gaps.count(usual) < max(_RHYTHM * len(gaps), 2):
            usual = max(gaps) + 1
        yield from (key for key, gap in zip(keys[1:], gaps, strict=True) if gap != usual)

    def _spikes(self) -> Iterator[int]:
        inner = np.flatnonzero(~self.keys)
        sizes = self.sizes[inner]
        for at, index in enumerate(inner.tolist()):
            before, after = sizes[max(at - _NEAR, 0) : at], sizes[at + 1 : at + 1 + _NEAR]
            whole = len(before) == len(after) == _NEAR
            near = after if whole and before.sum() > _DROP * after.sum() else np.concatenate([before, after])
            if len(near) and sizes[at] > _SPIKE * np.percentile(near, _LARGER):
                yield index

    def _until(self, index: int) -> Fraction:
        return self.times[index + 1] if index + 1 < len(self.times) else self.end


def _usual(times: "list[Fraction] | tuple[Fraction, ...]") -> Fraction:
    return Fraction(median([late - early for early, late in pairwise(times)] or [Fraction(0)]))


def _runs(true: NDArray[np.bool_]) -> Iterator[tuple[int, int]]:
    """First and last index of each run of true values."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], true, [False]]).astype(np.int8)))
    for first, after in zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True):
        yield first, after - 1
