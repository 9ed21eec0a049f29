"""Which pictures of a stretch of footage are decoded."""

import itertools
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.media import sample
from procbuilder.media.decode import frames
from procbuilder.media.sample import sampled
from procbuilder.model.fault import Unreadable
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.filming import Track
from tests.refused import refused


def _times(path: Path, start: float, end: float, close: float, earliest: float | None = None) -> list[Fraction]:
    first = None if earliest is None else Fraction(earliest)
    return [t for t, _ in sampled(path, Span("strip", Fraction(start), Fraction(end)), Fraction(close), first)]


@pytest.fixture(scope="module")
def seconds(films: Path) -> Path:
    """Twenty seconds at ten pictures a second, with a key frame each second."""
    times = [Fraction(i, 10) for i in range(200)]
    return filming.film(films / "seconds.mp4", times, track=Track(gop=10))


def test_all_pictures_from_close_on_and_key_frames_before(seconds: Path) -> None:
    assert _times(seconds, 2, 8, 6) == [Fraction(t) for t in (2, 3, 4, 5)] + [Fraction(60 + i, 10) for i in range(20)]


def test_a_group_that_reaches_past_close_is_given_from_its_key_frame_on(seconds: Path) -> None:
    """It has been decoded anyway."""
    assert _times(seconds, 6.5, 8, 6.5)[0] == Fraction(65, 10)
    assert _times(seconds, 6.5, 8, 6.5, earliest=2)[0] == 6


def test_no_picture_is_decoded_that_is_not_needed(seconds: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Four key frames and two groups of ten; the packets of the other pictures never reach the decoder."""
    handed: list[object] = []
    decode = sample._pictures

    def counted(track, wanted, zero):  # type: ignore[no-untyped-def]  # as it is in the module
        handed.extend(packet for packet in wanted if packet is not None)
        return decode(track, wanted, zero)

    monkeypatch.setattr(sample, "_pictures", counted)
    _times(seconds, 2, 8, 6)
    assert len(handed) == 24


def test_pictures_at_uneven_times_with_reordering_are_those_of_the_exact_decoder(uneven: Path) -> None:
    expected = [time for time, _ in frames(uneven, Fraction(1), Fraction(3))]
    found = _times(uneven, 1, 3, 1)
    assert set(found) <= set(expected)
    assert all(later - earlier >= sample.SPACING for earlier, later in itertools.pairwise(found))
    assert found[0] == expected[0]


def test_slow_motion_is_thinned_out(films: Path) -> None:
    """Of 240 pictures a second sixteen are enough."""
    path = filming.film(films / "slow_motion.mp4", [Fraction(i, 240) for i in range(240)])
    assert len(_times(path, 0, 1, 0)) == 16


def test_a_long_stretch_is_looked_through_in_larger_steps(films: Path) -> None:
    """Eight minutes with a key frame each second: every other is enough, and the last four seconds are whole."""
    path = filming.film(films / "long.mp4", [Fraction(i) for i in range(484)], track=Track(gop=1))
    assert _times(path, 0, 484, 480) == [Fraction(t) for t in (*range(0, 480, 2), 480, 481, 482, 483)]


def test_damaged_pictures_are_left_out(films: Path) -> None:
    """A smeared picture must not be chosen for its sharp edges."""
    images = [filming.scene(shift=3 * i) for i in range(50)]
    path = filming.film(films / "smeared.mp4", [Fraction(i, 10) for i in range(50)], images)
    filming.scramble(path, "video", (0.4, 0.5), keep=0.5)
    smeared = {time for time, frame in frames(path, Fraction(0), Fraction(5)) if frame.is_corrupt}
    found = set(_times(path, 0, 5, 0))
    assert smeared
    assert not smeared & found
    assert len(found) >= 40


def test_beyond_the_end_there_is_nothing(even: Path) -> None:
    assert _times(even, 50, 60, 50) == []


def test_a_recording_of_a_transmission_begins_at_zero(late: Path) -> None:
    assert _times(late, 0, 1, 0)[0] == 0


def test_sound_alone_has_no_pictures(films: Path) -> None:
    with refused(Unreadable, "it holds no moving pictures"):
        _times(filming.sound_only(films / "only_sound.m4a"), 0, 1, 0)
