"""Open annotations of the same jobs done by many people: CaptainCook4D, MIT licence, not part of the project.

Rows are ``recording, step, start, end, words, errors`` with the recording as ``job_run``; a step that was not done
has −1 for its times. Nothing says who did a run, or when.
"""

import csv
from collections import defaultdict
from pathlib import Path
from statistics import fmean

FILE = Path(__file__).parents[3] / "shared" / "data" / "captaincook4d_steps_1_to_13.csv"
"""In the shared data folder beside the repository."""
CHOOSING = (1, 2, 3, 4, 5)
"""Jobs on which spreads are chosen (there is no job 6)."""
REPORTING = (7, 8, 9, 10, 12, 13)
"""Jobs that are only reported."""

Job = dict[str, dict[str, float]]
"""Runs of a job; of each run the minutes of its steps, a step done twice summed."""


def segments() -> list[tuple[int, str, str, float]]:
    """(job, run, step, seconds) of every step that was done."""
    with FILE.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    done = [row for row in rows if float(row["start_time"]) >= 0]
    return [
        (int(row["recording_id"].split("_")[0]), row["recording_id"], row["step_id"],
         float(row["end_time"]) - float(row["start_time"]))
        for row in done
    ]  # fmt: skip


def mean_seconds(job: int) -> float:
    """Mean length of the segments of a job."""
    return fmean(seconds for number, _, _, seconds in segments() if number == job)


def jobs() -> dict[int, Job]:
    """All jobs by number."""
    found: dict[int, Job] = defaultdict(lambda: defaultdict(lambda: defaultdict(float)))
    for job, run, step, seconds in segments():
        found[job][run][step] += seconds / 60
    return found
