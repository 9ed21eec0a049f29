"""The library that comes with procbuilder, copied and built."""

import json
import shutil
from pathlib import Path

import pytest

from procbuilder.model.fault import AlreadyThere
from procbuilder.model.footage import Why
from procbuilder.model.problem import Severity
from procbuilder.pipeline.build import Built
from procbuilder.pipeline.demo import demo
from procbuilder.pipeline.library import procedures
from procbuilder.pipeline.progress import silent
from procbuilder.publish.wording.problems import said
from procbuilder.read.procedure import read_procedure
from tests.conftest import DemoRun


@pytest.fixture(scope="module")
def built(demo_run: DemoRun) -> tuple[Built, ...]:
    return demo(demo_run.folder, silent)


@pytest.fixture(scope="module")
def drill(built: tuple[Built, ...]) -> Built:
    return built[1]


def test_the_installed_wheel_runs_the_demo_outside_the_clone(demo_run: DemoRun) -> None:
    """With the libraries of this environment, but the program from the wheel alone."""
    assert (demo_run.code, demo_run.messages) == (0, "")
    assert demo_run.told[0] == f"{demo_run.program}/procbuilder/__init__.py"
    for name in ("hub", "drill"):
        assert (demo_run.folder / name / "out" / "index.html").is_file()
        assert (demo_run.folder / name / "out" / "procedure.pdf").is_file()


def test_demo_tells_of_the_hub_and_says_where_both_pages_are(demo_run: DemoRun) -> None:
    folder, lines = demo_run.folder, demo_run.told[1:]
    assert lines[:6] == [
        "Trailer wheel hub – renew the bearings and the seal (demo: drawn, values for show)",
        "  Single-axle trailer, unbraked, 750 kg (demo: the recordings are drawn, all values are for show)",
        "  Still dangerous at steps 3 to 33: DANGER: the trailer can fall off the jack or the stand",
        "  Torque: castle nut, step 26: left blank, see D1, section 3",
        "  Torque: castle nut, step 27: left blank, see D1, section 3",
        "  Torque: wheel nuts, step 34: left blank, see D1, section 4",
    ]
    assert [line for line in lines if line.startswith(("Page:", "PDF:"))] == [
        f"Page: {folder}/hub/out/index.html",
        f"PDF:  {folder}/hub/out/procedure.pdf",
        f"Page: {folder}/drill/out/index.html",
        f"PDF:  {folder}/drill/out/procedure.pdf",
    ]
    assert lines[-5:-2] == [
        "Pillar drill – renew the drive belt (demo: drawn, values for show)",
        "recordings/belt.mp4: no sound, so nothing tells whether it runs at the speed of the work",
        "Status: review; 4 ask",
    ]


def test_the_demo_is_a_library_of_two(built: tuple[Built, ...]) -> None:
    library = built[0].folder.parent
    assert [one.folder.name for one in built] == ["hub", "drill"]
    assert procedures(library) == (library / "drill", library / "hub")
    assert sorted(path.name for path in library.iterdir()) == ["drill", "hub", "workshop.toml"]
    assert [one.page.is_file() and one.print is not None for one in built] == [True, True]


def test_every_page_says_that_the_demo_is_drawn(built: tuple[Built, ...]) -> None:
    for one in built:
        assert one.edition.title.endswith("(demo: drawn, values for show)")


def test_the_drill_is_in_review_with_the_questions_left_open_on_purpose(drill: Built) -> None:
    assert drill.edition.status == "review"
    assert [(problem.severity, said(problem).what) for problem in drill.problems] == [
        (Severity.ASK, 'Caution "the cover can fall shut" does not say how to avoid it'),
        (Severity.ASK, 'the torque of 2 x motor lock screw is only words: "good and tight"'),
        (Severity.ASK, 'earth strap of the cover goes on in step 12, but no "- Off:" says so before'),
        (Severity.ASK, "no supply is listed"),
    ]


def test_the_danger_of_the_pulleys_and_the_tag_on_the_plug_last_until_the_cover_is_closed(drill: Built) -> None:
    steps = [step for section in drill.edition.sections for step in section.steps]
    assert [step.number for step in steps if step.standing.hazards] == list(range(3, 13))
    assert [
        step.number for step in steps if [item.words for item in step.standing.protections] == ["tag on the plug"]
    ] == list(range(2, 13))


def test_every_picture_of_the_drill_is_used(drill: Built) -> None:
    procedure, _ = read_procedure(drill.folder)
    used = [picture.file for step in procedure.steps for picture in step.pictures]
    there = [f"pictures/{path.name}" for path in (drill.folder / "pictures").iterdir()]
    assert sorted(used) == sorted(there)


def test_the_clip_of_the_drill_is_used_up(drill: Built) -> None:
    film = drill.edition.recordings[0]
    clips = [step.clip for section in drill.edition.sections for step in section.steps if step.clip]
    assert len(clips) == 3
    assert film.duration == 10
    assert sum(clip.seconds for clip in clips) == pytest.approx(9.4, abs=0.1)
    assert not any(clip.sound for clip in clips)


def test_a_demo_that_is_there_is_built_as_it_is(demo_run: DemoRun, tmp_path: Path) -> None:
    folder = tmp_path / "demo"
    shutil.copytree(demo_run.folder, folder)
    text = folder / "drill" / "procedure.md"
    text.write_text(text.read_text(encoding="utf-8").replace("P-021", "P-022"), encoding="utf-8")
    assert demo(folder, silent)[1].edition.number == "P-022"


def test_the_demo_writes_over_nothing(tmp_path: Path) -> None:
    (tmp_path / "mine.txt").write_text("keep me", encoding="utf-8")
    with pytest.raises(AlreadyThere):
        demo(tmp_path, silent)
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]


def test_the_pictures_chosen_for_the_hub_show_the_finished_state(built: tuple[Built, ...]) -> None:
    """Against the truth that the drawing of the demo wrote."""
    truth = json.loads((built[0].folder / "truth.json").read_text())["recordings"]
    windows = [
        (name, begin, end)
        for name, film in truth.items()
        for step in film["steps"]
        for begin, end in step["finished"]
    ]  # fmt: skip
    missed, weak = [], []
    for section in built[0].edition.sections:
        for step in section.steps:
            for figure in step.figures:
                name, time = figure.still.recording, figure.still.time or 0
                chosen = figure.still.reason.why is Why.TYPED
                if not chosen and not any(w[0] == name and w[1] <= time <= w[2] for w in windows):
                    missed.append(step.id)
                weak += [step.id] if figure.still.weak else []
    assert (missed, weak) == ([], [])
