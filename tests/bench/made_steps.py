"""Made step windows: what the camera, the light and the hand do is known for each picture.

A window is seven to fourteen seconds. The hand comes, works, rests at times, finishes, goes; then the step is held,
and at its end the camera may swing away or the hand may come back. Some windows have no good picture at all. In others
the hand takes the part off and holds it up beside its place for two seconds and more: that shows it, too.
"""

import math
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

import av
import cv2
import numpy as np
from numpy.typing import NDArray

from tests.bench.made_hands import Hand, Layer, hand
from tests.bench.made_scenes import MARGIN, SIZE, Image

RATE = 20
NONE = ("works on", "rests in front", "soft", "dark", "burnt", "shaking")
"""Ways in which a step has no good picture."""
ENDINGS = ("held", "swing", "hand back")
SHOWN = "held up"
"""An ending in which the hand stays in the picture and shows the part that it has taken off."""
LEAST_GOOD = 7
"""Pictures: a window that is to have good ones has at least so many of them."""

Floats = NDArray[np.float64]


@dataclass
class Script:
    """What happens in each picture of a window."""

    kind: str
    tip: Floats
    """Finger tips in pixels of the picture; far outside when the hand is away."""
    finish: int
    shift: Floats
    """Pixels by which the camera is off its place."""
    soft: Floats
    """Sigma of the blur in pixels."""
    gain: Floats
    noise: float
    showing: int
    """The picture from which on the part is held up; beyond the last one when it is not."""
    good: list[bool] = field(default_factory=list)


@dataclass(frozen=True)
class Part:
    """What is worked on: the ground before and after the finish."""

    before: Image
    after: Image
    place: tuple[float, float]
    radius: float

    def taken_off(self) -> Layer:
        """The part alone, on a square of its own."""
        reach = math.ceil(self.radius)
        across, down = int(self.place[0] + MARGIN), int(self.place[1] + MARGIN)
        image = self.before[down - reach : down + reach, across - reach : across + reach].astype(np.float32)
        cover = np.zeros(image.shape[:2], np.float32)
        cv2.circle(cover, (reach, reach), reach - 1, 1.0, -1, cv2.LINE_AA)
        return np.dstack([image * cover[:, :, None], cover]).astype(np.float32)


def make(ground: Image, seed: int, kind: str, target: Path) -> Script:
    """Write the recording of one window and tell what is good in it."""
    while True:
        chance = np.random.default_rng(seed)
        reaching, part = hand(chance), _part(ground, kind, chance)
        script = _script(kind, reaching, part, chance)
        images = _pictures(script, reaching, part, chance) if _possible(script) else []
        if images and ((kind in NONE) == (sum(script.good) == 0)) and (kind in NONE or sum(script.good) >= LEAST_GOOD):
            _write(images, target)
            return script
        seed += 100_003


def _possible(script: Script) -> bool:
    """Whether it is worth drawing: there is light and sharpness enough after the finish, or none is wanted."""
    fine = (np.abs(np.log(script.gain)) < 0.25) & (script.soft < 0.8) & (np.arange(len(script.gain)) > script.finish)
    return script.kind in NONE or int(fine.sum()) >= LEAST_GOOD


def _part(ground: Image, kind: str, chance: np.random.Generator) -> Part:
    large = chance.random() < 0.2
    radius = chance.uniform(110, 170) if large else chance.uniform(28, 75)
    if kind == SHOWN and large:
        radius /= 2.5
    place = (SIZE[0] * chance.uniform(0.32, 0.68), SIZE[1] * chance.uniform(0.32, 0.68))
    bare, fitted = ground.copy(), ground.copy()
    centre = (int(place[0] + MARGIN), int(place[1] + MARGIN))
    cv2.circle(bare, centre, int(radius * chance.uniform(0.4, 0.8)), (28, 30, 32), -1, cv2.LINE_AA)
    _fit(fitted, centre, radius, chance.uniform(0, 3), chance)
    other = fitted.copy()
    _fit(other, centre, radius * 0.96, chance.uniform(0, 3), chance)
    pairs = ((bare, fitted), (fitted, bare), (fitted, other))
    before, after = pairs[1 if kind == SHOWN else chance.integers(3)]
    return Part(before, after, place, radius)


def _fit(image: Image, centre: tuple[int, int], radius: float, turn: float, chance: np.random.Generator) -> None:
    tone = chance.uniform(50, 200)
    corners = int(chance.integers(5, 30))
    angles = turn + np.arange(corners) * 2 * math.pi / corners
    outline = np.stack([centre[0] + radius * np.cos(angles), centre[1] + radius * np.sin(angles)], axis=1)
    cv2.fillPoly(image, [outline.astype(np.int32)], (tone * 0.95, tone, tone * 1.02), cv2.LINE_AA)
    cv2.polylines(image, [outline.astype(np.int32)], True, (25, 25, 25), 2, cv2.LINE_AA)
    for angle in turn + np.arange(int(chance.integers(3, 7))):
        at = (int(centre[0] + radius * 0.62 * math.cos(angle)), int(centre[1] + radius * 0.62 * math.sin(angle)))
        cv2.circle(image, at, max(int(radius / 8), 3), (235, 238, 240), -1, cv2.LINE_AA)
        cv2.circle(image, at, max(int(radius / 16), 1), (30, 30, 30), -1, cv2.LINE_AA)


def _script(kind: str, reaching: Hand, part: Part, chance: np.random.Generator) -> Script:
    tips, finish, showing = _path(kind, reaching, part, chance)
    count = len(tips)
    away = tips[:, 0] > 9e3
    last_in = int(np.nonzero(~away[: len(away)])[0][-1]) if kind != "hand back" else finish
    script = Script(
        kind, tips, finish, _shake(count, kind, chance), np.zeros(count), np.ones(count), chance.uniform(2, 6), showing
    )
    for _ in range(int(chance.integers(0, 3))):
        _spell(script.soft, chance.uniform(1.5, 4), chance)
    for _ in range(int(chance.integers(0, 3))):
        _spell(script.gain, float(chance.choice([0.2, 0.35, 2.2, 3.5])), chance)
    if kind == "swing":
        _swing(script.shift, max(last_in + 1, count - int(chance.integers(10, 26))), chance)
    if kind == "soft":
        script.soft[0 if chance.random() < 0.5 else finish - 12 :] = chance.uniform(2.5, 5)
    if kind == "dark":
        script.gain[:] = chance.uniform(0.06, 0.16)
    if kind == "burnt":
        script.gain[:] = chance.uniform(4.5, 8)
    return script


def _spell(values: Floats, value: float, chance: np.random.Generator) -> None:
    begin, length = int(chance.integers(0, len(values))), int(chance.integers(6, 24))
    values[begin : begin + length] = value


def _path(kind: str, reaching: Hand, part: Part, chance: np.random.Generator) -> tuple[Floats, int, int]:
    """Finger tips of each picture, and the pictures from which on the part is finished and held up."""
    off = np.array([1e4, 1e4])
    there = np.array(part.place) + chance.uniform(-25, 25, 2)
    outside = there + np.array(reaching.away) * 520
    tips = [off] * int(chance.integers(0, 20))
    tips += _between(outside, there, chance)
    work = int(chance.integers(2, 5))
    for _ in range(work):
        tips += _working(there, int(chance.integers(22, 50)), chance)
        if chance.random() < 0.6:
            tips += _resting(tips[-1], int(chance.integers(8, 26)), chance)
    finish = len(tips) - int(chance.integers(3, 14))
    if kind == "works on":
        return np.array(tips + _working(there, int(chance.integers(16, 40)), chance)), finish, len(tips) + 99
    if kind == "rests in front":
        return np.array(tips + _resting(tips[-1], int(chance.integers(16, 45)), chance)), finish, len(tips) + 99
    if kind == SHOWN:
        return _holding_up(tips, finish, outside, reaching, chance)
    tips += _between(tips[-1], outside, chance)
    tips += [off] * int(chance.integers(14, 50))
    if kind == "hand back":
        tips += _between(outside, there, chance)
        tips += _resting(there, int(chance.integers(6, 26)), chance)
    if kind == "swing":
        tips += [off] * 22
    return np.array(tips), finish, len(tips)


def _holding_up(
    tips: list[Floats], finish: int, outside: Floats, reaching: Hand, chance: np.random.Generator
) -> tuple[Floats, int, int]:
    """The part is taken aside at once, or the hand goes and comes back with it, to the side it comes from."""
    aside = chance.choice([-1, 1]) * chance.uniform(70, 150) * np.array([reaching.away[1], -reaching.away[0]])
    held = tips[-1] + np.array(reaching.away) * chance.uniform(0, 60) + aside
    held = np.clip(held, [90, 80], [SIZE[0] - 90, SIZE[1] - 80])
    finish = len(tips)
    if chance.random() < 0.5:
        tips += _between(tips[-1], outside, chance) + [np.array([1e4, 1e4])] * int(chance.integers(2, 12))
        tips += _between(outside + aside, held, chance)
    else:
        tips += _between(tips[-1], held, chance)
    return np.array(tips + _resting(held, int(chance.integers(42, 62)), chance)), finish, len(tips)


def _between(start: Floats, end: Floats, chance: np.random.Generator) -> list[Floats]:
    count = int(chance.integers(7, 16))
    ways = (1 - np.cos(np.linspace(0, math.pi, count))) / 2
    return [start + (end - start) * way for way in ways]


def _working(there: Floats, count: int, chance: np.random.Generator) -> list[Floats]:
    times, reach, pace = np.arange(count) / RATE, chance.uniform(8, 45), chance.uniform(0.5, 2)
    phases = chance.uniform(0, 6, 2)
    return [there + reach * np.sin(2 * math.pi * pace * time * np.array([1, 0.7]) + phases) for time in times]


def _resting(at: Floats, count: int, chance: np.random.Generator) -> list[Floats]:
    return list(at + np.cumsum(chance.normal(0, 0.3, (count, 2)), axis=0))


def _shake(count: int, kind: str, chance: np.random.Generator) -> Floats:
    amount = 0.0 if chance.random() < 0.25 else chance.uniform(0.5, 4)
    times = np.arange(count) / RATE
    parts = [
        np.sin(2 * math.pi * chance.uniform(*pace) * times[:, None] + chance.uniform(0, 6, 2)) * weight
        for pace, weight in (((0.1, 0.5), 1.5), ((0.8, 2.0), 0.6), ((2.5, 5.0), 0.15))
    ]
    shake = amount * np.sum(parts, axis=0)
    if kind == "shaking":
        shake = shake * 0.5 + chance.uniform(12, 20) * np.sin(
            2 * math.pi * chance.uniform(2.2, 3.4) * times[:, None] + [0, 1]
        )
    return np.asarray(shake, dtype=np.float64)


def _swing(shift: Floats, begin: int, chance: np.random.Generator) -> None:
    turn = chance.uniform(0, 2 * math.pi)
    towards = np.array([math.cos(turn), math.sin(turn)]) * (MARGIN - 25)
    count = len(shift) - begin
    length = max(int(count * chance.uniform(0.6, 1.1)), 6)
    ways = np.minimum((np.arange(count) + 1) / length, 1.0) ** 1.5
    shift[begin:] += towards * ways[:, None]


def _pictures(script: Script, reaching: Hand, part: Part, chance: np.random.Generator) -> list[Image]:
    grain = chance.normal(0, script.noise, (6, SIZE[1], SIZE[0], 1)).astype(np.float32)
    images, held = [], part.taken_off()
    speeds = np.vstack([np.zeros(2), np.diff(script.shift, axis=0)])
    for index in range(len(script.tip)):
        view = _view(part.after if index >= script.finish else part.before, script.shift[index])
        view, cover = _reached(view, reaching, script, index)
        if script.kind == SHOWN and index >= script.finish and cover:
            _carry(view, held, script.tip[index] + script.shift[index] - np.array(reaching.away) * part.radius * 0.6)
        view = _softened(view, script.soft[index], speeds[index])
        view = view * script.gain[index] + grain[index % 6] * (0.6 + 0.4 * script.gain[index] ** 0.5)
        images.append(np.clip(view, 0, 255).astype(np.uint8))
        script.good.append(_is_good(script, index, cover, float(np.hypot(*speeds[index])), view))
    return images


def _is_good(script: Script, index: int, cover: float, speed: float, view: NDArray[np.float32]) -> bool:
    """Finished, hand gone or showing the part, sharp, well lit, and the camera still on the work."""
    lit = abs(math.log(script.gain[index])) < 0.25 and float(np.mean(view > 252)) < 0.3
    there = float(np.hypot(*script.shift[index])) < 30
    free = cover < 0.002 or index >= script.showing + 2
    return bool(index >= script.finish and free and script.soft[index] < 0.8 and speed < 2.5 and lit and there)


def _view(ground: Image, shift: Floats) -> NDArray[np.float32]:
    move = np.array([[1, 0, shift[0] - MARGIN], [0, 1, shift[1] - MARGIN]], dtype=np.float64)
    return np.asarray(cv2.warpAffine(ground, move, SIZE, flags=cv2.INTER_LINEAR), dtype=np.float32)


def _reached(
    view: NDArray[np.float32], reaching: Hand, script: Script, index: int
) -> tuple[NDArray[np.float32], float]:
    """The picture with the hand in it, blurred along its way, and the share of the picture that it covers."""
    tip = script.tip[index]
    if tip[0] > 9e3:
        return view, 0.0
    before = script.tip[index - 1] if index and script.tip[index - 1][0] < 9e3 else tip
    way = (tip - before) * 0.5
    count = int(np.clip(np.hypot(*way) / 4, 1, 5))
    places = [tip - way * part / count + script.shift[index] for part in range(count)]
    layer: Layer = np.mean([reaching.drawn((float(x), float(y))) for x, y in places], axis=0)
    return view * (1 - layer[:, :, 3:]) + layer[:, :, :3], float(layer[:, :, 3].mean())


def _carry(view: NDArray[np.float32], held: Layer, centre: Floats) -> None:
    """Lay a part over the picture, as far as it is inside."""
    reach = held.shape[0] // 2
    wide = cv2.copyMakeBorder(view, reach, reach, reach, reach, cv2.BORDER_CONSTANT)
    left, top = (int(value) for value in np.clip(centre, 0, [SIZE[0] - 1, SIZE[1] - 1]))
    place = wide[top : top + 2 * reach, left : left + 2 * reach]
    place[:] = place * (1 - held[:, :, 3:]) + held[:, :, :3]
    view[:] = wide[reach:-reach, reach:-reach]


def _softened(view: NDArray[np.float32], sigma: float, speed: Floats) -> NDArray[np.float32]:
    length = int(np.hypot(*speed) * 0.5)
    if length > 1:
        line = np.zeros((2 * length + 1, 2 * length + 1), np.float32)
        end = (round(length + speed[0] / 4), round(length + speed[1] / 4))
        cv2.line(line, (2 * length - end[0], 2 * length - end[1]), end, 1.0)
        view = np.asarray(cv2.filter2D(view, -1, line / line.sum()), dtype=np.float32)
    return np.asarray(cv2.GaussianBlur(view, (0, 0), sigma), dtype=np.float32) if sigma > 0 else view


def _write(images: list[Image], target: Path) -> None:
    with av.open(target, "w") as container:
        stream = container.add_stream("libx264", rate=RATE, options={"preset": "ultrafast", "crf": "26"})
        stream.width, stream.height, stream.pix_fmt = *SIZE, "yuv420p"
        stream.gop_size, stream.codec_context.thread_count = RATE, 1
        for index, image in enumerate(images):
            frame = av.VideoFrame.from_ndarray(image, format="bgr24")
            frame.pts, frame.time_base = index, Fraction(1, RATE)
            container.mux(stream.encode(frame))
        container.mux(stream.encode())
