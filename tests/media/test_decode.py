"""Pictures by the time at which they are shown."""

from fractions import Fraction
from pathlib import Path

import cv2
import numpy as np
import pytest

from procbuilder.media.decode import frames, picture_at, shown, upright
from procbuilder.model.fault import Unreadable
from tests.media import filming
from tests.media.colours import PATCHES, film_bt709
from tests.media.filming import SHARED, Track, number_of
from tests.refused import refused


def _on_show(times: list[Fraction], time: Fraction) -> int:
    return max((i for i, appears in enumerate(times) if appears <= time), default=0)


@pytest.mark.parametrize(
    ("film", "times"),
    [
        ("even", filming.steady(4)),
        ("uneven", filming.uneven(80)),
        ("long_gop", filming.steady(10)),
        ("late", filming.steady(3)),
    ],
)
def test_picture_at_is_the_last_that_appeared(film: str, times: list[Fraction], request: pytest.FixtureRequest) -> None:
    """Exact at, just before and between appearances, at constant and variable rate, whatever the key frames."""
    path: Path = request.getfixturevalue(film)
    tick = Fraction(1, 90_000)
    for i in (0, 1, 11, 12, 30, 59, len(times) - 1):
        for time in (times[i], times[i] + Fraction(1, 100), max(times[i] - tick, Fraction(0))):
            appears, image = picture_at(path, time)
            assert (number_of(image), appears) == (_on_show(times, time), times[_on_show(times, time)])


def test_picture_at_outside_the_recording_is_the_nearest(even: Path) -> None:
    """Before the first picture it is the first, after the last the last."""
    assert number_of(picture_at(even, Fraction(-1))[1]) == 0
    assert number_of(picture_at(even, Fraction(99))[1]) == 99


def test_picture_at_counts_from_the_sound_when_it_begins_first(sound_first: Path) -> None:
    """Pictures begin at 0:01 of the player's time; before that, the first one stands in."""
    assert number_of(picture_at(sound_first, Fraction(3, 2))[1]) == 12
    since, until, frame = next(shown(sound_first, Fraction(0), Fraction(2)))
    assert (since, number_of(upright(frame))) == (0, 0)
    assert until == pytest.approx(1.04, abs=0.03)


def test_picture_at_passes_over_what_was_trimmed(trimmed: Path) -> None:
    """0:00 is the first picture that is shown, not the first that is stored."""
    assert [number_of(picture_at(trimmed, Fraction(time))[1]) for time in (0, 1)] == [10, 35]


def test_picture_at_long_freeze_finds_the_picture_before_it(films: Path) -> None:
    """A picture that stands for nine seconds is found from their end."""
    times = [*filming.steady(2), *(time + 11 for time in filming.steady(1))]
    path = filming.film(films / "freeze.mp4", times)
    assert number_of(picture_at(path, Fraction(10))[1]) == 49


def test_frames_are_those_that_appear_within(uneven: Path) -> None:
    """The start belongs to the stretch, the end does not."""
    times = filming.uneven(80)
    found = [(time, number_of(upright(frame))) for time, frame in frames(uneven, times[10], times[20])]
    assert found == [(times[i], i) for i in range(10, 20)]


def test_frames_of_a_moment_without_appearance_are_none(even: Path) -> None:
    """Between two pictures nothing appears."""
    assert list(frames(even, Fraction(41, 1000), Fraction(79, 1000))) == []


def test_shown_begins_with_the_picture_already_there_and_has_no_gap(uneven: Path) -> None:
    """From one moment to another something is always on show."""
    times = filming.uneven(80)
    start, end = times[10] + Fraction(1, 100), times[12] + Fraction(1, 100)
    found = [(since, until, number_of(upright(frame))) for since, until, frame in shown(uneven, start, end)]
    assert found == [(start, times[11], 10), (times[11], times[12], 11), (times[12], end, 12)]


def test_shown_ends_with_the_recording(even: Path) -> None:
    """The last picture of 25 a second is shown for a twenty-fifth."""
    spans = [(since, until) for since, until, _ in shown(even, Fraction(39, 10), Fraction(9))]
    assert spans[-1] == (Fraction(99, 25), Fraction(4))
    assert list(shown(even, Fraction(5), Fraction(6))) == []


def test_frames_go_on_after_damage(films: Path) -> None:
    """Damage in the middle costs its own pictures, not those that follow."""
    path = filming.film(films / "damaged.mp4", filming.steady(4))
    filming.scramble(path, "video", (0.4, 0.5))
    found = [number_of(upright(frame)) for _, frame in frames(path, Fraction(0), Fraction(4)) if not frame.is_corrupt]
    assert found[:40] == list(range(40))
    assert found[-30:] == list(range(70, 100))


def test_picture_at_nothing_decodable_says_where(films: Path) -> None:
    """The message names the moment."""
    path = filming.scramble(filming.film(films / "hopeless.mp4", filming.steady(2)), "video")
    with refused(Unreadable, "no picture can be decoded at 0:01"):
        picture_at(path, Fraction(1))


def test_frames_of_sound_alone_are_refused(tmp_path: Path) -> None:
    """A sound file has no frames."""
    with refused(Unreadable, "it holds no moving pictures"):
        list(frames(filming.sound_only(tmp_path / "sound.m4a"), Fraction(0), Fraction(1)))


@pytest.mark.parametrize("degrees", [90, 180, 270])
def test_upright_turns_as_the_reference_library_does(films: Path, degrees: int) -> None:
    """Reference: OpenCV's VideoCapture, which turns by the display matrix (ISO 14496-12, tkhd) on its own."""
    path = filming.film(films / f"turned{degrees}.mp4", filming.steady(1), track=Track(turned=degrees))
    _, reference = cv2.VideoCapture(str(path)).read()
    image = picture_at(path, Fraction(0))[1]
    assert image.shape == reference.shape == ((240, 320, 3) if degrees == 180 else (320, 240, 3))
    assert np.abs(image.astype(int) - reference).mean() < 4
    assert np.abs(np.rot90(image, 2).astype(int) - reference).mean() > 20


def test_upright_real_phone_clip_turns_as_the_reference_library_does() -> None:
    """Reference: OpenCV's VideoCapture on a phone clip that is stored upside down."""
    path = SHARED / "phone_vfr_rotated180.mp4"
    if not path.exists():
        pytest.skip(f"{path.name} is not in the shared media folder")
    _, reference = cv2.VideoCapture(str(path)).read()
    image = picture_at(path, Fraction(0))[1]
    assert np.abs(image.astype(int) - reference).mean() < 8  # it reads untagged colours as ITU-R BT.601
    assert np.abs(image[::-1, ::-1].astype(int) - reference).mean() > 40


def test_upright_width_is_that_of_the_picture_as_shown(turned: Path) -> None:
    """A picture filmed upright and asked for at 120 across is 160 high."""
    _, frame = next(frames(turned, Fraction(0), Fraction(1)))
    assert upright(frame, 120).shape == (160, 120, 3)


def test_upright_oblong_pixels_are_made_square(films: Path) -> None:
    """The full-size picture is as wide as players show it."""
    path = filming.film(films / "oblong2.mp4", filming.steady(1), track=Track(pixel_shape=Fraction(5, 4)))
    assert picture_at(path, Fraction(0))[1].shape == (240, 400, 3)


def test_upright_untagged_hd_has_the_colours_of_bt709(films: Path) -> None:
    """Patches are converted by hand with the luma weights of ITU-R BT.709-6, item 3.2, and must come back."""
    image = picture_at(film_bt709(films / "untagged.mp4"), Fraction(0))[1]
    columns = np.split(image[200:500].mean(axis=0), len(PATCHES))
    for patch, column in zip(PATCHES, columns, strict=True):
        assert np.abs(column[40:-40].mean(axis=0) - patch).max() < 4
