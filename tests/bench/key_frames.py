"""How often the picture chosen for a step is a good one, on made step windows with known truth.

    python -m tests.bench.key_frames FOLDER [--half tuning|unseen|fresh|judge] [--thorough]

FOLDER keeps the windows for the next run (about 400 MB; drawing them takes ten minutes on two cores). Good means that
the step is finished, the hand is gone or holds up what it has taken off, and the picture is sharp, well lit and of the
work. Limits have been chosen by looking at ``tuning``, at ``unseen`` with other grounds, at ``fresh`` with only the
hard ways of having no good picture, and at more windows on these grounds. ``judge`` has grounds and seeds of its own,
and is run once for a set of limits: whoever chooses by what it shows makes another one. The windows are made up: a bar
against getting worse, not proof on real work.
"""

import argparse
import json
import sys
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import av
from av.filter import Graph
from rich.console import Console
from rich.table import Table

from procbuilder.media.keyframe import finished
from procbuilder.media.probe import probe
from procbuilder.media.thorough import look_through
from procbuilder.model.footage import Choice
from procbuilder.model.timecode import Span
from tests.bench.made_scenes import grounds, missing
from tests.bench.made_steps import ENDINGS, NONE, RATE, SHOWN, make

_GROUNDS = {"tuning": "tuning", "unseen": "unseen", "fresh": "unseen", "judge": "judge"}
_SEEDS = {"tuning": 1_000, "unseen": 90_000, "fresh": 1_700_000, "judge": 7_300_000}
HALVES = tuple(_SEEDS)
HARD = NONE[:3]
"""Hands and blur; dark, burnt out and shaking are always told."""
GOOD = (*ENDINGS, SHOWN)
GOAL_GOOD, GOAL_SAID, GOAL_FALSE = 0.92, 0.80, 0.05


@dataclass(frozen=True, slots=True)
class Window:
    """A recording of one step, and whether each of its pictures is good."""

    path: Path
    kind: str
    good: list[bool]

    @property
    def span(self) -> Span:
        """All of it."""
        return Span("made", Fraction(0), Fraction(len(self.good), RATE))


@dataclass(frozen=True, slots=True)
class Outcome:
    """What was chosen in one window."""

    window: Window
    time: Fraction
    weak: tuple[str, ...]
    reason: str

    @property
    def good(self) -> bool:
        """Whether the picture on show at that time is a good one."""
        return self.window.good[min(int(self.time * RATE), len(self.window.good) - 1)]


def windows(folder: Path, half: str) -> list[Window]:
    """The windows of one half, drawn where they are missing."""
    folder.mkdir(parents=True, exist_ok=True)
    ground = list(grounds(_GROUNDS[half]).values())
    kinds = _kinds(half)
    with ProcessPoolExecutor(2) as pool:
        jobs = [
            pool.submit(_window, ground[number % len(ground)], _SEEDS[half] + number, kind, folder / f"{half}-{number}")
            for number, kind in enumerate(kinds)
        ]
        return [job.result() for job in jobs]


def _kinds(half: str) -> list[str]:
    """Windows of every ending, of every way of having no good picture, and of parts that are held up."""
    if half == "fresh":
        counts = {**dict.fromkeys(ENDINGS, 12), **dict.fromkeys(HARD, 20), SHOWN: 16}
    elif half == "judge":
        counts = {**dict.fromkeys(ENDINGS, 24), **dict.fromkeys(HARD, 20), **dict.fromkeys(NONE[3:], 4), SHOWN: 24}
    else:
        counts = {**dict.fromkeys(ENDINGS, 32), **dict.fromkeys(NONE, 4), SHOWN: 16}
    return [kind for kind, count in counts.items() for _ in range(count)]


def _window(ground: object, seed: int, kind: str, path: Path) -> Window:
    film, truth = path.with_suffix(".mp4"), path.with_suffix(".json")
    if not truth.is_file():
        script = make(ground, seed, kind, film)  # type: ignore[arg-type]  # an image, passed on as it is
        truth.write_text(json.dumps({"kind": kind, "good": script.good}))
    data = json.loads(truth.read_text())
    return Window(film, data["kind"], data["good"])


def ours(window: Window, *, thorough: bool = False) -> Outcome:
    """What the program chooses."""
    choice = _among_all(window) if thorough else finished(window.path, window.span)
    return Outcome(window, choice.time, choice.weak, choice.reason.why)


def _among_all(window: Window) -> Choice:
    film = probe(window.path, name="", shown="", sha256="").film
    return look_through(window.path, film, window.span, window.span, ()).choice


def at_share(share: Fraction) -> Callable[[Window], Outcome]:
    """The picture at a share of the window."""
    return lambda window: Outcome(window, window.span.end * share, (), "")


def thumbnail(window: Window) -> Outcome:
    """What the filter ``thumbnail`` of FFmpeg picks of the whole window."""
    with av.open(window.path) as container:
        stream = container.streams.video[0]
        graph = Graph()
        source = graph.add_buffer(template=stream)
        picking, sink = graph.add("thumbnail", f"n={len(window.good)}"), graph.add("buffersink")
        source.link_to(picking)
        picking.link_to(sink)
        graph.configure()
        for frame in container.decode(stream):
            graph.push(frame)
        graph.push(None)
        picked = graph.pull()
    assert isinstance(picked, av.VideoFrame)
    assert picked.pts is not None
    assert picked.time_base is not None
    return Outcome(window, picked.pts * picked.time_base, (), "")


def rows(outcomes: list[Outcome]) -> Iterator[tuple[str, float, int]]:
    """Shares: good ones of each ending, weak said where none is good, weak said where some are."""
    some = [outcome for outcome in outcomes if outcome.window.kind in GOOD]
    none = [outcome for outcome in outcomes if outcome.window.kind in NONE]
    yield "good", _share(outcome.good for outcome in some), len(some)
    for kind in GOOD:
        part = [outcome.good for outcome in some if outcome.window.kind == kind]
        yield f"  good, {kind}", _share(part), len(part)
    yield "none is good, said", _share(bool(outcome.weak) for outcome in none), len(none)
    for kind in NONE:
        told = [bool(outcome.weak) for outcome in none if outcome.window.kind == kind]
        if told:
            yield f"  said, {kind}", _share(told), len(told)
    yield "some are good, called weak", _share(bool(outcome.weak) for outcome in some), len(some)


def _share(values: "Iterator[bool] | list[bool]") -> float:
    every = list(values)
    return sum(every) / max(len(every), 1)


def main() -> None:
    """Measure and print; exit 1 when the goals are missed."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--half", choices=HALVES, default="unseen")
    parser.add_argument("--thorough", action="store_true")
    request = parser.parse_args()
    if lacking := missing(_GROUNDS[request.half]):
        sys.exit(f"skipped: the figures hold for all grounds only, and these are not here: {', '.join(lacking)}")
    made = windows(request.folder, request.half)
    chosen = [ours(window, thorough=request.thorough) for window in made]
    others = {"middle": at_share(Fraction(1, 2)), "at 80 %": at_share(Fraction(4, 5)), "thumbnail": thumbnail}
    beside = {name: [choosing(window) for window in made] for name, choosing in others.items()}
    found = list(rows(chosen))
    _print(found, {name: list(rows(outcomes)) for name, outcomes in beside.items()})
    values = {name: value for name, value, _ in found}
    sys.exit(
        values["good"] < GOAL_GOOD
        or values["none is good, said"] < GOAL_SAID
        or values["some are good, called weak"] > GOAL_FALSE
    )


def _print(found: list[tuple[str, float, int]], beside: dict[str, list[tuple[str, float, int]]]) -> None:
    table = Table("share", "windows", "ours", *beside)
    for number, (name, value, count) in enumerate(found):
        other = [f"{lines[number][1]:.2f}" if "good" in name[:6] else "" for lines in beside.values()]
        table.add_row(name, str(count), f"{value:.2f}", *other)
    Console().print(table)


if __name__ == "__main__":
    main()
