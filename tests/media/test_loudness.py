"""Loudness by EBU R 128, against its published signals and a second library, and speech brought to its level."""

from fractions import Fraction
from pathlib import Path

import numpy as np
import pyloudnorm
import pytest
from av.video.frame import VideoFrame

from procbuilder.media.clips import ClipPart, cut
from procbuilder.media.encode import ClipFile
from procbuilder.media.loudness import CEILING, TARGET, levelled, limited, loudness, true_peaks
from procbuilder.media.sound import RATE, Samples, sound
from procbuilder.model.timecode import Span

REFIT = Path(__file__).parents[2] / "sample_media" / "hub" / "recordings" / "hub-refit.mp4"
SAID = (Fraction("14.9"), Fraction("19.6"))
"""Seconds of the refit in which somebody speaks without a break."""


def _sine(*levels: tuple[float, float], pitch: int = 1000) -> Samples:
    """A tone in both channels, of (decibels of full scale, seconds) one after the other."""
    parts = [10 ** (level / 20) * np.sin(2 * np.pi * pitch * np.arange(round(RATE * s)) / RATE) for level, s in levels]
    return np.stack([np.concatenate(parts)] * 2).astype(np.float32)


SIGNALS = {
    1: (_sine((-23, 20)), -23.0),
    2: (_sine((-33, 20)), -33.0),
    3: (_sine((-36, 10), (-23, 60), (-36, 10)), -23.0),
    4: (_sine((-72, 10), (-36, 10), (-23, 60), (-36, 10), (-72, 10)), -23.0),
    5: (_sine((-26, 20), (-20, 20.1), (-26, 20)), -23.0),
}


@pytest.mark.parametrize("number", SIGNALS)
def test_signals_of_the_broadcasters(number: int) -> None:
    """EBU Tech 3341, table 1, minimum requirements 1 to 5: within 0.1 LU; reference library: pyloudnorm."""
    samples, expected = SIGNALS[number]
    measured = loudness(samples)
    assert measured == pytest.approx(expected, abs=0.1)
    second = pyloudnorm.Meter(RATE).integrated_loudness(samples.T.astype(np.float64))
    assert measured == pytest.approx(second, abs=0.1)


def test_one_channel_at_full_scale() -> None:
    """ITU-R BS.1770, annex 1: 997 Hz at full scale in one channel is -3.01 LKFS."""
    assert loudness(_sine((0, 5), pitch=997)[0]) == pytest.approx(-3.01, abs=0.02)


def test_speech_measures_the_same_in_both_libraries() -> None:
    """The narration of the demo."""
    samples = sound(REFIT, *SAID)
    assert samples is not None
    second = pyloudnorm.Meter(RATE).integrated_loudness(samples.astype(np.float64))
    assert loudness(samples) == pytest.approx(second, abs=0.1)


@pytest.mark.parametrize("samples", [np.zeros(0, np.float32), np.zeros(RATE, np.float32), np.ones(99, np.float32)])
def test_what_cannot_be_measured_has_no_loudness(samples: Samples) -> None:
    """Nothing, silence, and less than the meter's 400 ms."""
    assert loudness(samples) is None


def test_true_peak_lies_between_samples() -> None:
    """EBU Tech 3341, signal 15: a quarter of the rate at 45 degrees and half of full scale: -6 dBTP, +0.2 to -0.4."""
    times = np.arange(RATE) / 4
    samples = (0.5 * np.sin(2 * np.pi * times + np.pi / 4)).astype(np.float32)
    assert 20 * np.log10(np.abs(samples).max()) == pytest.approx(-9.03, abs=0.01)
    assert -6.4 <= 20 * np.log10(true_peaks(samples).max()) <= -5.8


@pytest.mark.parametrize("gain", [-30, -10, 0])
def test_speech_has_the_target_level(gain: int) -> None:
    """Faint (raised by 24 dB and no more), low or loud as filmed; blows of a hammer lie around it."""
    samples = sound(REFIT, Fraction(8), Fraction(20))
    assert samples is not None
    (found,) = levelled([samples * np.float32(10 ** (gain / 20))])
    assert len(found) == len(samples)
    first, last = (round((time - 8) * RATE) for time in SAID)
    filmed = loudness(samples[first:last])
    assert filmed is not None
    assert loudness(found[first:last]) == pytest.approx(min(TARGET, filmed + gain + 24), abs=0.5)


def test_sounds_of_one_recording_are_raised_alike() -> None:
    """Where a skip cuts it in two, it is not louder after the skip."""
    one, two = sound(REFIT, Fraction(15), Fraction(17)), sound(REFIT, Fraction(17), Fraction(19))
    assert one is not None
    assert two is not None
    found = levelled([one, two])
    ratios = [
        float(np.abs(after).max() / np.abs(before).max()) for before, after in zip((one, two), found, strict=True)
    ]
    assert ratios[0] == pytest.approx(ratios[1], rel=1e-3)


def test_without_speech_it_is_as_loud_as_filmed() -> None:
    """A tone is no speech."""
    tone = _sine((-30, 3))[0]
    assert np.array_equal(levelled([tone])[0], tone)


@pytest.mark.parametrize("count", [0, 1, 7, 500])
def test_hardly_any_sound_stays_as_it_is(count: int) -> None:
    """A span of a damaged recording may have a handful of samples."""
    assert [len(each) for each in levelled([np.full(count, 0.1, np.float32)])] == [count]


def test_blows_are_held_below_the_ceiling_in_the_clip(tmp_path: Path) -> None:
    """After coding as well; between the blows the sound is what it was."""
    hiss = np.random.default_rng(2).normal(0, 0.02, 4 * RATE).astype(np.float32)
    blows = hiss.copy()
    for start in range(RATE // 2, 4 * RATE, RATE):
        blows[start : start + 300] += np.linspace(3, 0, 300, dtype=np.float32) * np.cos(np.arange(300) / 3)
    held = limited(blows)
    quiet = slice(RATE, RATE + RATE // 4)
    assert np.array_equal(held[quiet], blows[quiet])
    with ClipFile(tmp_path / "clip.mp4", 64, 64, sound=True) as file:
        file.add(VideoFrame(64, 64, "yuv420p"), Fraction(4), held)
    coded = sound(tmp_path / "clip.mp4", Fraction(0), Fraction(4))
    assert coded is not None
    assert 20 * np.log10(true_peaks(blows).max()) > 8
    assert 20 * np.log10(true_peaks(coded).max()) <= CEILING


def test_clip_of_the_demo_has_speech_at_the_target(tmp_path: Path) -> None:
    """As a viewer hears it, coded."""
    cut([ClipPart(REFIT, Span("refit", *SAID))], tmp_path / "clip.mp4")
    samples = sound(tmp_path / "clip.mp4", Fraction(0), SAID[1] - SAID[0])
    assert samples is not None
    assert loudness(samples) == pytest.approx(TARGET, abs=0.5)
