"""The colours of parts of pictures."""

from fractions import Fraction

import numpy as np
import pytest
from av.video.frame import VideoFrame

from procbuilder.media.compare import against
from procbuilder.media.look import Look, look
from procbuilder.media.palette import likeness, palette
from tests.media import filming
from tests.media.filming import Image

BLUE, ORANGE = (150, 95, 45), (35, 105, 215)
LEFT = np.zeros((90, 160), dtype=bool)
LEFT[:, :80] = True


def _look(image: Image) -> Look:
    return look(Fraction(0), VideoFrame.from_ndarray(image, format="bgr24"))


def _halves(left: tuple[int, int, int], right: tuple[int, int, int]) -> Look:
    image = np.zeros((240, 320, 3), dtype=np.uint8)
    image[:, :160], image[:, 160:] = left, right
    return _look(image)


def test_parts_of_the_same_colour_are_alike_wherever_they_lie() -> None:
    one, two = _halves(BLUE, ORANGE), _halves(ORANGE, BLUE)
    assert likeness(palette(one.colour, LEFT), palette(two.colour, ~LEFT)) == pytest.approx(1, abs=0.02)
    assert likeness(palette(one.colour, LEFT), palette(two.colour, LEFT)) == pytest.approx(0, abs=0.05)


def test_half_of_the_colours_in_common_is_the_root_of_a_half() -> None:
    """The coefficient of (1/2, 1/2) and (1, 0): A. Bhattacharyya, 1943."""
    both, whole = _halves(BLUE, ORANGE).colour, _halves(BLUE, BLUE).colour
    assert likeness(palette(both, LEFT | ~LEFT), palette(whole, LEFT)) == pytest.approx(0.5**0.5, abs=0.03)


def test_an_empty_part_is_like_nothing() -> None:
    one = _halves(BLUE, ORANGE)
    assert likeness(palette(one.colour, LEFT & ~LEFT), palette(one.colour, LEFT)) == 0


def test_a_bright_hand_before_a_dark_ground_is_not_taken_for_light() -> None:
    """Only the hand differs, a sixth of the picture: the ground behind it is no lighter."""
    dark = (filming.scene() // 4).astype(np.uint8)
    reached = dark.copy()
    reached[80:160, 160:] = (205, 208, 210)
    share = against(_look(reached), _look(dark))[1].mean()
    assert share == pytest.approx(1 / 6, abs=0.03)
