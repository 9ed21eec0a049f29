"""A further output is one more entry of a tuple: it is published, hashed, renewed and taken away like the others."""

import json
from pathlib import Path

import pytest

from procbuilder.pipeline import publishing
from procbuilder.pipeline.build import Options, build
from procbuilder.pipeline.outputs import OUTPUTS, Files, Given, Output
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults


def _commands(given: Given) -> Files:
    """A plain list of the commands, and each on a slip of its own."""
    commands = {step.id: step.command for step in given.edition.steps}
    slips = {f"slips/{name}.txt": command.encode() for name, command in commands.items()}
    return Files({"commands.txt": "\n".join(commands.values()).encode(), **slips}, ("☂",))


@pytest.fixture
def more(monkeypatch: pytest.MonkeyPatch) -> None:
    listed = Output("commands.txt", _commands, folder="slips", on_request=True)
    monkeypatch.setattr(publishing, "OUTPUTS", (*OUTPUTS, listed))


@pytest.mark.usefixtures("more")
def test_a_new_output_is_published_with_the_others(home: Path) -> None:
    assert not (build(home).out / "commands.txt").exists()
    built = build(home, options=Options(also=("commands.txt",)))
    told = (built.out / "commands.txt").read_text(encoding="utf-8").splitlines()
    assert told == ["Lift off the belt cover", "Put the belt cover on", "Check that the belt runs free"]
    assert built.unprintable == ("☂",)
    listed = {entry["path"] for entry in json.loads((built.out / "manifest.json").read_bytes())["files"]}
    assert {"commands.txt", "slips/cover-off.txt", "slips/cover-on.txt", "slips/test.txt"} <= listed


@pytest.mark.usefixtures("more")
def test_it_never_grows_old_and_leaves_nothing_behind(home: Path) -> None:
    build(home, options=Options(also=("commands.txt",)))
    (home / "procedure.md").write_text(WHOLE.replace("{#test}", "{#run}").replace("Lift off", "Take off"), "utf-8")
    out = build(home).out
    assert (out / "commands.txt").read_text(encoding="utf-8").startswith("Take off the belt cover\n")
    assert sorted(path.name for path in (out / "slips").iterdir()) == ["cover-off.txt", "cover-on.txt", "run.txt"]
    assert faults(out) == []


def test_no_two_outputs_share_a_name_or_a_folder() -> None:
    names, folders = [each.name for each in OUTPUTS], [each.folder for each in OUTPUTS if each.folder]
    assert (len(set(names)), len(set(folders))) == (len(names), len(folders))
    assert names.index("index.html") > max(map(names.index, ("procedure.pdf", "captions", "phone.html")))
