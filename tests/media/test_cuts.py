"""Cuts in made recordings: known hard cuts and jump cuts, flashes, and motion that is none."""

from collections.abc import Iterable, Iterator
from fractions import Fraction

import cv2
import numpy as np
import pytest

from procbuilder.media.cuts import SIZE, cuts_within, find, suspects
from procbuilder.media.difference import Grey
from procbuilder.media.probe import probe
from procbuilder.media.stillness import look
from procbuilder.model.footage import Cut, Looked, PacketFacts
from procbuilder.model.stretch import Stretch
from tests.media import montage
from tests.media.montage import RATE, Montage

TICK = Fraction(1, RATE)


def ground(seed: int) -> Grey:
    """Soft stones."""
    chance = np.random.default_rng(seed)
    stones = chance.integers(0, 255, (9, 16)).astype(np.uint8)
    return np.asarray(cv2.resize(stones, SIZE, interpolation=cv2.INTER_LINEAR), dtype=np.uint8)


def timed(pictures: Iterable[Grey]) -> Iterator[tuple[Fraction, Grey]]:
    return ((i * TICK, picture) for i, picture in enumerate(pictures))


def with_hand(at: int, seed: int = 1) -> Grey:
    """A dark hand before the ground."""
    picture = ground(seed)
    picture[30:80, at : at + 16] = 20
    return picture


def test_another_scene_is_a_cut_and_the_same_scene_later_a_jump() -> None:
    pictures = [with_hand(i) for i in range(20)] + [with_hand(60 + i) for i in range(20)]
    pictures += [with_hand(80 - i, seed=2) for i in range(20)]
    assert list(find(timed(pictures))) == [Cut(20 * TICK, jump=True), Cut(40 * TICK, jump=False)]


@pytest.mark.parametrize("light", [(80, 80), (100, 50, 20, 5)], ids=["lamp", "fading"])
@pytest.mark.parametrize("part", [SIZE[0], 60], ids=["everywhere", "on the left"])
def test_a_flash_is_no_cut(light: tuple[int, ...], part: int) -> None:
    pictures = [with_hand(i) for i in range(40)]
    for number, more in enumerate(light, 20):
        pictures[number][:, :part] = np.clip(pictures[number][:, :part].astype(int) + more, 0, 255).astype(np.uint8)
    assert list(find(timed(pictures))) == []


@pytest.mark.parametrize("gain", [0.5, 0.7, 1.4, 1.8])
@pytest.mark.parametrize("steps", [1, 3])
def test_a_jump_of_the_exposure_is_no_cut(gain: float, steps: int) -> None:
    """Within one picture or three; at 1.8 a fifth of the picture burns out."""
    gains = [1.0] * 20 + [1 + (gain - 1) * step / steps for step in range(1, steps)] + [gain] * 20
    pictures = [np.clip(with_hand(i).astype(float) * gain, 0, 255).astype(np.uint8) for i, gain in enumerate(gains)]
    assert list(find(timed(pictures))) == []


@pytest.mark.parametrize("speed", [5, 12, 24])
def test_a_fast_pan_is_no_cut(speed: int) -> None:
    """Pixels of 160 a picture, from one picture to the next, and again to a stand; 24 is four widths a second."""
    wide = np.hstack([ground(1), ground(2), ground(3)])
    places = [0] * 15 + [speed * i for i in range(1, 13)] + [speed * 12] * 15
    assert list(find(timed(wide[:, place : place + SIZE[0]] for place in places))) == []


@pytest.mark.parametrize("pictures", [4, 6, 10])
def test_a_hand_that_sweeps_through_is_no_cut(pictures: int) -> None:
    """Across the whole width within so many pictures: 10 is 0.4 s."""
    places = np.linspace(-16, SIZE[0], pictures + 1).round().astype(int).tolist()
    shown = [before_ground(place) for place in (*[-16] * 15, *places, *[SIZE[0]] * 15)]
    assert list(find(timed(shown))) == []


def before_ground(at: int) -> Grey:
    """A dark hand that may be partly or wholly outside."""
    picture = ground(1)
    picture[20:, max(at, 0) : max(at + 16, 0)] = 20
    return picture


@pytest.mark.parametrize(("speed", "lost", "times"), [(1, 1, 1), (1, 3, 1), (3, 1, 1), (3, 3, 1), (6, 2, 1), (2, 2, 2)])
def test_pictures_lost_on_the_way_are_no_cut(speed: int, lost: int, times: int) -> None:
    """So many in a row; the hand moves by half the speed in pixels of 160, and each picture is shown so many times."""
    way = [with_hand(speed * i // 2) for i in range(41) if not 20 <= i < 20 + lost]
    assert list(find(timed(picture for picture in way for _ in range(times)))) == []


@pytest.mark.parametrize("speed", [3, 6])
def test_a_jump_is_found_while_the_hand_moves_fast(speed: int) -> None:
    """By so many pixels of 160 from one picture to the next, there and back."""
    there, back = ([with_hand(at + way * speed * i) for i in range(7)] for at, way in ((0, 1), (143, -1)))
    assert list(find(timed([*there, *back]))) == [Cut(7 * TICK, jump=True)]


@pytest.mark.parametrize("held", [1, 3, 12])
def test_pictures_that_are_repeated_hide_no_cut(held: int) -> None:
    """The last before each cut and the first after it are shown for so many pictures."""
    first, second = [with_hand(i) for i in range(20)], [with_hand(70 - i) for i in range(20)]
    third = [with_hand(20 + i, seed=2) for i in range(20)]
    shown = [*first, *first[-1:] * held, *second[:1] * held, *second, *second[-1:] * held, *third[:1] * held, *third]
    jump, cut = (20 + held) * TICK, (40 + 3 * held) * TICK
    assert list(find(timed(shown))) == [Cut(jump, jump=True), Cut(cut)]


@pytest.mark.parametrize("times", [2, 3, 4])
def test_a_film_of_repeated_pictures_hides_no_cut(times: int) -> None:
    """Each picture is shown so many times, as in film drawn or converted."""
    few = [*(with_hand(2 * i) for i in range(10)), *(with_hand(90 - 2 * i) for i in range(10))]
    few += [with_hand(2 * i, seed=2) for i in range(10)]
    shown = [picture for picture in few for _ in range(times)]
    assert list(find(timed(shown))) == [Cut(10 * times * TICK, jump=True), Cut(20 * times * TICK)]


def with_tool(at: int, height: int) -> Grey:
    """A dark tool of 16 by so many pixels before the ground."""
    picture = ground(1)
    picture[40 : 40 + height, at : at + 16] = 20
    return picture


@pytest.mark.parametrize(("height", "found"), [(1, []), (2, [Cut(20 * TICK, jump=True)])])
def test_a_small_thing_that_jumps_far_is_a_jump(height: int, found: list[Cut]) -> None:
    """Two in a thousand of the picture are enough."""
    shown = [with_tool(20 + i, height) for i in range(20)] + [with_tool(110 - i, height) for i in range(20)]
    assert list(find(timed(shown))) == found


@pytest.mark.parametrize(("by", "found"), [(1, []), (3, [Cut(20 * TICK, jump=True)])])
def test_an_encoder_that_draws_the_picture_anew_makes_no_jump(by: int, found: list[Cut]) -> None:
    """Its parts are lighter or darker by so many grey levels."""
    anew = cv2.resize(np.indices((9, 16)).sum(axis=0) % 2 * 2.0 - 1, SIZE, interpolation=cv2.INTER_NEAREST)
    shown = [ground(1)] * 20 + [np.clip(ground(1) + by * anew, 0, 255).astype(np.uint8)] * 20
    assert list(find(timed(shown))) == found


@pytest.mark.parametrize(
    ("height", "reach", "found"),
    [
        (50, 9, [Cut(12 * TICK, jump=True)]),  # tells by the whole picture
        (50, 10, []),
        (4, 6, [Cut(12 * TICK, jump=True)]),  # tells by its tenth alone
        (4, 7, []),
    ],
)
def test_what_goes_to_and_fro_must_jump_further(height: int, reach: int, found: list[Cut]) -> None:
    """By so many pixels of 160, until it goes to and fro elsewhere: by all of its width of 16."""
    places = [*[20, 20 + reach] * 6, *[90, 90 + reach] * 6]
    assert list(find(timed(with_tool(place, height) for place in places))) == found


def test_a_camera_that_was_taken_up_between_is_a_jump() -> None:
    """All moves by three pixels of 160, while an arm moves on by two a picture as before."""
    wide = np.hstack([ground(1), ground(2)])
    shown = [wide[:, place : place + SIZE[0]].copy() for place in [40] * 9 + [43] * 9]
    for number, picture in enumerate(shown):
        picture[10:90, 2 * number : 2 * number + 30] = 20
    assert list(find(timed(shown))) == [Cut(9 * TICK, jump=True)]


@pytest.mark.parametrize(("last", "found"), [(6, []), (9, []), (20, [Cut(16 * TICK, jump=True)])])
def test_no_hand_stops_with_a_leap(last: int, found: list[Cut]) -> None:
    """It moves by six pixels of 160 a picture and stops dead after a last move of so many."""
    places = [6 * i for i in range(16)]
    assert list(find(timed(with_hand(place) for place in [*places, *[places[-1] + last] * 16]))) == found


def test_black_between_two_shots_is_two_cuts() -> None:
    shown = [*(with_hand(i) for i in range(20)), *[np.zeros_like(ground(1))] * 10, *(with_hand(i) for i in range(20))]
    assert list(find(timed(shown))) == [Cut(20 * TICK), Cut(30 * TICK)]


def test_fast_motion_is_no_cut() -> None:
    """A hand that moves by 8 pixels of 160 from one picture to the next, to and fro."""
    places = [*range(0, 112, 8), *range(112, 0, -8)] * 3
    assert list(find(timed(with_hand(place) for place in places))) == []


def test_a_film_of_few_pictures_is_no_row_of_cuts() -> None:
    """Drawn or converted film that changes at every fourth picture only."""
    assert list(find(timed(with_hand(12 * (i // 4)) for i in range(40)))) == []


@pytest.mark.parametrize("count", [0, 1, 2])
def test_hardly_any_picture_is_no_cut(count: int) -> None:
    assert list(find(timed([ground(1)] * count))) == []


def test_a_key_frame_may_itself_begin_the_other_place() -> None:
    film = PacketFacts(key_spacing=Fraction(1), spacing=TICK)
    (stretch,) = suspects(film, Looked((), (Stretch(Fraction(3), Fraction(4)),)))
    assert stretch.start <= 3
    assert 4 < stretch.end <= 4 + TICK


@pytest.fixture(scope="module", params=["phone", "export"])
def made(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Montage:
    """Takes of the demo and, when the package of clips is there, real ones."""
    shots = [*montage.demo("strip", 4), *montage.real("bikes.mp4"), *montage.real("carphone_pristine.mp4")]
    path = tmp_path_factory.mktemp("made") / "made.mp4"
    return montage.montage(path, shots, encoder=request.param, seed=11, plan=montage.Plan(pieces=20))


def hits(wanted: Iterable[Fraction], found: Iterable[Cut]) -> int:
    return sum(any(abs(cut.time - time) <= 2 * TICK for cut in found) for time in wanted)


def test_every_picture_shows_every_hard_cut(made: Montage) -> None:
    """The floor of ``tests/bench/cut_finding.py``, which tells precision and recall on more material."""
    film = probe(made.path, name="strip", shown="", sha256="abc").film
    found = cuts_within(made.path, film, [Stretch(Fraction(0), Fraction(100))])
    assert hits(made.hard, found) / len(made.hard) >= 0.95
    assert hits(made.jumps, found) / len(made.jumps) >= 0.7
    # a drawn hand comes from one picture to the next
    assert len(found) <= 1.25 * (len(made.hard) + len(made.jumps))


def test_around_suspected_places_the_same_cuts_are_found(made: Montage) -> None:
    """Looking at less finds nothing else, and at least half of the hard cuts."""
    film = probe(made.path, name="strip", shown="", sha256="abc").film
    whole = cuts_within(made.path, film, [Stretch(Fraction(0), Fraction(100))])
    found = cuts_within(made.path, film, suspects(film, look(made.path, film)))
    assert set(found) <= set(whole)
    assert hits(made.hard, found) / len(made.hard) >= 0.5
