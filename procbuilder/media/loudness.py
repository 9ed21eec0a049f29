"""How loud a sound is by EBU R 128, and speech brought to the level that it asks for.

What counts is the speech: were a whole clip levelled, one blow of a hammer would make the words before it inaudible.
"""

import av
import numpy as np
from av.audio.frame import AudioFrame
from av.audio.resampler import AudioResampler
from av.filter import Graph

from procbuilder.media import voice
from procbuilder.media.sound import RATE, Samples

TARGET = -23.0
"""LUFS of speech: the programme level of EBU R 128, so that clips of all recordings are equally loud."""

CEILING = -1.0
"""Decibels of full scale that the true peak does not pass: the limit of EBU R 128."""

_MOST = 24.0
"""Decibels by which speech is raised at most; what is fainter is not meant to be heard."""

_SILENT = -70.0
"""LUFS that the meter shows where nothing passes its gate."""

_MARGIN = 1.0
"""Decibels below the ceiling at which peaks are held, since coding puts a little on top of them."""

_BLOCK = RATE // 1000
_REACH, _SMOOTH = 5, 4
"""Blocks on each side for which a peak lowers the level, and over which the level is smoothed; less than the first."""

_PHASES, _TAPS = 4, 12
"""Points between samples at which true peaks are looked for (ITU-R BS.1770-5, annex 2), and samples that tell each."""


def loudness(samples: Samples, rate: int = RATE) -> float | None:
    """Integrated loudness in LUFS (ITU-R BS.1770-5); None when nothing is loud enough to be measured.

    Args:
        samples: One channel, or rows of a left and a right one.
        rate: Samples a second.
    """
    channels = np.atleast_2d(samples)
    if not channels.size:
        return None
    layout = "mono" if len(channels) == 1 else "stereo"
    graph = Graph()
    source = graph.add_abuffer(sample_rate=rate, format="fltp", layout=layout)
    graph.link_nodes(source, graph.add("ebur128", metadata="1"), graph.add("abuffersink")).configure()
    frame = AudioFrame.from_ndarray(np.ascontiguousarray(channels, dtype=np.float32), format="fltp", layout=layout)
    frame.rate, frame.pts = rate, 0
    graph.push(frame)
    graph.push(None)
    found = _SILENT
    try:
        while True:
            found = float(graph.pull().metadata.get("lavfi.r128.I", found))
    except (av.BlockingIOError, av.EOFError):
        return found if found > _SILENT else None


def levelled(sounds: list[Samples]) -> list[Samples]:
    """Sounds of one recording, of which the speech has the target level; without speech, as loud as they are.

    Peaks above the ceiling, such as blows, are turned down for a few milliseconds.
    """
    whole = np.concatenate(sounds)
    if not len(whole):
        return sounds
    measured = loudness(_speech(whole))
    gain = min(TARGET - measured, _MOST) if measured is not None else 0.0
    ready = limited(whole * np.float32(10 ** (gain / 20)))
    return np.split(ready, np.cumsum([len(each) for each in sounds])[:-1])


def _speech(samples: Samples) -> Samples:
    """All that is said, without the pauses between sentences."""
    stretches = voice.spoken(_resampled(samples, voice.RATE))
    parts = [samples[round(each.start * RATE) : round(each.end * RATE)] for each in stretches]
    return np.concatenate([np.zeros(0, dtype=np.float32), *parts])


def _resampled(samples: Samples, rate: int) -> Samples:
    frame = AudioFrame.from_ndarray(samples.reshape(1, -1), format="flt", layout="mono")
    frame.rate = RATE
    resampler = AudioResampler(format="flt", layout="mono", rate=rate)
    pieces = [piece.to_ndarray().reshape(-1) for given in (frame, None) for piece in resampler.resample(given)]
    return np.concatenate([np.zeros(0), *pieces]).astype(np.float32)


def limited(samples: Samples) -> Samples:
    """The sound with its true peaks held below the ceiling; most of it is returned as it is."""
    highest = 10 ** ((CEILING - _MARGIN) / 20)
    peaks = true_peaks(samples)
    if not len(peaks) or peaks.max() <= highest:
        return samples
    wanted = highest / np.maximum(peaks, highest)
    near = np.lib.stride_tricks.sliding_window_view(np.pad(wanted, _REACH, constant_values=1), 2 * _REACH + 1)
    lowest = np.pad(near.min(axis=1), _SMOOTH, mode="edge")
    smooth = np.convolve(lowest, np.full(2 * _SMOOTH + 1, 1 / (2 * _SMOOTH + 1)), "valid")
    middles = (np.arange(len(smooth)) + 0.5) * _BLOCK
    gain: Samples = np.interp(np.arange(len(samples)), middles, smooth).astype(np.float32)
    held: Samples = samples * gain
    return held


def true_peaks(samples: Samples) -> Samples:
    """The highest value of each millisecond, between samples too, with 1 as full scale."""
    offsets = np.arange(_TAPS) - _TAPS // 2 + 1
    highest = np.abs(samples)
    for phase in range(1, _PHASES):
        distance = offsets - phase / _PHASES
        taps = np.sinc(distance) * np.cos(np.pi * distance / _TAPS) ** 2
        between = np.convolve(np.pad(samples, (_TAPS // 2 - 1, _TAPS // 2)), taps[::-1], "valid")
        highest = np.maximum(highest, np.abs(between))
    blocks = np.pad(highest, (0, -len(highest) % _BLOCK)).reshape(-1, _BLOCK)
    found: Samples = blocks.max(axis=1).astype(np.float32, copy=False)
    return found
