"""The commands as a person types them: answers, messages, exit codes."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from procbuilder import __version__
from procbuilder.cli import app
from procbuilder.media import cuts
from procbuilder.publish.wording.commands import MESSAGES
from tests.pipeline.conftest import film
from tests.pipeline.text import WHOLE

READING = "Text: 24 words, 5 a sentence; reading ease 100 (Flesch; 60 and more reads plainly), school grade 1"

run = CliRunner().invoke


@pytest.fixture
def home(tmp_path: Path) -> Path:
    folder = tmp_path / "hub"
    film(folder / "recordings" / "strip.mp4")
    (folder / "procedure.md").write_text(WHOLE, encoding="utf-8")
    return folder


@pytest.mark.parametrize("command", ["demo", "new", "check", "build", "log", "serve"])
def test_every_command_says_what_it_does(command: str) -> None:
    result = run(app, [command, "--help"])
    assert result.exit_code == 0
    assert f"Usage: root {command}" in result.stdout or f"{command} [OPTIONS]" in result.stdout


def test_version() -> None:
    assert run(app, ["--version"]).stdout == f"procbuilder {__version__}\n"


def test_build_says_where_the_page_and_the_pdf_are(home: Path) -> None:
    result = run(app, ["build", str(home)])
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.splitlines() == [
        "recordings/strip.mp4: no sound, so nothing tells whether it runs at the speed of the work",
        "Status: review; nothing is wrong or missing",
        f"Page: {home}/out/index.html",
        f"PDF:  {home}/out/procedure.pdf",
    ]


def test_build_with_a_stop_publishes_a_draft_and_exits_with_1(home: Path) -> None:
    (home / "procedure.md").write_text(WHOLE.replace("- On: belt cover | by: 2 x M5 bolt\n", ""), encoding="utf-8")
    result = run(app, ["build", str(home)])
    assert result.exit_code == 1
    assert result.stdout.splitlines()[1] == (
        "Status: draft (1 problem must be settled before it may be approved); 1 stop"
    )
    assert f"{home}/procedure.md:24: stop: belt cover came off at strip 0:00.500 (step 1)" in result.stderr
    assert (home / "out" / "index.html").is_file()


def test_check_uses_what_is_known_and_says_what_is_not(home: Path) -> None:
    result = run(app, ["check", str(home)])
    assert (result.exit_code, result.stdout) == (0, "")
    assert result.stderr.splitlines() == [
        f"strip has not been read yet, so times were not compared with it: procbuilder build {home}",
        READING,
        "nothing is wrong or missing",
    ]
    run(app, ["build", str(home)])
    assert run(app, ["check", str(home)]).stderr == f"{READING}\nnothing is wrong or missing\n"


def test_check_says_what_was_not_scanned(home: Path) -> None:
    """After a build the times of a step were changed: where its new stretch is cut is not known."""
    run(app, ["build", str(home)])
    text = (home / "procedure.md").read_text(encoding="utf-8")
    (home / "procedure.md").write_text(text.replace("0:02-0:03.500", "0:02-0:03.250"), encoding="utf-8")
    assert run(app, ["check", str(home)]).stderr.splitlines() == [
        READING,
        f"strip has not been scanned yet for cuts, talk and stillness: procbuilder build {home}",
        "nothing is wrong or missing",
    ]


def test_build_looks_at_every_picture_only_when_asked(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[object] = []

    def suspects(*given: object) -> tuple[()]:
        asked.append(given)
        return ()

    monkeypatch.setattr(cuts, "suspects", suspects)
    assert run(app, ["build", str(home), "--thorough"]).exit_code == 0
    assert asked == []
    shutil.rmtree(home / ".procbuilder")
    assert run(app, ["build", str(home)]).exit_code == 0
    assert len(asked) == 2


def test_check_shows_fifteen_questions_and_what_the_others_are_about(home: Path) -> None:
    tools = "".join(f"### Tighten bolt {number}\n\n" for number in range(16))
    (home / "procedure.md").write_text(WHOLE.replace("## Who looked", f"{tools}## Who looked"), encoding="utf-8")
    lines = run(app, ["check", str(home)]).stdout.splitlines()
    assert sum(": ask: " in line for line in lines) == 15
    assert lines[-1] == f"and 1 more about torques: procbuilder check --all {home} shows them"
    assert sum(": ask: " in line for line in run(app, ["check", str(home), "--all"]).stdout.splitlines()) == 16


def test_check_says_how_many_answers_an_approval_waits_for(home: Path) -> None:
    (home / "procedure.md").write_text(WHOLE.replace("- Dangers confirmed", "- Note"), encoding="utf-8")
    lines = run(app, ["check", str(home)]).stdout.splitlines()
    assert lines[-1] == "1 of the questions must be answered before anyone may approve it"


def test_build_for_a_qualification_that_nobody_has_is_refused(home: Path) -> None:
    result = run(app, ["build", str(home), "--edition", "gas fitter"])
    assert result.exit_code == 1
    assert result.stderr == (
        "the qualification gas fitter is not in the workshop file – nothing was built; add to workshop.toml above the "
        'procedure: [[qualification]] with name = "gas fitter", holder = "who", valid_until = 2027-03-31\n'
    )


LINE = {
    "field": "Hold",
    "parts": ["all"],
    "words": [],
    "place": {"file": "procedure.md", "line": 18},
    "replaces": True,
}


def test_check_as_json_is_data_on_stdout(home: Path) -> None:
    (home / "procedure.md").write_text(
        WHOLE.replace("- Supply: none\n", "- Hold: none\n- Hodl: all\n"), encoding="utf-8"
    )
    result = run(app, ["check", str(home), "--json"])
    problems = json.loads(result.stdout)
    assert result.exit_code == 1
    assert problems[0] == {
        "severity": "stop",
        "file": "procedure.md",
        "line": 18,
        "what": "Hodl is no field",
        "instead": "did you mean Hold? Then write: - Hold: all",
        "rule": "field-name",
        "form": "",
        "subject": "",
        "question": "",
        "danger": 2,
        "blocks": False,
        "steps": [],
        "values": {"typed": "Hodl", "near": "Hold", "line": LINE},
        "lines": ["- Hold: all"],
    }


def test_check_can_write_missing_ids_and_nothing_else(home: Path) -> None:
    text = WHOLE.replace(" {#test}", "")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    result = run(app, ["check", str(home), "--add-ids"])
    assert result.stderr.splitlines()[0] == "1 step id written"
    assert (home / "procedure.md").read_text(encoding="utf-8") == text.replace(
        "the belt runs free", "the belt runs free {#check-that-the-belt-runs}"
    )


@pytest.mark.parametrize("command", ["build", "check"])
def test_a_folder_without_procedure_is_one_clear_line(command: str, tmp_path: Path) -> None:
    result = run(app, [command, str(tmp_path)])
    assert result.exit_code == 1
    assert result.stderr == (
        f"{tmp_path}: there is no procedure.md in it – "
        f"make one with: procbuilder new {tmp_path} --recording FILE --steps FILE\n"
    )


def test_a_file_that_is_not_utf_8_names_the_line(home: Path) -> None:
    (home / "procedure.md").write_bytes(b"# Title\n\nGr\xf6\xdfe\n")
    result = run(app, ["build", str(home)])
    assert result.exit_code == 1
    assert result.stderr == (
        f"{home}/procedure.md:3: a character is not UTF-8 – save the file as UTF-8 text and try again\n"
    )


def test_wrong_usage_exits_with_2(tmp_path: Path) -> None:
    assert run(app, ["build"]).exit_code == 2
    assert run(app, ["new", str(tmp_path)]).exit_code == 2
    assert run(app, ["polish", str(tmp_path)]).exit_code == 2


def test_new_makes_a_folder_that_builds(tmp_path: Path) -> None:
    source = film(tmp_path / "IMG 0042.MP4")
    (tmp_path / "list.txt").write_text("0:00 lift off the cover\n0:02 -\nthen the belt\n0:02.500 belt off\n")
    folder = tmp_path / "drill-belt"
    result = run(app, ["new", str(folder), "--recording", str(source), "--steps", str(tmp_path / "list.txt")])
    assert result.exit_code == 1
    assert result.stderr == (
        "list.txt:3: ask: no time at the beginning: then the belt – "
        "write 0:42 Prise off the dust cap, or 0:42-1:15 Prise off the dust cap\n"
    )
    assert result.stdout == (f"{folder}/procedure.md: 2 steps. Fill it in, then run: procbuilder build {folder}\n")
    text = (folder / "procedure.md").read_text(encoding="utf-8")
    assert "### 0:00-0:02 Lift off the cover {#lift-off-the-cover}\n" in text
    assert "### 0:02.500-0:04 Belt off {#belt-off}\n" in text
    assert (folder / "recordings" / "img-0042.mp4").read_bytes() == source.read_bytes()
    run(app, ["build", str(folder)])
    assert (folder / "out" / "index.html").is_file()


def test_new_from_narration_alone_drafts_the_steps_that_it_tells(tmp_path: Path) -> None:
    source = film(tmp_path / "strip.mp4")
    (tmp_path / "strip.srt").write_text(
        "1\n00:00:00,250 --> 00:00:01,000\nLovely weather.\n\n"
        "2\n00:00:01,000 --> 00:00:02,000\nUndo the two bolts, thirteen mil.\n\n"
        "3\n00:00:02,000 --> 00:00:03,000\nCareful, it's sharp.\n"
    )
    arguments = ["new", str(tmp_path / "hub"), "-r", str(source), "-n", str(tmp_path / "strip.srt")]
    result = run(app, arguments)
    assert (result.exit_code, result.stdout.splitlines()[-1]) == (
        0,
        f"{tmp_path / 'hub'}/narration/heard.txt: where each sentence went; 1 is in no step",
    )
    text = (tmp_path / "hub" / "procedure.md").read_text(encoding="utf-8")
    assert text.endswith(
        "### 0:01-0:03 Undo 2 bolts {#undo-2-bolts}\n\n"
        "- Note: proposed from: Undo the two bolts, thirteen mil. (said strip 0:01)\n"
        "- Off: 2 x bolt (said strip 0:01)\n"
        "- Tool: 13 mm spanner or socket (said strip 0:01)\n"
        "- Caution: Careful, it's sharp (said strip 0:02)\n"
    )
    heard = (tmp_path / "hub" / "narration" / "heard.txt").read_text(encoding="utf-8")
    assert "said strip 0:00: set aside (talk, no work in it): Lovely weather.\n" in heard


def test_new_from_narration_without_work_drafts_a_step_for_every_subtitle(tmp_path: Path) -> None:
    source = film(tmp_path / "strip.mp4")
    (tmp_path / "strip.srt").write_text("1\n00:00:00,250 --> 00:00:01,000\nCastle nut next.\n")
    arguments = ["new", str(tmp_path / "hub"), "-r", str(source), "-n", str(tmp_path / "strip.srt")]
    assert run(app, arguments).exit_code == 0
    text = (tmp_path / "hub" / "procedure.md").read_text(encoding="utf-8")
    assert "### 0:00.250-0:01 Castle nut next {#castle-nut-next}\n" in text
    assert '  strip: "narration/strip.srt"\n' in text


def test_new_writes_over_nothing(home: Path, tmp_path: Path) -> None:
    result = run(app, ["new", str(home), "--recording", str(film(tmp_path / "a.mp4"))])
    assert (result.exit_code, result.stderr) == (1, f"{home}: is there already and is not empty – name a new folder\n")


def test_new_refuses_subtitles_that_belong_to_no_recording(tmp_path: Path) -> None:
    for name in ("a.srt", "b.srt"):
        (tmp_path / name).write_text("1\n00:00:00,250 --> 00:00:01,000\nCap off.\n")
    arguments = ["new", str(tmp_path / "hub"), "-r", str(film(tmp_path / "a.mp4"))]
    result = run(app, [*arguments, "-n", str(tmp_path / "a.srt"), "-n", str(tmp_path / "b.srt")])
    assert (result.exit_code, result.stderr) == (
        1,
        "2 subtitle files for 1 recording – give at most one for each recording, in the same order\n",
    )
    assert not (tmp_path / "hub").exists()


def test_new_names_a_file_that_is_not_there(tmp_path: Path) -> None:
    result = run(app, ["new", str(tmp_path / "hub"), "--recording", str(tmp_path / "gone.mp4")])
    assert result.exit_code == 1
    assert result.stderr == f"{tmp_path}/gone.mp4: there is no such file – check the name and the folder\n"
    assert not (tmp_path / "hub").exists()


def test_serve_before_build_says_what_to_run(home: Path) -> None:
    result = run(app, ["serve", str(home)])
    assert (result.exit_code, result.stderr) == (
        1,
        f"{home}: there is no page in it yet – run: procbuilder build {home}\n",
    )


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_messages_survive_any_console(encoding: str, home: Path) -> None:
    (home / "procedure.md").write_text(WHOLE.replace("Drill belt cover –", "Bohrer Ω –"), encoding="utf-8")
    shutil.rmtree(home / "recordings")
    environment = {**os.environ, "PYTHONIOENCODING": encoding, "PYTHONUTF8": "0"}
    command = [sys.executable, "-m", "procbuilder.cli", "check", str(home)]
    result = subprocess.run(command, env=environment, capture_output=True, check=False)
    line = result.stdout.decode(encoding).splitlines()[0]
    dash = "-" if encoding == "ascii" else "–"
    assert result.returncode == 1
    assert line == (
        f"{home}/procedure.md:8: stop: recordings/strip.mp4 is not there {dash} "
        "put the file at recordings/strip.mp4 in the procedure folder, or correct the path"
    )


def test_log_tells_the_estimate_before_and_after(home: Path, tmp_path: Path) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text("who,when,step,minutes\nab,2026-05-04,test,2\ncd,2026-05-05,test,3\n")
    result = run(app, ["log", str(home), str(rows)])
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.splitlines() == [
        f"2 rows added to {home}/times.csv",
        "Before: Hands-on 0.1 h, one person, third time or later; "
        "from typed times (1 step) and 1 film (2 steps; a lower bound if cut).",
        "After:  Hands-on 0.1 h, one person, third time or later; "
        "from 2 logged runs by two people (1 step) and 1 film (2 steps; a lower bound if cut).",
        "First time 0.1 h, tenth time 0.1 h, if each doubling of the number of times leaves 80 to 96 % of the time, "
        "which is assumed: the log shows nobody twice.",
        "A first run under supervision takes that time of the apprentice, and up to as much of the supervisor: "
        "up to 0.2 person-hours.",
        "  test: 1 min (typed) → 0.7–3.3 min, likely 1.5 (2 logged runs)",
    ]
    again = run(app, ["log", str(home), str(rows)])
    assert again.stdout.splitlines()[0] == f"0 rows added to {home}/times.csv; 2 were there already"


def test_a_wrong_row_is_named_and_nothing_is_added(home: Path, tmp_path: Path) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text("who,when,step,minutes\nab,2026-05-04,test,2\nab,2026-05-04,tset,2\n")
    result = run(app, ["log", str(home), str(rows)])
    assert (result.exit_code, result.stdout) == (1, "")
    assert result.stderr.splitlines() == [
        f"{rows}:3: ask: the procedure has no step tset – did you mean test?",
        f"nothing was added to {home}/times.csv",
    ]
    assert not (home / "times.csv").exists()


def test_a_damaged_log_is_a_problem_of_the_check(home: Path) -> None:
    (home / "times.csv").write_text("who,when,step,minutes\nab,2026-05-04,test,two\n")
    assert run(app, ["check", str(home)]).stdout.splitlines() == [
        MESSAGES["questions"],
        f"{home}/times.csv:2: ask: two is no number of minutes – "
        "write minutes such as 4.5, more than 0 and at most 1440 [practice log: ab,2026-05-04,test,two]",
    ]


STRIP = (
    "# Cover\n\n## Strip\n\n### Prise off the cap {#cap}\n\n- Off: cap\n\n### Pull the pin {#pin}\n\n- Off: split pin\n"
)


def test_refit_says_what_it_derived_and_how_it_is_accepted(tmp_path: Path) -> None:
    file = tmp_path / "procedure.md"
    file.write_text(STRIP, encoding="utf-8")
    result = run(app, ["new", "--refit", str(tmp_path)])
    assert (result.exit_code, result.stdout.splitlines()) == (
        0,
        [
            f"{file}: 2 refit steps added, derived and not filmed",
            "1 of them only asks: pressed, bled, timed, preloaded or single-use work",
            'Read each one, put it right, and take its "- Derived:" line away; check asks until then',
        ],
    )
    again = run(app, ["new", str(tmp_path), "--refit"])
    assert again.stdout == f"{file}: there is nothing new to derive; nothing was written\n"


def test_refit_of_a_folder_without_a_procedure(tmp_path: Path) -> None:
    result = run(app, ["new", "--refit", str(tmp_path)])
    assert result.exit_code == 1
    assert result.stderr.startswith(f"{tmp_path}: there is no procedure.md in it")


@pytest.mark.parametrize("options", [[], ["--refit", "--steps", "list.txt"], ["--refit", "--recording", "a.mp4"]])
def test_new_without_recordings_or_with_too_much_is_wrong_usage(tmp_path: Path, options: list[str]) -> None:
    result = run(app, ["new", str(tmp_path / "hub"), *options])
    assert result.exit_code == 2
    assert result.stderr == "new needs at least one --recording, or --refit alone for a procedure that is there\n"
    assert not (tmp_path / "hub").exists()
