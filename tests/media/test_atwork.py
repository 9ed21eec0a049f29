"""What was at work in a step, and whether it is still there."""

from fractions import Fraction

import numpy as np
import pytest
from av.video.frame import VideoFrame

from procbuilder.media.atwork import AtWork, at_work, is_there
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


def test_a_hand_that_rests_where_it_worked_is_there(work: AtWork) -> None:
    assert is_there(work, _hand(FINISHED, 155))


@pytest.mark.parametrize(
    "image",
    [
        pytest.param(_look(FINISHED), id="gone"),
        pytest.param(_hand(FINISHED, 155, top=170), id="elsewhere"),
        pytest.param(_hand(FINISHED, 155, tone=RED), id="of another colour"),
        pytest.param(_hand(FINISHED, 155, top=132), id="beside the working place"),
    ],
)
def test_what_is_not_there(work: AtWork, image: Look) -> None:
    assert not is_there(work, image)


def test_a_hand_in_a_corner_is_not_in_the_way() -> None:
    work = at_work(_look(GROUND), [_hand(GROUND, 62, top=180), _hand(GROUND, 60, top=178)])
    assert work
    assert not is_there(work, _hand(FINISHED, 60, top=180))


def test_what_has_been_moved_and_stays_is_no_hand() -> None:
    """A panel up to the edge of the picture, lifted by the work: it has the colours that were seen there before."""
    low, high = GROUND.copy(), GROUND.copy()
    tiles = np.random.default_rng(1).choice([60, 200], (7, 10))
    low[60:200, 120:] = tiles.repeat(20, axis=0).repeat(20, axis=1)[:, :, None]
    high[60:200, 120:] = np.roll(low[60:200, 120:], 20, axis=0)
    work = at_work(_look(low), [_look(high)] * 3)
    assert work
    assert not is_there(work, _look(high))


def test_what_was_in_front_and_has_gone_is_not_there() -> None:
    """The first view had the hand in it."""
    work = at_work(_hand(GROUND, 155), [_look(GROUND)] * 3)
    assert work
    assert not is_there(work, _look(GROUND))


def test_the_working_place_is_where_something_was_half_of_the_time(work: AtWork) -> None:
    """The middle reach is 150 of 320 pixels, shown here on 160."""
    columns = np.flatnonzero(work.place[50])
    assert columns[0] == pytest.approx(160 - 75, abs=2)
    assert columns[-1] == 159


def test_steadiness_is_one_for_what_never_moves_and_a_half_for_what_is_here_and_there() -> None:
    """The mean share of a place, weighted by itself: places taken always count 1, places taken half the time a half."""
    still = at_work(_look(GROUND), [_hand(GROUND, 150)] * 4)
    away = at_work(_look(GROUND), [_hand(GROUND, 150, top=20), _hand(GROUND, 150, top=150)] * 2)
    assert still
    assert away
    assert still.steadiness == pytest.approx(1)
    assert away.steadiness == pytest.approx(0.5, abs=0.02)


def test_nothing_is_at_work_in_pictures_of_the_ground() -> None:
    assert at_work(_look(GROUND), [_look(GROUND)] * 5) is None
