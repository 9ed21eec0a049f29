"""Recordings that several tests look at; each is made once."""

from fractions import Fraction
from pathlib import Path

import pytest

from tests.media import filming
from tests.media.filming import Track


@pytest.fixture(scope="session")
def films(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder for the recordings."""
    return tmp_path_factory.mktemp("films")


@pytest.fixture(scope="session")
def even(films: Path) -> Path:
    """Four seconds at 25 pictures a second, with sound all along."""
    return filming.film(films / "even.mp4", filming.steady(4), track=Track(sound=(Fraction(4),)))


@pytest.fixture(scope="session")
def uneven(films: Path) -> Path:
    """Eighty pictures at variable frame rate with B-frames; their times are ``filming.uneven(80)``."""
    return filming.film(films / "uneven.mp4", filming.uneven(80), track=Track(gop=20, b_frames=3))


@pytest.fixture(scope="session")
def long_gop(films: Path) -> Path:
    """Ten seconds with a single key frame and B-frames, as exporting programs write."""
    return filming.film(films / "long_gop.mp4", filming.steady(10), track=Track(gop=250, b_frames=3))


@pytest.fixture(scope="session")
def late(films: Path) -> Path:
    """Three seconds in a transmission format whose clock stands at 30 s when it begins."""
    times = filming.steady(3, start=Fraction(30))
    return filming.film(films / "late.ts", times)


@pytest.fixture(scope="session")
def sound_first(films: Path) -> Path:
    """Three seconds of sound; the pictures begin after the first of them."""
    times = filming.steady(2, start=Fraction(1))
    return filming.film(films / "sound_first.mp4", times, track=Track(sound=(Fraction(3),), lead=Fraction(1)))


@pytest.fixture(scope="session")
def turned(films: Path) -> Path:
    """Two seconds filmed upright: 320 by 240 as stored, 240 by 320 as shown."""
    return filming.film(films / "turned.mp4", filming.steady(2), track=Track(turned=90))


@pytest.fixture(scope="session")
def trimmed(films: Path) -> Path:
    """Pictures 10 to 49 are shown; ten more before them are stored and passed over, as after trimming on a phone."""
    times = filming.steady(2, start=Fraction(-2, 5))
    return filming.film(films / "trimmed.mp4", times, track=Track(gop=50))
