"""Makes the recordings and the papers beside them from the drawn frames.

    python finish.py FRAMES OUT

Frames that are missing are bridged by their neighbours; every shot needs at least one.
"""

import argparse
import json
from pathlib import Path

import cv2
import numpy as np
from film import FPS, write_film
from papers import StepSpan, contact_sheet, finished_windows, practice_log, recording_truth, rough_list, step_spans
from sound import SEED, crowded, record, write_subtitles, write_wave
from timeline import RECORDINGS, Cue, Placed, place

ABOUT = (
    "Known truth of the drawn demo recordings. Times are seconds from the start of the recording; boxes are fractions "
    "of the picture (left, top, right, bottom). A finished window shows the finished state of its step with nothing "
    "moving and nothing in the way."
)


def picture_at(film: Path, seconds: float) -> np.ndarray:
    """One picture of a film."""
    reader = cv2.VideoCapture(str(film))
    reader.set(cv2.CAP_PROP_POS_FRAMES, round(seconds * FPS))
    found, picture = reader.read()
    reader.release()
    if not found:
        raise ValueError(f"{film}: no picture at {seconds} s")
    return picture


def best_moment(span: StepSpan) -> float:
    """The middle of the finished window, or of the step."""
    windows = finished_windows(span.takes[-1])
    start, end = windows[-1] if windows else (span.takes[-1].start, span.end)
    return (start + end) / 2


def make(frames: Path, out: Path, papers_only: bool) -> None:
    """Write everything into the output folder."""
    for folder in ("recordings", "narration"):
        (out / folder).mkdir(parents=True, exist_ok=True)
    known: dict[str, object] = {}
    spans: list[StepSpan] = []
    talk: list[tuple[str, float]] = []
    for name, takes in RECORDINGS.items():
        placed = place(takes, frames)
        cues = make_recording(name, placed, frames, out, papers_only)
        own = step_spans(name, placed)
        known[name] = recording_truth(name, placed, cues, own)
        spans += own
        talk += [(name, item.start) for item in placed if not item.take.step and not item.take.events]
    truth = json.dumps({"about": ABOUT, "recordings": known}, indent=1)
    (out / "truth.json").write_text(truth + "\n", encoding="utf-8")
    (out / "rough-list.txt").write_text(rough_list(spans, talk), encoding="utf-8")
    (out / "times.csv").write_text(practice_log(SEED), encoding="utf-8")
    write_contact_sheet(spans, out)


def make_recording(name: str, placed: list[Placed], frames: Path, out: Path, papers_only: bool) -> list[Cue]:
    """Write sound, subtitles and film of one recording; gives its cues."""
    mix, cues = record(placed, np.random.default_rng(SEED))
    for trouble in crowded(placed, cues):
        print(trouble)
    write_subtitles(out / "narration" / f"hub-{name}.srt", cues)
    if not papers_only:
        write_wave(frames / f"{name}.wav", mix)
        write_film(placed, frames, frames / f"{name}.wav", out / "recordings" / f"hub-{name}.mp4")
    return cues


def write_contact_sheet(spans: list[StepSpan], out: Path) -> None:
    """A picture of each step's finished state."""
    shown = []
    for span in spans:
        film = out / "recordings" / f"hub-{span.recording}.mp4"
        shown.append((span.step.name, picture_at(film, best_moment(span))))
    cv2.imwrite(str(out / "contact.jpg"), contact_sheet(shown), [cv2.IMWRITE_JPEG_QUALITY, 82])


def main() -> None:
    """Read the command line and make everything."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("frames", type=Path, help="folder of the drawn frames")
    parser.add_argument("out", type=Path, help="folder for the demo")
    parser.add_argument("--papers-only", action="store_true", help="keep the films, write the rest anew")
    given = parser.parse_args()
    make(given.frames, given.out, given.papers_only)


if __name__ == "__main__":
    main()
