"""Building: one screen from text and film to page, PDF and data."""

import hashlib
import json
import os
import re
import shutil
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import cv2
import numpy as np
import pytest

from procbuilder.media import clips, keyframe, probe, stills
from procbuilder.model.edition import Edition
from procbuilder.model.fault import NoProcedure
from procbuilder.pipeline.build import Options, build
from procbuilder.pipeline.clips import hold
from procbuilder.pipeline.library import procedures
from procbuilder.pipeline.outputs import TASK
from procbuilder.publish.speaker import spoken
from procbuilder.publish.wording.problems import line
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults
from tests.refused import refused

Make = Callable[[str], Path]


def told(problems: object) -> list[str]:
    return [line(problem) for problem in problems]  # type: ignore[attr-defined]


def hashes(out: Path) -> dict[str, str]:
    """SHA-256 of every published file by its path below the output folder."""
    files = (path for path in out.rglob("*") if path.is_file())
    return {path.relative_to(out).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


def test_a_whole_procedure_gives_every_output_and_no_problem(folder: Make) -> None:
    built = build(folder(WHOLE))
    assert told(built.problems) == []
    assert built.edition.status == "review"
    names = {path.name for path in (built.folder / "out").iterdir()}
    assert names == {
        "index.html", "phone.html", "quotation.html", "sheets.html", "procedure.pdf", "sheets.pdf", "edition.json",
        "manifest.json", "media",
    }  # fmt: skip
    assert built.page.is_file()
    assert built.print is not None
    assert built.print.read_bytes().startswith(b"%PDF-")


def test_a_dita_task_comes_when_asked_for_and_never_grows_old(folder: Make) -> None:
    made = folder(WHOLE)
    out = made / "out"
    build(made, options=Options(also=(TASK,)))
    assert f"<title>{build(made).edition.title}</title>" in (out / "procedure.dita").read_text(encoding="utf-8")
    source = (made / "procedure.md").read_text(encoding="utf-8")
    (made / "procedure.md").write_text(source.replace("\n# ", "\n# Changed: ", 1), encoding="utf-8")
    build(made)
    assert "<title>Changed: " in (out / "procedure.dita").read_text(encoding="utf-8")
    assert faults(out) == []


def test_the_task_has_the_signs_that_it_names_and_no_others(folder: Make) -> None:
    danger = "- Danger: the press can start | crushed hand | plug pulled\n"
    made = folder(WHOLE.replace("- Tool: ", f"{danger}- Tool: ", 1))
    build(made, options=Options(also=(TASK,)))
    text = (made / "out" / "procedure.dita").read_text(encoding="utf-8")
    assert set(re.findall(r"signs/(\w+\.svg)", text)) == {"W018.svg", "M006.svg"}
    assert {path.name for path in (made / "out" / "signs").iterdir()} == {"W018.svg", "M006.svg"}
    (made / "procedure.md").write_text(WHOLE, encoding="utf-8")
    build(made)
    assert list((made / "out" / "signs").iterdir()) == []


def test_steps_have_a_still_within_their_time_and_a_clip_of_their_length(folder: Make) -> None:
    first, second, unfilmed = build(folder(WHOLE)).edition.steps
    assert [figure.still.recording for figure in first.figures] == ["strip"]
    assert first.clip
    assert second.clip
    assert [float(first.clip.seconds), float(second.clip.seconds)] == pytest.approx([1.5, 1.5], abs=0.11)
    assert (unfilmed.figures, unfilmed.clip, unfilmed.basis) == ((), None, "typed")


def test_the_refit_step_shows_how_it_was_found(folder: Make) -> None:
    first, second, _ = build(folder(WHOLE)).edition.steps
    assert (first.as_found, second.as_found_step) == (None, 1)
    assert second.as_found
    assert second.as_found.still.recording == "strip"
    assert (second.as_found.still.time or 9) < 1


def test_the_manifest_names_every_file_with_its_hash(folder: Make) -> None:
    out = build(folder(WHOLE)).folder / "out"
    manifest = json.loads((out / "manifest.json").read_text())
    assert {entry["path"]: entry["sha256"] for entry in manifest["files"]} == {
        path: digest for path, digest in hashes(out).items() if path != "manifest.json"
    }


def test_the_same_input_gives_the_same_bytes(folder: Make, tmp_path: Path) -> None:
    first = folder(WHOLE)
    other = tmp_path / "elsewhere" / "hub"
    shutil.copytree(first, other)
    os.utime(other / "procedure.md", (0, 0))
    assert hashes(build(first).folder / "out") == hashes(build(other).folder / "out")


def test_a_second_build_opens_no_recording(folder: Make, monkeypatch: pytest.MonkeyPatch) -> None:
    marked = "- Picture: 0:01 | x\n  - Mark: ring | 0.5,0.5 | here\n- Hide: 0:01 0,0,0.1,0.1\n- Off: belt"
    whole = WHOLE.replace("- Off: belt", marked)
    home = folder(whole)
    before = hashes(build(home).folder / "out")

    def opened(*_args: object, **_names: object) -> None:
        raise AssertionError("media work")

    for module, name in (
        (probe, "probe"),
        (keyframe, "finished"),
        (keyframe, "as_found"),
        (stills, "still"),
        (clips, "cut"),
    ):
        monkeypatch.setattr(module, name, opened)
    assert hashes(build(home).folder / "out") == before
    longer = whole.replace("## Before", "One line more.\n\n## Before").replace("keep it level", "keep it quite level")
    (home / "procedure.md").write_text(longer)
    assert build(home).edition.steps[0].key_points[0].part("point") == "keep it quite level"


def test_media_that_are_no_longer_used_go_and_the_rest_stays(folder: Make) -> None:
    home = folder(WHOLE)
    build(home)
    before = {path.name for path in (home / "out" / "media").iterdir()}
    (home / "procedure.md").write_text(WHOLE.replace("0:02-0:03.500 Put", "Put"))
    build(home)
    after = {path.name for path in (home / "out" / "media").iterdir()}
    assert after < before


def test_a_failed_build_leaves_the_old_output_whole(folder: Make, monkeypatch: pytest.MonkeyPatch) -> None:
    home = folder(WHOLE)
    before = hashes(build(home).folder / "out")
    (home / "procedure.md").write_text(WHOLE.replace("pillar drill", "bench drill"))

    def broken(_edition: Edition, **_names: object) -> bytes:
        raise RuntimeError("killed")

    monkeypatch.setattr("procbuilder.publish.html.page", broken)
    with pytest.raises(RuntimeError, match="killed"):
        build(home)
    assert hashes(home / "out") == before


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("recordings/strip.mp4}", "recordings/gone.mp4}",
         "procedure.md:8: recordings/gone.mp4 is not there – "
         "put the file at recordings/gone.mp4 in the procedure folder, or correct the path"),
        ("recordings/strip.mp4}", "../../strip.mp4}",
         "procedure.md:8: ../../strip.mp4 leads out of the procedure folder – "
         "copy the file into the folder and name it there"),
        ("recordings/strip.mp4}", "recordings}",
         "procedure.md:8: recordings is a folder – "
         "put the file at recordings in the procedure folder, or correct the path"),
    ],
)  # fmt: skip
def test_a_recording_that_cannot_be_used_is_a_problem_and_the_text_is_published(
    folder: Make, old: str, new: str, message: str
) -> None:
    built = build(folder(WHOLE.replace(old, new)))
    assert message in told(built.problems)
    assert built.edition.status == "draft"
    assert built.edition.steps[0].command == "Lift off the belt cover"


def test_a_file_that_is_no_recording_is_a_problem(folder: Make) -> None:
    home = folder(WHOLE)
    (home / "recordings" / "strip.mp4").write_bytes(b"\x00\x01no film" * 99)
    problems = told(build(home).problems)
    assert any(problem.startswith("procedure.md:8: recordings/strip.mp4: cannot be read as a recording (")
               for problem in problems)  # fmt: skip


def test_a_link_out_of_the_folder_is_refused(folder: Make, tmp_path: Path) -> None:
    home = folder(WHOLE)
    outside = shutil.move(home / "recordings" / "strip.mp4", tmp_path / "outside.mp4")
    (home / "recordings" / "strip.mp4").symlink_to(outside)
    assert "leads out of the procedure folder" in told(build(home).problems)[0]


def test_captions_are_the_words_said_during_the_clip(folder: Make) -> None:
    home = folder(WHOLE.replace("author: demo", "author: demo\nnarration: {strip: strip.srt}"))
    (home / "strip.srt").write_text(
        "1\n00:00:00,400 --> 00:00:00,900\nCover off.\n\n2\n00:00:01,800 --> 00:00:02,400\nNow the belt.\n"
    )
    first, second, _ = build(home).edition.steps
    assert [(cue.text, float(cue.start), float(cue.end)) for cue in first.captions] == [
        ("Cover off.", 0, 0.4),
    ]
    assert [(cue.text, float(cue.start)) for cue in second.captions] == [("Now the belt.", 0)]
    assert "Now the belt." in (home / "out" / "captions" / "cover-on.vtt").read_text()


def test_a_reserved_step_shows_who_does_it_and_not_how(folder: Make) -> None:
    built = build(folder(WHOLE.replace("- Off: belt", "- Reserved: electrician\n- Off: belt")))
    step = built.edition.steps[0]
    assert (step.reserved, step.key_points, step.clip, step.figures) == ("electrician", (), None, ())
    assert "keep it level" not in (built.folder / "out" / "edition.json").read_text()


def test_a_hidden_region_is_hidden_in_still_and_clip(folder: Make) -> None:
    text = WHOLE.replace("- Off: belt", "- Hide: 0:00.500 0,0,0.5,0.5\n- Off: belt")
    home = folder(WHOLE)
    plain = build(home).edition.steps[0]
    (home / "procedure.md").write_text(text)
    hidden = build(home).edition.steps[0]
    assert plain.clip
    assert hidden.clip
    assert plain.clip.file != hidden.clip.file
    assert plain.figures[0].still.file != hidden.figures[0].still.file


def test_a_folder_without_a_procedure_is_told_how_to_make_one(tmp_path: Path) -> None:
    with refused(NoProcedure, r"there is no procedure\.md in it – make one with: procbuilder new"):
        build(tmp_path)


def test_a_library_is_a_folder_of_procedures_with_a_workshop_file(folder: Make) -> None:
    home = folder(WHOLE)
    with pytest.raises(NoProcedure):
        procedures(home.parent)
    (home.parent / "workshop.toml").touch()
    assert procedures(home.parent) == (home,)


def test_a_picture_file_of_the_folder_is_shown_and_a_missing_one_is_a_problem(folder: Make) -> None:
    text = WHOLE.replace("- Off: belt", "- Picture: pictures/cover.png | the two bolts | detail\n- Off: belt")
    home = folder(text)
    assert told(build(home).problems) == [
        "procedure.md:24: pictures/cover.png is not there – "
        "put the file at pictures/cover.png in the procedure folder, or correct the path"
    ]
    (home / "pictures").mkdir()
    cv2.imwrite(str(home / "pictures" / "cover.png"), np.full((90, 160, 3), 200, np.uint8))
    built = build(home)
    assert told(built.problems) == []
    _automatic, detail = built.edition.steps[0].figures
    assert (detail.still.original, detail.shows, detail.still.width) == ("pictures/cover.png", "the two bolts", 160)


def test_an_explicit_none_reaches_the_reader(folder: Make) -> None:
    lists = {entry.name: entry.none for entry in build(folder(WHOLE)).edition.lists}
    assert lists == {
        "Condition": False, "Wear": False, "Dangers confirmed": False, "Supply": True, "Part": True,
    }  # fmt: skip


def test_a_clip_begins_with_the_marked_picture_and_its_captions_wait(folder: Make) -> None:
    marked = "- Picture: 0:01 | the cover\n  - Mark: ring | 0.5,0.5 | here\n- Off: belt"
    text = WHOLE.replace("author: demo", "author: demo\nnarration: {strip: strip.srt}").replace("- Off: belt", marked)
    home = folder(text)
    (home / "strip.srt").write_text("1\n00:00:00,400 --> 00:00:00,900\nCover off.\n")
    built = build(home)
    step, other, _ = built.edition.steps
    assert step.clip
    assert other.clip
    assert (step.clip.held, other.clip.held) == (3, 0)
    assert float(step.clip.seconds) == pytest.approx(4.5, abs=0.11)
    assert [(cue.text, float(cue.start)) for cue in step.captions] == [("Cover off.", 3)]
    assert spoken(built.edition).steps[0].figures[0].alt == "the cover. Marked: ring, here"
    assert step.figures[0].marked
    assert step.figures[0].marked.file != step.figures[0].still.file
    page = (home / "out" / "index.html").read_text()
    assert "The clip begins with the marked picture, which stands still for 3 s." in page


def test_marked_pictures_stand_still_for_less_when_they_are_many() -> None:
    """Three seconds each, six together."""
    assert [hold(count) for count in (0, 1, 2, 3, 4)] == [0, 3, 3, 2, Fraction(3, 2)]
