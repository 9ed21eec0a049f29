"""Regions made unreadable."""

import numpy as np
import pytest

from procbuilder.media.hiding import hide
from procbuilder.model.marks import Box
from tests.media.filming import Image


def _noise() -> Image:
    return np.random.default_rng(1).integers(0, 256, (100, 200, 3), dtype=np.uint8)


def test_hide_leaves_at_most_nine_colours_to_blend() -> None:
    """A region of any content comes down to a smooth surface: neighbours hardly differ."""
    image = _noise()
    hide(image, Box(0.2, 0.2, 0.8, 0.8))
    region = image[20:80, 40:160].astype(int)
    assert np.abs(np.diff(region, axis=0)).max() <= 4
    assert np.abs(np.diff(region, axis=1)).max() <= 4


def test_hide_touches_nothing_else() -> None:
    """Beyond a margin of two pixels the picture is as it was."""
    image = _noise()
    hide(image, Box(0.2, 0.2, 0.8, 0.8))
    untouched = np.ones((100, 200), dtype=bool)
    untouched[18:82, 38:162] = False
    assert (image[untouched] == _noise()[untouched]).all()


@pytest.mark.parametrize("box", [Box(0.8, 0.8, 0.2, 0.2), Box(-1, -1, 2, 2), Box(0.9, 0.5, 1.5, 0.6)])
def test_hide_box_in_any_order_and_beyond_the_edge(box: Box) -> None:
    """Swapped corners and corners outside hide what they cover."""
    image = _noise()
    hide(image, box)
    left, right = sorted((round(box.left * 200), round(box.right * 200)))
    top, bottom = sorted((round(box.top * 100), round(box.bottom * 100)))
    region = image[max(top, 0) : bottom, max(left, 0) : right].astype(int)
    assert np.abs(np.diff(region, axis=1)).max() <= 15


def test_hide_box_outside_the_picture_hides_nothing() -> None:
    """There is nothing to hide there."""
    image = _noise()
    hide(image, Box(1.5, 0.2, 1.8, 0.4))
    assert (image == _noise()).all()
