"""Turns the drawn frames into a film as from a hand-held phone: shake, light, focus and grain are added here."""

import subprocess
from collections.abc import Iterator
from pathlib import Path

import cv2
import numpy as np
from timeline import Placed

WIDTH, HEIGHT, FPS = 960, 540, 25
DRAWN_WIDTH, DRAWN_HEIGHT = 992, 558
SEED = 11
SHAKE = 9.0
"""Greatest shake in pixels of the drawn frame."""
GRAIN = 2.0
LONGEST_GAP = 0.7
"""Seconds between two drawn frames up to which pictures are made between them."""
UNCLEAR = 40
"""Error of a followed motion, in grey levels, beyond which no picture is made from it."""
CRF = 26

Picture = np.ndarray


class FrameShelf:
    """The drawn frames of one take, and the pictures between them."""

    def __init__(self, item: Placed, frames: Path) -> None:
        self.item, self.folder = item, frames / item.take.shot
        self.have = sorted(int(path.stem) for path in self.folder.glob("[0-9][0-9][0-9][0-9].jpg"))
        self.ticks = [tick for tick, number in enumerate(item.order) if number in self.have]
        self.loaded: dict[int, Picture] = {}
        self.flow: tuple[int, int, Picture | None] | None = None

    def at(self, film: float) -> Picture:
        """The picture at a moment of the take."""
        position = min(film * self.item.rate, len(self.item.order) - 1)
        before = max((tick for tick in self.ticks if tick <= position), default=self.ticks[0])
        after = min((tick for tick in self.ticks if tick > position), default=before)
        first, last = self.item.order[before], self.item.order[after]
        if first == last or (after - before) / self.item.rate > LONGEST_GAP:
            return self._load(first)
        return self._between(first, last, (position - before) / (after - before))

    def _load(self, number: int) -> Picture:
        if number not in self.loaded:
            picture = cv2.imread(str(self.folder / f"{number:04d}.jpg"))
            self.loaded[number] = cv2.resize(picture, (DRAWN_WIDTH, DRAWN_HEIGHT), interpolation=cv2.INTER_CUBIC)
        return self.loaded[number]

    def _between(self, first: int, last: int, share: float) -> Picture:
        """Push both neighbours along the seen motion and fade over; the nearer one where the motion is not clear."""
        a, b = self._load(first), self._load(last)
        if self.flow is None or self.flow[:2] != (first, last):
            self.flow = (first, last, _motion(a, b))
        way = self.flow[2]
        if share < 0.02 or way is None:
            return a if share < 0.5 else b
        from_a, from_b = _push(a, way, share).astype(np.float32), _push(b, way, share - 1).astype(np.float32)
        return (from_a * (1 - share) + from_b * share).astype(np.uint8)


def _motion(a: Picture, b: Picture) -> Picture | None:
    """How each point of one picture moves to the next; None if that does not explain what is seen."""
    seeker = cv2.DISOpticalFlow_create(cv2.DISOPTICAL_FLOW_PRESET_MEDIUM)
    way = seeker.calc(cv2.cvtColor(a, cv2.COLOR_BGR2GRAY), cv2.cvtColor(b, cv2.COLOR_BGR2GRAY), None)
    error = np.percentile(cv2.absdiff(_push(a, way, 1.0), b).max(axis=2), 97)
    return way if error < UNCLEAR else None


def _push(picture: Picture, way: Picture, share: float) -> Picture:
    rows, columns = np.mgrid[0 : picture.shape[0], 0 : picture.shape[1]].astype(np.float32)
    return cv2.remap(
        picture,
        columns - way[..., 0] * share,
        rows - way[..., 1] * share,
        cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_REPLICATE,
    )


def drift(count: int, pace: float, reach: float, chance: np.random.Generator) -> np.ndarray:
    """A smooth tremor: a few sines with chance phases, never beyond `reach`."""
    t = np.arange(count) / FPS
    waves = [
        np.sin(2 * np.pi * pace * k * (1 + 0.13 * chance.random()) * t + 6.28 * chance.random()) / k
        for k in (1, 2, 3, 4)
    ]
    return reach * np.sum(waves, axis=0) / 2.1


class Hand:
    """The hand that holds the camera, and the camera's own moods."""

    def __init__(self, placed: list[Placed], chance: np.random.Generator) -> None:
        count = round(placed[-1].end * FPS)
        self.right, self.down = drift(count, 0.35, SHAKE, chance), drift(count, 0.45, SHAKE * 0.5, chance)
        self.roll = drift(count, 0.3, 0.3, chance)
        self.light = 1 + 0.012 * np.sin(np.arange(count) / FPS * 10.7) + 0.008 * chance.standard_normal(count)
        self.blur = np.zeros(count)
        for item in placed:
            for sound in item.take.sounds:
                if sound.kind in ("knock", "thud"):
                    self._bump(item.start + sound.at)
            for habit in item.take.habits:
                self._mood(habit.kind, item.start + habit.at, item.start + habit.until)

    def _bump(self, start: float) -> None:
        first = round(start * FPS)
        t = np.arange(len(self.down) - first)
        self.down[first:] += 3 * np.exp(-t / 3) * np.sin(t * 1.3)

    def _mood(self, kind: str, start: float, end: float) -> None:
        first, last = round(start * FPS), round(end * FPS)
        if kind == "exposure jump":
            self.light[first:last] *= np.linspace(1.6, 1, last - first)
        if kind == "blur":
            self.blur[first:last] = 6 * np.sin(np.linspace(0, np.pi, last - first))

    def hold(self, picture: Picture, i: int, zoom: float) -> Picture:
        """Crop the drawn frame where the camera points in film frame i."""
        scale = 1.01 + zoom
        turn = cv2.getRotationMatrix2D((DRAWN_WIDTH / 2, DRAWN_HEIGHT / 2), float(self.roll[i]), scale)
        turn[:, 2] += (self.right[i] - (DRAWN_WIDTH - WIDTH) / 2, self.down[i] - (DRAWN_HEIGHT - HEIGHT) / 2)
        held = cv2.warpAffine(picture, turn, (WIDTH, HEIGHT), flags=cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
        return cv2.GaussianBlur(held, (0, 0), self.blur[i]) if self.blur[i] > 0.3 else held


def film_frames(placed: list[Placed], frames: Path) -> Iterator[Picture]:
    """All pictures of a recording."""
    chance = np.random.default_rng(SEED)
    hand = Hand(placed, chance)
    for item in placed:
        shelf, first = FrameShelf(item, frames), round(item.start * FPS)
        for i in range(first, round(item.end * FPS)):
            film = i / FPS - item.start
            held = hand.hold(shelf.at(film), i, item.take.zoom * film / item.seconds)
            grain = (
                cv2.resize(chance.standard_normal((HEIGHT // 2, WIDTH // 2)).astype(np.float32), (WIDTH, HEIGHT))
                * GRAIN
            )
            yield np.clip(held * hand.light[i] + grain[..., None], 0, 255).astype(np.uint8)


def write_film(placed: list[Placed], frames: Path, sound: Path, target: Path) -> None:
    """Encode a recording with its sound."""
    pictures = f"-f rawvideo -pix_fmt bgr24 -s {WIDTH}x{HEIGHT} -r {FPS} -i -"
    coded = f"-c:v libx264 -preset medium -threads 2 -crf {CRF} -pix_fmt yuv420p -c:a aac -ac 1 -b:a 64k"
    plain = "-map_metadata -1 -fflags +bitexact -movflags +faststart"
    command = [*f"ffmpeg -v error -y {pictures} -i".split(), str(sound), *coded.split(), *plain.split(), str(target)]
    with subprocess.Popen(command, stdin=subprocess.PIPE) as encoder:
        for picture in film_frames(placed, frames):
            encoder.stdin.write(picture.tobytes())
