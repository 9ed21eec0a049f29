"""Small recordings made for the tests: the number of each picture can be read from the picture itself."""

import math
import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import av
import cv2
import numpy as np
from av.audio.frame import AudioFrame
from av.audio.stream import AudioStream
from av.container import OutputContainer
from av.video.frame import VideoFrame
from av.video.stream import VideoStream
from numpy.typing import NDArray

Image = NDArray[np.uint8]

BITS = 12
SHARED = Path(__file__).parents[3] / "shared" / "media"
"""The shared media folder beside the repository: real clips that may not be passed on with it."""


def numbered(number: int, width: int = 320, height: int = 240) -> Image:
    """A picture whose top sixth shows a number as twelve black or white blocks, above a quiet ramp."""
    image = np.zeros((height, width, 3), dtype=np.uint8)
    image[:, :] = np.linspace(60, 180, width, dtype=np.uint8)[None, :, None]
    edges = [round(bit * width / BITS) for bit in range(BITS + 1)]
    for bit in range(BITS):
        image[: height // 6, edges[bit] : edges[bit + 1]] = 235 if number >> bit & 1 else 16
    return image


def number_of(image: Image, *, right: float = 1.0, bottom: float = 1.0) -> int:
    """Reads the number again; ``right`` and ``bottom`` say where the numbered picture ends, as shares."""
    height, width = image.shape[:2]
    row = image[round(height * bottom / 12), :, 1]
    return sum(1 << bit for bit in range(BITS) if row[round((bit + 0.5) * width * right / BITS)] > 128)


@dataclass(frozen=True)
class Track:
    """What is filmed, apart from the times."""

    size: tuple[int, int] = (320, 240)
    gop: int = 12
    b_frames: int = 0
    turned: int = 0
    """Degrees anticlockwise by which a player has to turn the picture."""
    sound: tuple[Fraction, ...] = ()
    """Seconds of each sound track."""
    lead: Fraction = Fraction(0)
    """Seconds by which the sound begins before the first picture."""
    pixel_shape: Fraction = Fraction(1)
    tags: tuple[tuple[str, str], ...] = ()
    codec: str = "libx264"
    pixels: str = "yuv420p"
    colours: tuple[int, int, int] = (2, 2, 2)
    """Primaries, transfer and matrix as ITU-T H.273 numbers them; 2 is untagged."""
    full_range: bool = False
    live: bool = False
    """Written while it is not known how long it will be."""


def steady(seconds: int, rate: int = 25, start: Fraction = Fraction(0)) -> list[Fraction]:
    """Times at a constant rate."""
    return [start + Fraction(i, rate) for i in range(seconds * rate)]


def uneven(count: int, seed: int = 5) -> list[Fraction]:
    """Times that are 20 to 110 ms apart, as phones film in low light."""
    chance = random.Random(seed)
    times = [Fraction(0)]
    while len(times) < count:
        times.append(times[-1] + Fraction(chance.randrange(20, 110), 1000))
    return times


def film(
    path: Path,
    times: Sequence[Fraction],
    images: Iterable[Image | VideoFrame] | None = None,
    track: Track | None = None,
) -> Path:
    """Writes a recording whose pictures appear at these times; numbered pictures unless others are given."""
    track = track or Track()
    with av.open(str(path), "w", options=_file_options(path, track)) as container:
        container.metadata.update(track.tags)
        pictures = container.add_stream(track.codec, rate=25, options=_options(track))
        assert isinstance(pictures, VideoStream)
        context = pictures.codec_context
        context.width, context.height, context.pix_fmt = *track.size, track.pixels
        context.time_base, context.gop_size, context.max_b_frames = Fraction(1, 90_000), track.gop, track.b_frames
        context.thread_count, context.color_range = 1, 2 if track.full_range else 1
        context.color_primaries, context.color_trc, context.colorspace = track.colours
        context.sample_aspect_ratio = track.pixel_shape
        if track.turned:
            pictures.set_display_rotation(track.turned)
        sounds = [container.add_stream("aac", rate=48_000, layout="mono") for _ in track.sound]
        for time, image in zip(times, images or (numbered(i, *track.size) for i in range(len(times))), strict=False):
            frame = image if isinstance(image, VideoFrame) else VideoFrame.from_ndarray(image, format="bgr24")
            frame = frame.reformat(format=track.pixels)
            frame.time_base, frame.pts = Fraction(1, 90_000), round(time * 90_000)
            container.mux(pictures.encode(frame))
        container.mux(pictures.encode(None))
        for stream, seconds in zip(sounds, track.sound, strict=True):
            _tone(container, stream, seconds, times[0] - track.lead)
    return path


def _file_options(path: Path, track: Track) -> dict[str, str]:
    if path.suffix in (".mp4", ".mov"):
        flags = ("+faststart" if path.suffix == ".mp4" else "") + ("+use_metadata_tags" if track.tags else "")
        return {"movflags": flags} if flags else {}
    return {"live": "1"} if track.live else {}


def _options(track: Track) -> dict[str, str]:
    rhythm = f"scenecut=0:b-adapt=0:keyint={track.gop}:min-keyint={track.gop}"
    return {
        "libx264": {"preset": "veryfast", "crf": "20", "x264-params": rhythm},
        "libx265": {"preset": "ultrafast", "crf": "12", "x265-params": f"{rhythm}:log-level=none", "tag": "hvc1"},
        "mjpeg": {"q": "2"},
    }[track.codec]


def _tone(container: OutputContainer, stream: AudioStream, seconds: Fraction, start: Fraction) -> None:
    for first in range(0, round(seconds * 48_000), 1024):
        samples = 0.3 * np.sin(2 * math.pi * 440 * np.arange(first, first + 1024) / 48_000)
        frame = AudioFrame.from_ndarray(samples.astype(np.float32).reshape(1, -1), format="fltp", layout="mono")
        frame.rate, frame.time_base, frame.pts = 48_000, Fraction(1, 48_000), first + round(start * 48_000)
        container.mux(stream.encode(frame))
    container.mux(stream.encode(None))


def sound_only(path: Path) -> Path:
    """A file with a second of sound and no picture."""
    with av.open(str(path), "w") as container:
        _tone(container, container.add_stream("aac", rate=48_000, layout="mono"), Fraction(1), Fraction(0))
    return path


def scramble(path: Path, kind: str, share: tuple[float, float] = (0.0, 1.0), keep: float = 0.0) -> Path:
    """Overwrites all packets of one kind of track within a share of the file, but for the first part of each."""
    data, chance = bytearray(path.read_bytes()), random.Random(1)
    with av.open(str(path)) as container:
        packets = [(p.pos, p.size) for p in container.demux() if p.stream.type == kind and p.pos and p.size]
    for pos, size in packets[int(len(packets) * share[0]) : int(len(packets) * share[1])]:
        first = max(round(size * keep), 4)
        data[pos + first : pos + size] = chance.randbytes(max(size - first, 0))
    path.write_bytes(data)
    return path


def numbers(path: Path) -> list[tuple[Fraction, int]]:
    """Time and number of all pictures of a file, read without the code under test."""
    with av.open(str(path)) as container:
        return [
            (frame.pts * frame.time_base, number_of(frame.to_ndarray(format="bgr24").astype(np.uint8, copy=False)))
            for frame in container.decode(video=0)
            if frame.pts is not None and frame.time_base is not None
        ]


def scene(blur: int = 0, shift: int = 0, light: float = 1.0) -> Image:
    """Random stones, the same every time, blurred, moved to the right, or lit otherwise."""
    chance = np.random.default_rng(3)
    stones = chance.integers(30, 220, (24, 32, 3), dtype=np.uint8).repeat(10, axis=0).repeat(10, axis=1)
    moved = np.roll(stones, shift, axis=1)
    soft = blurred(moved, blur) if blur else moved
    return np.clip(soft.astype(float) * light, 0, 255).astype(np.uint8)


def blurred(image: Image, sigma: float) -> Image:
    """Out of focus by so many pixels."""
    return cv2.GaussianBlur(image, (0, 0), sigma).astype(np.uint8, copy=False)
