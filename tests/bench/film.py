"""The recordings that the bench measures with: ten minutes as a phone writes them, made here, and longer ones."""

from fractions import Fraction
from pathlib import Path

import av
import numpy as np
from numpy.typing import NDArray

RATE = 30
SIZE = (1920, 1080)
BIT_RATE = 17_000_000
GOP = 30
SAMPLES = 48_000
_SEED = 20_261
_GRAIN = 12


def make(path: Path, seconds: int) -> Path:
    """Write the recording, unless it is there: 1080p30 H.264 of about 17 Mbit/s, key frame each second, mono AAC.

    A few shapes move before a still ground, and every picture has grain of its own, as a sensor gives it.
    """
    if path.is_file():
        return path
    path.parent.mkdir(parents=True, exist_ok=True)
    beside = path.with_name(f"new-{path.name}")
    with av.open(beside, "w", options={"movflags": "faststart"}) as container:
        pictures = container.add_stream("libx264", rate=RATE, options={"preset": "superfast", "bf": "0"})
        pictures.width, pictures.height, pictures.pix_fmt = *SIZE, "yuv420p"
        pictures.bit_rate, pictures.gop_size = BIT_RATE, GOP
        sound = container.add_stream("aac", rate=SAMPLES, layout="mono")
        grain = _grain()
        for index in range(seconds * RATE):
            frame = av.VideoFrame.from_ndarray(_picture(index, grain), format="yuv420p")
            frame.pts, frame.time_base = index, Fraction(1, RATE)
            container.mux(pictures.encode(frame))
            if index % RATE == 0:
                container.mux(sound.encode(_second_of_sound(index // RATE)))
        container.mux(pictures.encode())
        container.mux(sound.encode())
    beside.replace(path)
    return path


def repeated(film: Path, path: Path, seconds: int, times: int) -> Path:
    """Write the recording so many times in a row, unless it is there; its packets are copied as they are."""
    if path.is_file():
        return path
    beside = path.with_name(f"new-{path.name}")
    with av.open(beside, "w") as target:
        for number in range(times):
            with av.open(film) as source:
                if not number:
                    tracks = [target.add_stream_from_template(track) for track in source.streams]
                    last = [-SAMPLES] * len(tracks)
                for packet in source.demux():
                    if packet.dts is None or packet.pts is None or packet.time_base is None:
                        continue
                    later, track = int(number * seconds / packet.time_base), packet.stream_index
                    if packet.dts + later <= last[track]:
                        continue  # sound that begins a little before its pictures, or ends a little after them
                    last[track] = packet.dts + later
                    packet.pts, packet.dts = packet.pts + later, packet.dts + later
                    packet.stream = tracks[track]
                    target.mux(packet)
    beside.replace(path)
    return path


def _grain() -> list[NDArray[np.int16]]:
    """Sixteen planes of noise, used in turn."""
    generator = np.random.default_rng(_SEED)
    return [generator.integers(-_GRAIN, _GRAIN + 1, (SIZE[1], SIZE[0]), np.int16) for _ in range(16)]


def _picture(index: int, grain: list[NDArray[np.int16]]) -> NDArray[np.uint8]:
    width, height = SIZE
    ground = np.linspace(60, 180, width, dtype=np.int16)[None, :].repeat(height, 0)
    for shape in range(6):
        left = (shape * 290 + index * (shape + 1)) % (width - 200)
        ground[120 + shape * 140 : 240 + shape * 140, left : left + 200] = 40 + shape * 35
    luma = np.clip(ground + grain[index % len(grain)], 0, 255).astype(np.uint8)
    return np.concatenate([luma, np.full((height // 2, width), 128, np.uint8)])


def _second_of_sound(second: int) -> av.AudioFrame:
    times = np.arange(SAMPLES) / SAMPLES
    tone = (np.sin(2 * np.pi * (220 + second % 7 * 40) * times) * 0.2).astype(np.float32)
    frame = av.AudioFrame.from_ndarray(tone[None, :], format="fltp", layout="mono")
    frame.sample_rate, frame.pts, frame.time_base = SAMPLES, second * SAMPLES, Fraction(1, SAMPLES)
    return frame
