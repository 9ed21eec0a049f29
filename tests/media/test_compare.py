"""Two pictures of the same place laid over each other."""

from fractions import Fraction

import numpy as np
import pytest
from av.video.frame import VideoFrame

from procbuilder.media.compare import against, turn
from procbuilder.media.look import Look, look
from tests.media import filming
from tests.media.filming import Image


def _look(image: Image) -> Look:
    return look(Fraction(0), VideoFrame.from_ndarray(image, format="bgr24"))


def _covered(image: Image) -> Image:
    """A plain sleeve over two fifths of the picture, with a sharp outline."""
    reached = image.copy()
    reached[:, 190:] = (150, 95, 45)
    return reached


@pytest.mark.parametrize("shift", [0, 3, 12, -16])
@pytest.mark.parametrize("light", [0.8, 1.0, 1.2])
def test_the_turn_of_the_camera_is_found_in_any_light_and_behind_a_sleeve(shift: int, light: float) -> None:
    """The shift by which it was drawn, halved: 320 pixels are shown on 160."""
    one, two = _look(filming.scene()), _look(_covered(filming.scene(shift=shift, light=light)))
    assert turn(one.small, two.small) == pytest.approx((shift / 2, 0), abs=0.2)


def test_what_has_been_fitted_in_the_middle_moves_nothing() -> None:
    """A dark part takes the place of a light one before a plain ground: only the part has edges to hold on to."""
    ground = np.full((180, 320, 3), (120, 150, 170), np.uint8)
    ground += np.random.default_rng(3).integers(0, 3, ground.shape, dtype=np.uint8)
    before, after = ground.copy(), ground.copy()
    before[60:120, 120:190] = 30
    after[50:130, 110:205] = 210
    assert turn(_look(before).small, _look(after).small) == pytest.approx((0, 0), abs=0.3)
    assert not against(_look(before), _look(after))[1].any()
