"""Small recordings and pictures hurt in many ways, the same every time: bits, lengths, sizes, bytes put in or out."""

import random
import struct
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import av
import cv2
import numpy as np

from tests.media import filming
from tests.media.filming import Track

_SMALL = Track(size=(96, 64), gop=6)
_SOUND = (Fraction(1),)

Mutation = Callable[[bytearray, random.Random], bytearray]


def samples(folder: Path) -> list[Path]:
    """Sound recordings of a second in the containers that cameras and browsers write."""
    times = filming.steady(1, rate=12)
    first = filming.film(folder / "first.mp4", times, track=replace(_SMALL, b_frames=2, sound=_SOUND))
    return [
        first,
        filming.film(folder / "turned.mov", times, track=replace(_SMALL, turned=90, sound=_SOUND)),
        filming.film(folder / "hevc.mp4", times, track=replace(_SMALL, codec="libx265", colours=(9, 18, 9))),
        filming.film(folder / "matroska.mkv", times, track=replace(_SMALL, sound=_SOUND)),
        filming.film(folder / "stream.ts", times, track=replace(_SMALL, sound=_SOUND)),
        filming.film(folder / "jpegs.avi", times, track=replace(_SMALL, codec="mjpeg", full_range=True)),
        filming.film(folder / "flash.flv", times, track=replace(_SMALL, sound=_SOUND)),
        _webm(folder / "browser.webm", first),
    ]


def pictures(folder: Path) -> list[Path]:
    """Sound picture files of the kinds that phones and programs write."""
    image = filming.numbered(9, 320, 240)
    kinds: dict[str, tuple[np.ndarray[Any, Any], list[int]]] = {
        "plain.jpg": (image, []),
        "stages.jpg": (image, [cv2.IMWRITE_JPEG_PROGRESSIVE, 1, cv2.IMWRITE_JPEG_OPTIMIZE, 1]),
        "grey.jpg": (image[:, :, 0], []),
        "colour.png": (image, []),
        "deep.png": (image.astype(np.uint16) * 257, []),
        "clear.png": (np.dstack([image, image[:, :, 0]]), []),
    }
    for name, (stored, how) in kinds.items():
        (folder / name).write_bytes(cv2.imencode(name[-4:], stored, how)[1].tobytes())
    return [folder / name for name in kinds]


def _webm(path: Path, source: Path) -> Path:
    """The pictures of another recording as VP9, which browsers write."""
    with av.open(str(source)) as old, av.open(str(path), "w") as new:
        stream = new.add_stream("libvpx-vp9", rate=12, options={"deadline": "realtime", "cpu-used": "8"})
        stream.width, stream.height, stream.pix_fmt = 96, 64, "yuv420p"
        for frame in old.decode(video=0):
            new.mux(stream.encode(frame.reformat(format="yuv420p")))
        new.mux(stream.encode(None))
    return path


def mutants(sources: list[Path], folder: Path, count: int, seed: int = 11) -> Iterator[Path]:
    """That many damaged copies, each kind of damage on each kind of file in turn."""
    chance = random.Random(seed)
    for number in range(count):
        source = sources[number % len(sources)]
        mutate = _MUTATIONS[number // len(sources) % len(_MUTATIONS)]
        path = folder / f"{number:04}-{mutate.__name__.strip('_')}-{source.name}"
        path.write_bytes(mutate(bytearray(source.read_bytes()), chance))
        yield path


def _flips(data: bytearray, chance: random.Random) -> bytearray:
    for _ in range(chance.choice((1, 4, 40))):
        data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
    return data


def _flips_in_front(data: bytearray, chance: random.Random) -> bytearray:
    for _ in range(chance.choice((1, 4, 16))):
        data[chance.randrange(min(len(data), 1500))] = chance.randrange(256)
    return data


def _flips_at_the_end(data: bytearray, chance: random.Random) -> bytearray:
    for _ in range(chance.choice((1, 4, 16))):
        data[-1 - chance.randrange(min(len(data), 1500))] = chance.randrange(256)
    return data


def _cut_off(data: bytearray, chance: random.Random) -> bytearray:
    return data[: chance.randrange(1, len(data))]


def _cut_out(data: bytearray, chance: random.Random) -> bytearray:
    first = chance.randrange(len(data))
    del data[first : first + chance.choice((1, 7, 188, 2000))]
    return data


def _put_in(data: bytearray, chance: random.Random) -> bytearray:
    first = chance.randrange(len(data))
    data[first:first] = chance.randbytes(chance.choice((1, 7, 188, 2000)))
    return data


def _blank(data: bytearray, chance: random.Random) -> bytearray:
    first, length = chance.randrange(len(data)), chance.choice((16, 512, 4096))
    length = min(length, len(data) - first)
    data[first : first + length] = bytes([chance.choice((0, 255))]) * length
    return data


def _numbers(data: bytearray, chance: random.Random) -> bytearray:
    """Sizes, counts and times where a box has them, or anywhere: nothing, far too much, or negative."""
    names = (b"moov", b"trak", b"stts", b"stsz", b"stco", b"stsc", b"ctts", b"mdat", b"tkhd", b"mdhd", b"elst", b"avcC")
    places = [data.find(name) + chance.choice((-4, 8, 12, 16, 20)) for name in names if name in data]
    first = max(chance.choice(places or [chance.randrange(len(data) - 4)]), 0)
    data[first : first + 4] = struct.pack(">I", chance.choice((0, 1, 8, 2**31 - 1, 2**31, 2**32 - 1)))
    return data


_MUTATIONS: tuple[Mutation, ...] = (
    _flips,
    _flips_in_front,
    _flips_at_the_end,
    _cut_off,
    _cut_out,
    _put_in,
    _blank,
    _numbers,
)
