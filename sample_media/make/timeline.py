"""Where each take lies in its recording."""

import json
from dataclasses import dataclass
from pathlib import Path

from story import Line, Take
from story_refit import REFIT_TAKES
from story_strip import STRIP_TAKES

RECORDINGS = {"strip": STRIP_TAKES, "refit": REFIT_TAKES}


@dataclass(frozen=True)
class Placed:
    """A take at its place in the recording, with the frames that show it."""

    take: Take
    start: float
    seconds: float
    rate: float
    """Drawn frames per second."""
    order: tuple[int, ...]
    """For every drawn tick the number of the frame that shows it."""
    keys: tuple[float, ...]
    """Moments of the take that show a finished state."""
    private: dict[str, list[float]]
    """What has to be hidden, as boxes in the drawn frame."""

    @property
    def end(self) -> float:
        """When the next take begins."""
        return self.start + self.seconds


@dataclass(frozen=True)
class Cue:
    """A spoken line with the times of its sound."""

    start: float
    end: float
    line: Line


def place(takes: tuple[Take, ...], frames: Path) -> list[Placed]:
    """Put the takes one after the other."""
    placed, start = [], 0.0
    for take in takes:
        plan = json.loads((frames / take.shot / "sequence.json").read_text(encoding="utf-8"))
        placed.append(
            Placed(
                take, start, plan["seconds"], plan["rate"], tuple(plan["order"]), tuple(plan["keys"]), plan["private"]
            )
        )
        start += plan["seconds"]
    return placed


def clock(seconds: float) -> str:
    """Minutes and seconds as a technician jots them down."""
    return f"{int(seconds) // 60}:{int(seconds) % 60:02d}"
