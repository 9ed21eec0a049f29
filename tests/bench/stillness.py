"""How well packets and key frames tell motion from stillness: ``python -m tests.bench.stillness``.

Real clips in turn with held pictures, before a camera that sways and with grain over all. Told is the chance that a
moving half second (or pair of key frames) ranks above a still one: 0.5 says nothing, 1 everything.
"""

import random
import tempfile
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import av
import numpy as np
from numpy.typing import NDArray

from procbuilder.media.cuts import small
from procbuilder.media.stillness import motion
from tests.media.filming import Image
from tests.media.montage import ENCODERS, RATE, Shot, filmed_by_hand, real, write

CLIPS = ("carphone_pristine.mp4", "bikes.mp4", "bigbuckbunny.mp4", "failing_audio.mp4")
BIN = RATE // 2


def by_turns(shots: tuple[Shot, ...], seed: int) -> tuple[list[Image], NDArray[np.bool_]]:
    """A shot, to and fro if it is short, then its last picture held, seven times; and which pictures move."""
    chance = random.Random(seed)
    frames: list[Image] = []
    moves: list[bool] = []
    for _ in range(7):
        shot = chance.choice(shots)
        moving = [*shot[:110], *(shot[::-1] if len(shot) < 60 else ())]
        held = [moving[-1]] * chance.randrange(60, 110)
        frames += [*moving, *held]
        moves += [True] * len(moving) + [False] * len(held)
    return frames, np.array(moves)


def above(moving: list[float], still: list[float]) -> float:
    """Chance that one of the first is larger than one of the second (Mann and Whitney's U over its largest value)."""
    one, other = np.array(moving)[:, None], np.array(still)[None, :]
    return float(np.mean(one > other) + 0.5 * np.mean(one == other))


def by_packets(path: Path, moves: NDArray[np.bool_]) -> float:
    """Mean bytes of the pictures of half a second, key frames left out."""
    with av.open(str(path)) as container:
        packets = sorted((p.pts or 0, p.size, p.is_keyframe) for p in container.demux(video=0) if p.size)
    moving: list[float] = []
    still: list[float] = []
    for first in range(0, len(packets) - BIN, BIN):
        sizes = [size for _, size, key in packets[first : first + BIN] if not key]
        share = moves[first : first + BIN].mean()
        if share in (0, 1) and sizes:
            (moving if share else still).append(float(np.mean(sizes)))
    return above(moving, still)


def by_key_frames(path: Path, moves: NDArray[np.bool_]) -> float | None:
    """Motion between key frames up to two seconds apart; None when there are too few."""
    with av.open(str(path)) as container:
        track = container.streams.video[0]
        track.codec_context.skip_frame = "NONKEY"
        keys = [((f.pts or 0) * (f.time_base or Fraction(1)), small(f)) for f in container.decode(track)]
    moving: list[float] = []
    still: list[float] = []
    for (start, before), (end, after) in pairwise(keys):
        share = moves[int(start * RATE) : int(end * RATE) + 1].mean()
        if share in (0, 1) and end - start <= 2:
            (moving if share else still).append(motion(before, after))
    return above(moving, still) if moving and still else None


def main() -> None:
    """One line for each clip and encoder."""
    with tempfile.TemporaryDirectory() as folder:
        for name in CLIPS:
            shots = real(name)
            for encoder in ENCODERS if shots else ():
                frames, moves = by_turns(shots, 3)
                path = write(Path(folder) / "turns.mp4", filmed_by_hand(frames, 5), encoder)
                keys = by_key_frames(path, moves)
                told = "too few key frames" if keys is None else f"key frames {keys:.3f}"
                print(f"{name}, {encoder}: packets {by_packets(path, moves):.3f}, {told}")


if __name__ == "__main__":
    main()
