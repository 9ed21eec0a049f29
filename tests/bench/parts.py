"""One run of procbuilder, told apart: processor seconds and decoded pictures of each of its parts.

    python -m tests.bench.parts REPORT [--without-clips] build DIR …

REPORT becomes a JSON file: of each part its seconds, the pictures that it decoded, and those of them that one call
of it decoded a second time.
"""

import importlib
import json
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import asdict, dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from av.video.frame import VideoFrame

from tests.bench.cost import Cost, cost

PARTS = {
    "keep.cache.sha256_of": "hash",
    "media.probe.probe": "packets",
    "media.voice.listen": "sound",
    "media.stillness.look": "key frames",
    "media.cuts.cuts_within": "cuts",
    "media.thorough.look_through": "every picture",
    "media.snap.snapped": "ends",
    "media.keyframe.finished": "choice",
    "media.keyframe.as_found": "choice",
    "media.stills.still": "stills",
    "media.clips.cut": "clips",
}
"""The functions that open recordings, each called by its module and name, and the part that it is counted to."""
GROWING = ("hash", "packets", "sound", "key frames")
"""Parts that take longer for a longer recording, whatever its steps are."""


@dataclass(slots=True)
class Part:
    """What a part has cost so far."""

    seconds: float = 0.0
    pictures: int = 0
    again: int = 0
    """Pictures that were decoded more than once within one call."""


@dataclass(slots=True)
class Meter:
    """Counts for the part that is at work."""

    parts: dict[str, Part] = field(default_factory=lambda: {name: Part() for name in PARTS.values()})
    _seen: Counter[int] = field(default_factory=Counter)

    def measured(self, name: str, work: Callable[..., Any]) -> Callable[..., Any]:
        """The same function, counted to a part."""

        def call(*given: Any, **named: Any) -> Any:
            self._seen.clear()
            begin = time.process_time()
            try:
                return work(*given, **named)
            finally:
                part = self.parts[name]
                part.seconds += time.process_time() - begin
                part.pictures += self._seen.total()
                part.again += self._seen.total() - len(self._seen)

        return call

    def counted(self, frames: Iterable[VideoFrame]) -> None:
        """Notes decoded pictures."""
        self._seen.update(frame.pts or 0 for frame in frames)


def told_apart(folder: Path, *options: str, clips: bool = True) -> tuple[Cost, dict[str, Part]]:
    """Build a procedure in a process of its own; what it costs, and what its parts do."""
    with TemporaryDirectory() as name:
        report = Path(name) / "parts.json"
        before = [] if clips else ["--without-clips"]
        command = [sys.executable, "-m", "tests.bench.parts", str(report), *before, "build", str(folder), *options]
        run = cost(command, exit_codes=(0, 1))
        parts = json.loads(report.read_text(encoding="utf-8"))
    return run, {name: Part(**part) for name, part in parts.items()}


def run(report: Path, arguments: list[str]) -> None:
    """Runs procbuilder with these arguments and writes the report, however it ends."""
    meter = Meter()
    _attach(meter)
    sys.argv = ["procbuilder", *arguments]
    try:
        importlib.import_module("procbuilder.cli").main()
    finally:
        report.write_text(json.dumps({name: asdict(part) for name, part in meter.parts.items()}), encoding="utf-8")


def _attach(meter: Meter) -> None:
    for place, part in PARTS.items():
        module, name = _found(place)
        setattr(module, name, meter.measured(part, getattr(module, name)))
    decode: Any = importlib.import_module("procbuilder.media.decode")
    stillness: Any = importlib.import_module("procbuilder.media.stillness")
    sample: Any = importlib.import_module("procbuilder.media.sample")
    plain, sampled = decode.pictures_of, sample._pictures

    def pictures_of(packet: Any) -> list[VideoFrame]:
        frames: list[VideoFrame] = plain(packet)
        meter.counted(frames)
        return frames

    def pictures(*given: Any) -> Iterator[Any]:
        for time_of, frame in sampled(*given):
            meter.counted([frame])
            yield time_of, frame

    decode.pictures_of = stillness.pictures_of = pictures_of
    sample._pictures = pictures


def _found(place: str) -> tuple[Any, str]:
    module, _, name = place.rpartition(".")
    return importlib.import_module(f"procbuilder.{module}"), name


def main() -> None:
    """As told at the top."""
    report, *arguments = sys.argv[1:]
    if arguments[0] == "--without-clips":
        arguments.pop(0)
        clips: Any = importlib.import_module("procbuilder.pipeline.clips")
        clips.cut = lambda *_: clips.Clips({}, ())
    run(Path(report), arguments)


if __name__ == "__main__":
    main()
