"""What lies beside the recordings: the rough step list, the truth, the practice log and the contact sheet."""

import csv
import io
import math
from dataclasses import dataclass

import cv2
import numpy as np
from film import DRAWN_HEIGHT, DRAWN_WIDTH, FPS, HEIGHT, WIDTH
from story import Event, Step, Window
from timeline import Cue, Placed, clock

SHORTEST_WINDOW = 0.3
MARGIN = 0.025
"""How far shake and zoom can carry a box, as a fraction."""

RUNS = (
    ("KL", "2026-03-04", 1.0, ()),
    ("KL", "2026-05-19", 0.9, ("recheck",)),
    ("TM", "2026-06-11", 1.6, ("compare",)),
    ("TM", "2026-09-02", 1.3, ()),
)
"""Practice runs: who, when, how slow against the first, which steps were not timed."""

MINUTES = {
    "chock": 2,
    "slacken-nuts": 2,
    "raise": 3,
    "stand": 2,
    "wheel-off": 2,
    "dust-cap": 3,
    "split-pin": 2,
    "nut-slack": 1,
    "castle-nut": 1,
    "washer": 0.5,
    "outer-bearing": 0.5,
    "hub": 1,
    "seal": 3,
    "inner-bearing": 0.5,
    "cups": 8,
    "inspect": 6,
    "stub": 5,
    "compare": 3,
    "new-cups": 9,
    "pack": 6,
    "inner-in": 1,
    "new-seal": 3,
    "hub-on": 1,
    "outer-in": 1,
    "washer-in": 0.5,
    "seat": 4,
    "back-off": 5,
    "new-pin": 3,
    "cap-on": 2,
    "wheel-on": 1,
    "nip-up": 2,
    "spin-rock": 2,
    "lower": 2,
    "torque": 3,
    "chocks-out": 1,
    "recheck": 4,
}


@dataclass(frozen=True)
class StepSpan:
    """A step with the takes that show it."""

    step: Step
    recording: str
    takes: tuple[Placed, ...]

    @property
    def start(self) -> float:
        return self.takes[0].start

    @property
    def end(self) -> float:
        return self.takes[-1].end


def step_spans(recording: str, placed: list[Placed]) -> list[StepSpan]:
    """Cut a recording into its steps; talk between steps belongs to none."""
    groups: list[list[Placed]] = []
    for item in placed:
        if item.take.step:
            groups.append([item])
        elif groups and item.take.events:
            groups[-1].append(item)
    return [StepSpan(group[0].take.step, recording, tuple(group)) for group in groups if group[0].take.step]


def finished_windows(item: Placed) -> list[Window]:
    """When a take shows its finished state: nothing moves and nothing is in the way."""
    if item.take.finished:
        return [(start + item.start, end + item.start) for start, end in item.take.finished]
    tick = min(len(item.order) - 1, round(max(item.keys) * item.rate))
    first = last = tick
    while first > 0 and item.order[first - 1] == item.order[tick]:
        first -= 1
    while last < len(item.order) - 1 and item.order[last + 1] == item.order[tick]:
        last += 1
    begin, end = first / item.rate, min(item.seconds, (last + 1) / item.rate)
    for start, until in item.take.covered:
        if start < end and until > begin:
            begin, end = (max(begin, until), end) if until < end else (begin, min(end, start))
    return [(begin + item.start, end + item.start)] if end - begin >= SHORTEST_WINDOW else []


def rough_list(spans: list[StepSpan], talk: list[tuple[str, float]]) -> str:
    """The step list as jotted down; talk closes the step before it."""
    lines = [(span.recording, span.start, span.step.jotted) for span in spans if span.step.jotted]
    lines += [(recording, start, "-") for recording, start in talk]
    order = {"strip": 0, "refit": 1}
    lines.sort(key=lambda line: (order[line[0]], line[1]))
    return "".join(f"hub-{recording} {clock(start)} {words}\n" for recording, start, words in lines)


def recording_truth(recording: str, placed: list[Placed], cues: list[Cue], spans: list[StepSpan]) -> dict[str, object]:
    """All that is known of one recording."""
    return {
        "file": f"recordings/hub-{recording}.mp4",
        "seconds": round(placed[-1].end, 3),
        "width": WIDTH,
        "height": HEIGHT,
        "fps": FPS,
        "takes": [
            {"shot": item.take.shot, "start": round(item.start, 3), "end": round(item.end, 3)} for item in placed
        ],
        "steps": [_step_truth(span) for span in spans],
        "events": [_event(item, event) for item in placed for event in item.take.events],
        "habits": [
            {
                "kind": habit.kind,
                "start": round(item.start + habit.at, 3),
                "end": round(item.start + habit.until, 3),
                "note": habit.note,
            }
            for item in placed
            for habit in item.take.habits
        ],
        "private": [_private(item, what, box) for item in placed for what, box in item.private.items()],
        "narration": [{"start": round(cue.start, 3), "end": round(cue.end, 3), "text": cue.line.words} for cue in cues],
    }


def _step_truth(span: StepSpan) -> dict[str, object]:
    windows = finished_windows(span.takes[-1])
    return {
        "id": span.step.name,
        "command": span.step.command,
        "start": round(span.start, 3),
        "end": round(span.end, 3),
        "finished": [_moved(window, 0) for window in windows],
        "finished frames": [[math.ceil(start * FPS), math.floor(end * FPS) - 1] for start, end in windows],
        "covered": [_moved(window, item.start) for item in span.takes for window in item.take.covered],
        "in rough list": bool(span.step.jotted),
    }


def _moved(window: Window, start: float) -> list[float]:
    return [round(window[0] + start, 3), round(window[1] + start, 3)]


def _event(item: Placed, event: Event) -> dict[str, object]:
    facts = {"time": round(item.start + event.at, 3), "what": event.what, "opens": event.opens, "closes": event.closes}
    return {name: value for name, value in facts.items() if value != ""}


def _private(item: Placed, what: str, box: list[float]) -> dict[str, object]:
    """A box in the film: the drawn frame is a little larger, and the camera shakes."""
    wide, high = DRAWN_WIDTH / WIDTH, DRAWN_HEIGHT / HEIGHT
    margin = MARGIN + item.take.zoom / 2
    x = [(box[0] - 0.5) * wide + 0.5 - margin, (box[2] - 0.5) * wide + 0.5 + margin]
    y = [(box[1] - 0.5) * high + 0.5 - margin, (box[3] - 0.5) * high + 0.5 + margin]
    area = [round(min(1.0, max(0.0, v)), 3) for v in (x[0], y[0], x[1], y[1])]
    return {"what": what, "start": round(item.start, 3), "end": round(item.end, 3), "box": area}


def practice_log(seed: int) -> str:
    """Invented practice runs as CSV."""
    chance, text = np.random.default_rng(seed), io.StringIO()
    rows = csv.writer(text, lineterminator="\n")
    rows.writerow(("who", "when", "step", "minutes"))
    for who, day, pace, untimed in RUNS:
        for step, minutes in MINUTES.items():
            if step not in untimed:
                taken = max(0.5, round(2 * minutes * pace * chance.uniform(0.85, 1.25)) / 2)
                rows.writerow((who, day, step, f"{taken:g}"))
    return text.getvalue()


def contact_sheet(pictures: list[tuple[str, np.ndarray]], columns: int = 5) -> np.ndarray:
    """A sheet of small pictures with their names."""
    tiles = []
    for name, picture in pictures:
        tile = cv2.resize(picture, (384, 216), interpolation=cv2.INTER_AREA)
        tile = cv2.copyMakeBorder(tile, 0, 22, 2, 2, cv2.BORDER_CONSTANT, value=(255, 255, 255))
        tiles.append(cv2.putText(tile, name, (6, 232), cv2.FONT_HERSHEY_SIMPLEX, 0.42, (0, 0, 0), 1, cv2.LINE_AA))
    while len(tiles) % columns:
        tiles.append(np.full_like(tiles[0], 255))
    return np.vstack([np.hstack(tiles[i : i + columns]) for i in range(0, len(tiles), columns)])
