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
from procbuilder.model.footage import Cut
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
def test_a_flash_is_no_cut(light: tuple[int, ...]) -> None:
    pictures = [with_hand(i) for i in range(40)]
    for number, more in enumerate(light, 20):
        pictures[number] = np.clip(pictures[number].astype(int) + more, 0, 255).astype(np.uint8)
    assert list(find(timed(pictures))) == []


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
    assert len(found) <= 1.15 * (len(made.hard) + len(made.jumps))


def test_around_suspected_places_the_same_cuts_are_found(made: Montage) -> None:
    """Looking at less finds nothing else, and at least half of the hard cuts."""
    film = probe(made.path, name="strip", shown="", sha256="abc").film
    whole = cuts_within(made.path, film, [Stretch(Fraction(0), Fraction(100))])
    found = cuts_within(made.path, film, suspects(film, look(made.path, film)))
    assert set(found) <= set(whole)
    assert hits(made.hard, found) / len(made.hard) >= 0.5
