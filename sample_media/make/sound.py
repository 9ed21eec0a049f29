"""Voice, tools and room of a recording, and subtitles with the times of the spoken words."""

import subprocess
import tempfile
import wave
from itertools import pairwise
from pathlib import Path

import numpy as np
from story import Sound
from timeline import Cue, Placed

RATE = 22050
VOICE = ("-v", "en-gb+m3", "-s", "172", "-p", "38", "-a", "150")
SEED = 3
QUIET = 0.012
"""Below this the voice counts as silent."""

Samples = np.ndarray


def speak(words: str) -> Samples:
    """Say a sentence; silence at both ends is cut, so that its times are those of the speech."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "line.wav"
        subprocess.run(["espeak-ng", *VOICE, "-w", str(path), words], check=True)
        with wave.open(str(path)) as file:
            sound = np.frombuffer(file.readframes(file.getnframes()), np.int16).astype(np.float32) / 32768
    loud = np.flatnonzero(np.abs(sound) > QUIET)
    return sound[loud[0] : loud[-1] + 1]


def record(placed: list[Placed], chance: np.random.Generator) -> tuple[Samples, list[Cue]]:
    """The sound of a whole recording, and the cues of its speech."""
    mix, cues = room(placed[-1].end, chance), []
    for item in placed:
        for line in item.take.lines:
            voice, start = speak(line.spoken), item.start + line.at
            add(mix, voice * 0.8, start)
            cues.append(Cue(start, start + len(voice) / RATE, line))
        for sound in item.take.sounds:
            for i in range(sound.times):
                add(mix, noise(sound, chance), item.start + sound.at + i * sound.every)
    return np.clip(mix, -1, 1), cues


def crowded(placed: list[Placed], cues: list[Cue]) -> list[str]:
    """Lines that run into the next one or over the end of their shot."""
    found = [
        f"{cue.line.words!r} runs into the next line" for cue, after in pairwise(cues) if cue.end + 0.15 > after.start
    ]
    for item in placed:
        late = [cue for cue in cues if item.start <= cue.start < item.end and cue.end > item.end - 0.1]
        found += [f"{item.take.shot}: needs {cue.end - item.start + 0.2:.1f} s, has {item.seconds}" for cue in late]
    return found


def add(mix: Samples, sound: Samples, start: float) -> None:
    """Lay a sound over the mix."""
    first = round(start * RATE)
    part = sound[: max(0, len(mix) - first)]
    mix[first : first + len(part)] += part


def room(seconds: float, chance: np.random.Generator) -> Samples:
    """Hum of the lamps and the murmur of the hall."""
    count = round(seconds * RATE)
    t = np.arange(count) / RATE
    walk = np.cumsum(chance.standard_normal(count)).astype(np.float32)
    murmur = walk - np.convolve(walk, np.ones(2000) / 2000, "same")
    return (
        0.02 * murmur / np.abs(murmur).max() + 0.005 * np.sin(2 * np.pi * 100 * t) + 0.003 * np.sin(2 * np.pi * 200 * t)
    )


def noise(sound: Sound, chance: np.random.Generator) -> Samples:
    """One noise of a kind."""
    if sound.kind == "ring":
        t = np.arange(round(0.75 * RATE)) / RATE
        return 0.12 * np.sin(2 * np.pi * np.where((t * 16).astype(int) % 2, 620, 780) * t)
    if sound.kind == "wrench":
        t = np.arange(round(2.4 * RATE)) / RATE
        return 0.2 * chance.standard_normal(len(t)) * (np.sin(2 * np.pi * 17 * t) > 0.2) * np.minimum(1, t * 6)
    if sound.kind in ("scrape", "hiss", "whirr", "pump", "creak"):
        return _rustle(sound.kind, chance)
    return _struck(sound.kind, chance)


def _struck(kind: str, chance: np.random.Generator) -> Samples:
    pitch, fade, level = {
        "knock": (1900, 22, 0.45),
        "dull": (620, 40, 0.4),
        "clink": (3300, 30, 0.06),
        "thud": (90, 14, 0.4),
        "click": (2500, 90, 0.3),
    }[kind]
    t = np.arange(RATE // 3) / RATE
    tone = (
        np.sin(2 * np.pi * pitch * t)
        + 0.6 * np.sin(2 * np.pi * 1.53 * pitch * t)
        + 0.4 * chance.standard_normal(len(t)) * np.exp(-t * 120)
    )
    return level * np.exp(-t * fade) * tone


def _rustle(kind: str, chance: np.random.Generator) -> Samples:
    seconds, smooth, level = {
        "scrape": (0.5, 3, 0.10),
        "hiss": (1.8, 2, 0.05),
        "whirr": (4.0, 60, 0.25),
        "pump": (0.7, 30, 0.2),
        "creak": (0.6, 14, 0.12),
    }[kind]
    count = round(seconds * RATE)
    grain = np.convolve(chance.standard_normal(count), np.ones(smooth) / smooth, "same")
    return level * grain * np.sin(np.pi * np.arange(count) / count)


def write_wave(path: Path, mix: Samples) -> None:
    """Write the sound as a wave file."""
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes((mix * 32767).astype(np.int16).tobytes())


def write_subtitles(path: Path, cues: list[Cue]) -> None:
    """Write the cues as SRT."""
    blocks = [
        f"{number}\n{_stamp(cue.start)} --> {_stamp(cue.end)}\n{cue.line.words}\n" for number, cue in enumerate(cues, 1)
    ]
    path.write_text("\n".join(blocks), encoding="utf-8")


def _stamp(seconds: float) -> str:
    ms = round(seconds * 1000)
    return f"{ms // 3600000:02d}:{ms // 60000 % 60:02d}:{ms // 1000 % 60:02d},{ms % 1000:03d}"
