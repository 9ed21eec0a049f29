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
from tests.pipeline.conftest import film
from tests.pipeline.text import WHOLE

run = CliRunner().invoke


@pytest.fixture
def home(tmp_path: Path) -> Path:
    folder = tmp_path / "hub"
    film(folder / "recordings" / "strip.mp4")
    (folder / "procedure.md").write_text(WHOLE, encoding="utf-8")
    return folder


@pytest.mark.parametrize("command", ["demo", "new", "check", "build", "serve"])
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
        "recordings/strip.mp4: no sound",
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
        "nothing is wrong or missing",
    ]
    run(app, ["build", str(home)])
    assert run(app, ["check", str(home)]).stderr == "nothing is wrong or missing\n"


def test_check_as_json_is_data_on_stdout(home: Path) -> None:
    (home / "procedure.md").write_text(WHOLE.replace("- Supply: none\n", "- Suply: none\n"), encoding="utf-8")
    result = run(app, ["check", str(home), "--json"])
    problems = json.loads(result.stdout)
    assert result.exit_code == 1
    assert problems[0] == {
        "severity": "stop",
        "file": "procedure.md",
        "line": 17,
        "what": "Suply is no field",
        "instead": "did you mean Supply: …? It is kept as text until you say",
        "rule": "field-name",
        "danger": 2,
    }


def test_check_can_write_missing_ids_and_nothing_else(home: Path) -> None:
    text = WHOLE.replace(" {#test}", "")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    result = run(app, ["check", str(home), "--add-ids"])
    assert result.stderr.splitlines()[0] == "1 step ids written"
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


def test_new_from_narration_alone_drafts_a_step_for_every_subtitle(tmp_path: Path) -> None:
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
