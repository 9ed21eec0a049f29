"""The rough list of the demo, as jotted down beside the recordings: what its author forgot is asked for."""

import json
import shutil
from pathlib import Path

import pytest

from procbuilder.model.problem import Problem
from procbuilder.pipeline.check import check
from procbuilder.pipeline.new import new
from procbuilder.pipeline.progress import silent
from procbuilder.publish.wording.problems import said
from tests.conftest import ROOT

HUB = ROOT / "sample_media" / "hub"


@pytest.fixture(scope="module")
def forgotten() -> list[str]:
    """Ids of the steps that are filmed and not in the list, as the truth of the demo tells."""
    truth = json.loads((HUB / "truth.json").read_text(encoding="utf-8"))
    steps = [step for recording in truth["recordings"].values() for step in recording["steps"]]
    return [step["command"] for step in steps if not step["in rough list"]]


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> tuple[Problem, ...]:
    folder = tmp_path_factory.mktemp("rough") / "hub"
    films = [HUB / "recordings" / f"hub-{name}.mp4" for name in ("strip", "refit")]
    new(folder, films, HUB / "rough-list.txt", [], silent)
    shutil.rmtree(folder / ".procbuilder", ignore_errors=True)
    return tuple(problem for problem in check(folder).problems if problem.rule == "forgotten-by-its-words")


def test_exactly_what_the_author_forgot_is_asked_for(forgotten: list[str], asked: tuple[Problem, ...]) -> None:
    assert forgotten == ["Fit a new split pin"]
    assert [said(problem).what for problem in asked] == [
        'split pin comes off at hub-strip 1:05 (step 7) by the words "Split pin out", and no later step speaks of it'
    ]
    assert said(asked[0]).instead.startswith('add the step that puts it back, a new one: "- On: split pin, new"')


def test_with_the_forgotten_line_nothing_is_asked(tmp_path: Path) -> None:
    films = [HUB / "recordings" / f"hub-{name}.mp4" for name in ("strip", "refit")]
    text = (HUB / "rough-list.txt").read_text(encoding="utf-8")
    whole = tmp_path / "list.txt"
    whole.write_text(
        text.replace("hub-refit 1:22", "hub-refit 1:13 new split pin in\nhub-refit 1:22"), encoding="utf-8"
    )
    new(tmp_path / "hub", films, whole, [], silent)
    assert [p for p in check(tmp_path / "hub").problems if p.rule == "forgotten-by-its-words"] == []


def test_a_narration_fills_the_steps_of_the_list(tmp_path: Path) -> None:
    """The commands are those of the list; what was said stands below, and each sentence is in ``heard.txt``."""
    srt = tmp_path / "strip.srt"
    srt.write_text("1\n00:00:10,000 --> 00:00:12,000\nCareful, the edge is sharp.\n", encoding="utf-8")
    films = [HUB / "recordings" / f"hub-{name}.mp4" for name in ("strip", "refit")]
    made = {}
    for name, narration in (("plain", []), ("told", [srt])):
        new(tmp_path / name, films, HUB / "rough-list.txt", narration, silent)
        made[name] = (tmp_path / name / "procedure.md").read_text(encoding="utf-8")
    headings = {name: [line for line in text.splitlines() if line.startswith("###")] for name, text in made.items()}
    assert headings["told"] == headings["plain"] != []
    assert "Careful, the edge is sharp (said hub-strip 0:10)" in made["told"]
    assert "edge is sharp" in (tmp_path / "told" / "narration" / "heard.txt").read_text(encoding="utf-8")
