"""Real step lists, read as written.

Source: HiREST (``j-min/HiREST`` at deffc169, MIT), ``data/splits/all_data_val.json``: people's own headings and whole
seconds for how-to videos. The file lies in the shared data folder beside the repository.
"""

import json
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.model.origin import Place
from procbuilder.model.procedure import NamedFile
from procbuilder.model.timecode import format_time
from procbuilder.pipeline.new import new
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.wording.drafts import draft_texts
from procbuilder.publish.wording.problems import line
from procbuilder.read.compose import compose
from procbuilder.read.procedure import read_procedure, read_text
from procbuilder.read.steplist import read_step_list
from procbuilder.read.text import TextFile
from tests.pipeline.conftest import film

TEXTS = draft_texts(ENGLISH)
DATA = Path(__file__).parents[3] / "shared" / "data" / "hirest_val.json"
HERE = Place("procedure.md", 1)

pytestmark = pytest.mark.skipif(not DATA.is_file(), reason="the shared data folder is not beside the repository")

Step = tuple[int, int, str]


def videos() -> Iterator[list[Step]]:
    """Start, end and words of the steps of each video that has some."""
    for task in json.loads(DATA.read_text(encoding="utf-8")).values():
        for video in task.values():
            steps = [(*entry["absolute_bounds"], " ".join(entry["heading"].split())) for entry in video["steps"]]
            if steps:
                yield steps


def written(steps: list[Step]) -> str:
    """The list as a technician would type it."""
    return "".join(
        f"{format_time(Fraction(start))}-{format_time(Fraction(end))} {text}\n" for start, end, text in steps
    )


def test_every_list_is_read_as_written_and_odd_steps_are_told() -> None:
    count, odd = 0, 0
    for steps in videos():
        read, problems = read_step_list(TextFile("list.txt", written(steps)))
        assert [(step.start, step.end, step.text) for step in read] == steps
        assert [line(problem) for problem in problems] == [
            f"list.txt:{line}: {text}: the step has no length – correct its start or its end"
            for line, (start, end, text) in enumerate(steps, 1)
            if start == end
        ]
        count, odd = count + len(read), odd + len(problems)
    assert (count, odd) == (606, 3)


def test_every_list_comes_through_the_new_procedure() -> None:
    """Written into a new file and read from it: the same spans, the same words with a capital and no full stop."""
    count = 0
    for steps in videos():
        read, _ = read_step_list(TextFile("list.txt", written(steps)))
        films = [NamedFile("strip", "recordings/strip.mp4", HERE)]
        procedure, problems = read_text(compose("Job", read, TEXTS, recordings=films, durations={}))
        assert problems == ()
        assert [(step.spans[0].start, step.spans[0].end, step.command) for step in procedure.steps] == [
            (start, end, (text[:1].upper() + text[1:]).rstrip(".")) for start, end, text in steps
        ]
        assert len({step.id for step in procedure.steps}) == len(steps)
        count += len(procedure.steps)
    assert count == 606


def test_a_whole_video_through_the_command(tmp_path: Path) -> None:
    """The longest list, by the same function as ``procbuilder new``."""
    steps = max(videos(), key=len)
    (tmp_path / "list.txt").write_text(written(steps), encoding="utf-8")
    made = new(tmp_path / "job", [film(tmp_path / "strip.mp4", seconds=1)], tmp_path / "list.txt", [], lambda *_: None)
    procedure, problems = read_procedure(made.folder)
    assert (made.steps, made.problems, problems) == (len(steps), (), ())
    assert [str(step.spans[0]) for step in procedure.steps] == [
        f"strip {format_time(Fraction(start))}-{format_time(Fraction(end))}" for start, end, _ in steps
    ]
