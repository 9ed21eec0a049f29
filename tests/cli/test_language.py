"""The commands speak the language of the procedure, else that of the environment, else English."""

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from procbuilder.cli import app
from procbuilder.speech import language_for
from tests.pipeline.conftest import film
from tests.pipeline.text import WHOLE

run = CliRunner().invoke

GERMAN = WHOLE.replace("author: demo\n", "author: demo\nlanguage: de-DE\n")
LOCALES = ("LC_ALL", "LC_MESSAGES", "LANG")


@pytest.fixture(autouse=True)
def plain(monkeypatch: pytest.MonkeyPatch) -> None:
    """An environment that names no language."""
    for name in LOCALES:
        monkeypatch.delenv(name, raising=False)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    folder = tmp_path / "hub"
    film(folder / "recordings" / "strip.mp4")
    (folder / "procedure.md").write_text(GERMAN, encoding="utf-8")
    return folder


@pytest.mark.parametrize(
    ("environment", "typed", "own"),
    [
        ({}, "", "en"),
        ({"LANG": "de_DE.UTF-8"}, "", "de-DE"),
        ({"LANG": "de_DE.UTF-8", "LC_MESSAGES": "en_GB.UTF-8"}, "", "en-GB"),
        ({"LANG": "en_GB", "LC_MESSAGES": "en_GB", "LC_ALL": "de_AT@euro"}, "", "de-AT"),
        ({"LC_ALL": "C", "LANG": "de_DE.UTF-8"}, "", "en"),
        ({"LANG": "fr_FR.UTF-8"}, "", "en"),
        ({"LANG": "de_DE.UTF-8"}, "language: en-GB\n", "en-GB"),
        ({"LANG": "en_GB.UTF-8"}, "language: de-CH\n", "de-CH"),
        ({"LANG": "de_DE.UTF-8"}, "language: fr-FR\n", "de-DE"),
    ],
)
def test_the_procedure_comes_before_the_environment(
    environment: dict[str, str], typed: str, own: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """POSIX.1, Environment Variables: LC_ALL comes before LC_MESSAGES, and that before LANG."""
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    (tmp_path / "procedure.md").write_text(f"---\n{typed}---\n# T\n", encoding="utf-8")
    assert language_for(tmp_path).own == own


def test_a_german_build_and_check_tell_it_in_german(home: Path) -> None:
    built = run(app, ["build", str(home)])
    assert "Status: in Prüfung; " in built.stdout
    assert f"Seite: {home}/out/index.html" in built.stdout.splitlines()
    assert built.stdout.startswith("recordings/strip.mp4: kein Ton")
    (home / "procedure.md").write_text(
        GERMAN.replace("- Time: 1\n", "- Time: soon\n").replace("- Supply: none", "- Hodl: none"), encoding="utf-8"
    )
    lines = run(app, ["check", str(home)]).stdout.splitlines()
    assert lines[0].endswith("Stopp: Hodl ist kein Feld – gemeint ist Hold? Dann schreiben: - Hold: none")
    (told,) = [line for line in lines if "soon" in line]
    assert told == (
        f"{home}/procedure.md:36: Frage: soon lässt sich nicht als Minuten lesen – "
        "12 schreiben, oder wenig/wahrscheinlich/viel wie 8/10/15 [field: Time: soon]"
    )


def test_an_answer_settles_what_could_not_be_read(home: Path) -> None:
    text = WHOLE.replace("- Time: 1\n", "- Time: soon\n")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    assert "soon cannot be read as minutes" in run(app, ["check", str(home)]).stdout
    text = text.replace(
        "- Condition: plug pulled\n", "- Condition: plug pulled\n- Refused: field: Time: soon | later\n"
    )
    (home / "procedure.md").write_text(text, encoding="utf-8")
    assert run(app, ["check", str(home)]).stdout == ""


def test_a_german_fault_names_the_cause(home: Path, tmp_path: Path) -> None:
    """Also of a file that some other program did not save as UTF-8."""
    missing = run(app, ["log", str(home), str(tmp_path / "rows.csv")])
    assert (missing.exit_code, missing.stderr) == (
        1,
        f"{tmp_path}/rows.csv: die Datei ist nicht vorhanden – Namen und Ordner prüfen\n",
    )
    (home / "procedure.md").write_bytes(GERMAN.replace("plug", "Stecker gelöst").encode("cp1252"))
    assert run(app, ["check", str(home)]).stderr == (
        f"{home}/procedure.md:11: ein Zeichen ist nicht UTF-8 – "
        "die Datei als UTF-8-Text speichern und erneut versuchen\n"
    )


def test_a_german_log_tells_rows_and_times(home: Path, tmp_path: Path) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text("who,when,step,minutes\nab,2026-05-04,tset,2\n")
    wrong = run(app, ["log", str(home), str(rows)])
    assert wrong.stderr.splitlines() == [
        f"{rows}:2: Frage: die Arbeitsanweisung hat keinen Schritt tset – gemeint ist test?",
        f"{home}/times.csv wurde nichts hinzugefügt",
    ]
    rows.write_text("who,when,step,minutes\nab,2026-05-04,test,2\n")
    lines = run(app, ["log", str(home), str(rows)]).stdout.splitlines()
    assert lines[0] == f"1 Zeile zu {home}/times.csv hinzugefügt"
    assert lines[1].startswith("Vorher:  ")
    assert lines[-1].startswith("  test: 1 min (eingetippt) → ")


def test_a_new_procedure_is_told_in_the_language_of_the_environment(home: Path, tmp_path: Path) -> None:
    steps = tmp_path / "steps.txt"
    steps.write_text("0:01 Lift off the cover\nwithout a time\n", encoding="utf-8")
    recording = str(home / "recordings" / "strip.mp4")
    result = run(app, ["new", str(tmp_path / "new"), "-r", recording, "-s", str(steps)], env={"LANG": "de_DE.UTF-8"})
    assert result.stderr.splitlines() == [
        "steps.txt:2: Frage: keine Zeit am Anfang: without a time – "
        "0:42 Fettkappe abhebeln schreiben, oder 0:42-1:15 Fettkappe abhebeln"
    ]
    assert result.stdout == (
        f"{tmp_path}/new/procedure.md: 1 Schritt. Ausfüllen, dann ausführen: procbuilder build {tmp_path}/new\n"
    )
    text = (tmp_path / "new" / "procedure.md").read_text(encoding="utf-8")
    assert "\nlanguage: de-DE\n---\n" in text
    assert "\n## Bevor es losgeht\n\nEintragen, was bereitliegen muss: `- Condition: …`, `- Tool: …`, " in text
    assert run(app, ["new", str(tmp_path / "no")], env={"LANG": "de_DE.UTF-8"}).stderr == (
        "new braucht mindestens ein --recording, oder --refit allein für eine vorhandene Arbeitsanweisung\n"
    )


def test_data_hold_the_facts_and_the_sentences(home: Path) -> None:
    text = GERMAN.replace("- Torque: M5 bolt | look up | D1, page 2\n", "- Torque: M5 bolt\n")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    problems = json.loads(run(app, ["check", str(home), "--json"]).stdout)
    (problem,) = [one for one in problems if one["rule"] == "field"]
    assert problem["what"] == "Torque: Wert fehlt"
    assert problem["lines"] == ["- Torque: Gegenstand | Wert | wo"]
    assert problem["question"] == "field: Torque: M5 bolt"
    assert problem["values"]["field"] == "Torque"
    assert problem["values"]["line"]["parts"] == [{"name": "item"}, {"name": "value"}, {"name": "where"}]
