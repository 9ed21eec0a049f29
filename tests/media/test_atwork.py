"""What was at work in a step, and whether it is still there."""

from fractions import Fraction

import numpy as np
import pytest
from av.video.frame import VideoFrame

from procbuilder.media.atwork import AtWork, at_work, sight
from procbuilder.media.look import Look, look
from tests.media import filming
from tests.media.filming import Image

GROUND = (filming.scene() // 4 + 90).astype(np.uint8)
GLOVE, RED = (150, 95, 45), (30, 30, 190)
FINISHED = GROUND.copy()
FINISHED[100:140, 150:190] = RED


def _look(image: Image) -> Look:
    return look(Fraction(0), VideoFrame.from_ndarray(image, format="bgr24"))


def _hand(image: Image, reach: int, top: int = 90, tone: tuple[int, int, int] = GLOVE) -> Look:
    """A hand that reaches in from the right."""
    reached = image.copy()
    reached[top : top + 60, 320 - reach :] = tone
    return _look(reached)


@pytest.fixture
def work() -> AtWork:
    """A glove that moves to and fro."""
    found = at_work(_look(GROUND), [_hand(GROUND, reach) for reach in (120, 160, 140, 170, 150)])
    assert found
    return found


@pytest.mark.parametrize("top", [90, 132])
def test_a_hand_that_rests_where_it_worked_or_half_beside_it_is_there(work: AtWork, top: int) -> None:
    """Beside it its colours and its outline make up for the place."""
    assert sight(work, _hand(FINISHED, 155, top=top)).taken


@pytest.mark.parametrize(
    "image",
    [
        pytest.param(_look(FINISHED), id="gone"),
        pytest.param(_hand(FINISHED, 155, top=170), id="elsewhere"),
        pytest.param(_hand(FINISHED, 155, tone=RED), id="of another colour"),
    ],
)
def test_what_is_not_there(work: AtWork, image: Look) -> None:
    assert not sight(work, image).taken


def test_a_hand_in_a_corner_is_not_in_the_way() -> None:
    work = at_work(_look(GROUND), [_hand(GROUND, 62, top=180), _hand(GROUND, 60, top=178)])
    assert work
    assert not sight(work, _hand(FINISHED, 60, top=180)).taken


def test_what_has_been_moved_and_stays_is_no_hand() -> None:
    """A panel up to the edge of the picture, lifted by the work: it has the colours that were seen there before."""
    low, high = GROUND.copy(), GROUND.copy()
    tiles = np.random.default_rng(1).choice([60, 200], (7, 10))
    low[60:200, 120:] = tiles.repeat(20, axis=0).repeat(20, axis=1)[:, :, None]
    high[60:200, 120:] = np.roll(low[60:200, 120:], 20, axis=0)
    work = at_work(_look(low), [_look(high)] * 3)
    assert work
    assert not sight(work, _look(high)).taken


def test_what_was_in_front_and_has_gone_is_not_there() -> None:
    """The first view had the hand in it."""
    work = at_work(_hand(GROUND, 155), [_look(GROUND)] * 3)
    assert work
    assert not sight(work, _look(GROUND)).taken


def test_the_working_place_is_where_something_was_half_of_the_time(work: AtWork) -> None:
    """The middle reach is 150 of 320 pixels, shown here on 160."""
    columns = np.flatnonzero(work.place[50])
    assert columns[0] == pytest.approx(160 - 75, abs=2)
    assert columns[-1] == 159


def test_what_never_moves_usually_covers_the_whole_place_and_what_is_here_and_there_half_of_it() -> None:
    still = at_work(_look(GROUND), [_hand(GROUND, 150)] * 4)
    away = at_work(_look(GROUND), [_hand(GROUND, 150, top=20), _hand(GROUND, 150, top=150)] * 2)
    assert still
    assert away
    assert still.usually == pytest.approx(1)
    assert away.usually == pytest.approx(0.5, abs=0.02)


@pytest.mark.parametrize(("share", "covered"), [(0.8, 0.9), (0.55, 0.0)])
def test_a_colour_must_be_clearly_nearer_to_that_of_the_work(work: AtWork, share: float, covered: float) -> None:
    """A glove in a little less light covers the place it worked at; its shadow, half way to the ground, does not."""
    between = GROUND + share * (np.array(GLOVE) - GROUND)
    image = GROUND.copy()
    image[90:150, 170:] = between[90:150, 170:].astype(np.uint8)
    assert sight(work, _look(image)).covered == pytest.approx(covered, abs=0.05)


def test_nothing_is_at_work_in_pictures_of_the_ground() -> None:
    assert at_work(_look(GROUND), [_look(GROUND)] * 5) is None
