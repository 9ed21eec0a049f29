"""Made takes: hands at work before a photograph, without a break, with all over which a rule for cuts may stumble.

The exposure jumps, a lamp flashes, the camera is swung, a hand sweeps through, pictures are repeated: none is a cut.
Two sets that share no photograph and no seed: ratios are chosen on the one, the other is only reported.
"""

from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path

import cv2
import numpy as np
from numpy.typing import NDArray

from tests.bench.made_hands import Hand, Layer, hand
from tests.bench.made_scenes import MARGIN, SIZE, Image, castings, filling, hoses, planks, tiles
from tests.media.montage import OPENCV_DOC

TRAPS = ("exposure", "flash", "pan", "sweep", "repeats")

_package = find_spec("skimage")
_SKIMAGE = Path(_package.origin).parent / "data" if _package and _package.origin else Path("skimage")
"""Photographs in the wheel ``scikit-image``."""

_TUNING = tuple(_SKIMAGE / name for name in ("motorcycle_left.png", "coffee.png", "chelsea.png", "brick.png"))
_UNSEEN = tuple(
    OPENCV_DOC / "examples" / "data" / name
    for name in ("board.jpg", "stuff.jpg", "fruits.jpg", "rubberwhale1.png", "building.jpg")
)

Floats = NDArray[np.float64]


def takes(unseen: bool, rate: int, seconds: int = 9) -> tuple[tuple[Image, ...], ...]:
    """One take before each ground of a set; none where its photographs are not on this machine."""
    paths = _UNSEEN if unseen else _TUNING
    if not all(path.is_file() for path in paths):
        return ()
    drawn = [paint(np.random.default_rng(8)) for paint in ((hoses, tiles) if unseen else (planks, castings))]
    grounds = [*(np.asarray(cv2.imread(str(path)), dtype=np.uint8) for path in paths), *drawn]
    first = 7000 if unseen else 100
    return tuple(
        tuple(take(filling(ground), first + number, rate, seconds, (TRAPS[number % 5], TRAPS[(number + 2) % 5])))
        for number, ground in enumerate(grounds)
    )


def take(ground: Image, seed: int, rate: int, seconds: int, traps: tuple[str, ...]) -> Iterator[Image]:
    """A hand comes, works and goes, again and again; the traps lie between, at a place of their own each."""
    chance = np.random.default_rng(seed)
    reaching, count = hand(chance), rate * seconds
    tip, shift = _tips(reaching, chance, rate, count), np.zeros((count, 2))
    gain, lamp, shown = np.ones(count), np.zeros(count), np.arange(count)
    for number, trap in enumerate(traps):
        at = round(count * (number + chance.uniform(0.5, 1.0)) / (len(traps) + 0.5))
        if trap == "exposure":
            gain[at:] *= float(chance.choice([0.55, 0.7, 1.35, 1.6]))
        elif trap == "flash":
            for late in range(int(chance.integers(1, 4))):
                lamp[at + late] = chance.uniform(50, 130) / (late + 1)
        elif trap == "pan":
            shift += _swing(count, at, max(round(rate * chance.uniform(0.2, 0.5)), 3), chance)
        elif trap == "sweep":
            tip[at : at + rate // 4] = _sweep(reaching, rate // 4, chance)[: max(count - at, 0)]
        else:
            shown[at:] = at + (np.arange(count - at) // int(chance.integers(2, 5))) * int(chance.integers(1, 3))
    shown = np.minimum(shown, count - 1)
    for now in shown:
        yield _picture(ground, reaching, tip, shift[now], (gain[now], lamp[now]), int(now))


def _tips(reaching: Hand, chance: np.random.Generator, rate: int, count: int) -> Floats:
    """Finger tips in each picture, in pixels."""
    away = np.array(reaching.away) * 750
    places: list[Floats] = []
    place = np.array(SIZE) * chance.uniform(0.35, 0.65, 2)
    while sum(map(len, places)) < count:
        comes, goes, works = (max(round(rate * chance.uniform(*span)), 2) for span in ((0.4, 0.9),) * 2 + ((1, 3),))
        rest = np.repeat(place[None] + away, round(rate * chance.uniform(0.1, 0.8)), axis=0)
        turns = np.arange(works)[:, None] / rate * 2 * np.pi * chance.uniform(0.5, 2)
        work = place + np.hstack([np.sin(turns), np.cos(turns) - 1]) * chance.uniform(4, 30)
        near, far = _eased(comes)[:, None], _eased(goes)[:, None]
        places += [rest, place + away * (1 - near), work, work[-1] + away * far]
        place = np.array(SIZE) * chance.uniform(0.3, 0.7, 2)
    return np.concatenate(places)[:count]


def _eased(count: int) -> Floats:
    part = np.linspace(0, 1, count)
    return np.asarray(part * part * (3 - 2 * part), dtype=np.float64)


def _swing(count: int, at: int, length: int, chance: np.random.Generator) -> Floats:
    """The camera turns to another place, and stays there."""
    by = np.array([chance.choice([-1, 1]) * chance.uniform(80, MARGIN - 5), chance.uniform(-60, 60)])
    share = np.concatenate([np.zeros(at), _eased(length), np.ones(count)])[:count]
    return np.asarray(share[:, None] * by, dtype=np.float64)


def _sweep(reaching: Hand, count: int, chance: np.random.Generator) -> Floats:
    """Across the whole picture, at right angles to the arm."""
    x, y = reaching.away
    across, middle = np.array([y, -x]), np.array(SIZE) / 2
    return np.asarray(middle + np.linspace(-520, 520, count)[:, None] * across * chance.choice([-1, 1]))


def _picture(ground: Image, reaching: Hand, tip: Floats, shift: Floats, light: tuple[float, float], now: int) -> Image:
    move = np.array([[1, 0, -MARGIN - shift[0]], [0, 1, -MARGIN - shift[1]]])
    seen = cv2.warpAffine(ground, move, SIZE, flags=cv2.INTER_LINEAR).astype(np.float32)
    layer = _smeared(reaching, tip, now)
    lit = (seen * (1 - layer[:, :, 3:]) + layer[:, :, :3]) * light[0]
    lit += np.linspace(1.5, 0.5, SIZE[0], dtype=np.float32)[None, :, None] * light[1]
    return np.asarray(np.clip(lit, 0, 255), dtype=np.uint8)


def _smeared(reaching: Hand, tip: Floats, now: int) -> Layer:
    """The hand as seen while the shutter is open for half the time between two pictures."""
    x, y = tip[now]
    if not (-400 < x < SIZE[0] + 400 and -400 < y < SIZE[1] + 400):
        return np.zeros((SIZE[1], SIZE[0], 4), np.float32)
    step = tip[min(now + 1, len(tip) - 1)] - tip[now]
    many = int(np.clip(np.hypot(*step) / 24, 1, 5))
    parts = [reaching.drawn((x + step[0] * part / 2 / many, y + step[1] * part / 2 / many)) for part in range(many)]
    return np.asarray(sum(parts) / np.float32(many), dtype=np.float32)
