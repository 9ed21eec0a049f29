"""What the project promises about itself: its README, its wheel, its lock."""

import re
import tomllib
import zipfile
from pathlib import Path

from typer.main import get_command

from procbuilder.cli import app
from tests.conftest import DemoRun

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_start_has_exactly_two_shell_blocks() -> None:
    part = README.split("## Start\n")[1].split("\n## ")[0]
    assert len(re.findall(r"^```sh$", part, re.M)) == 2


def test_every_command_stands_in_the_readme() -> None:
    commands = get_command(app).commands  # type: ignore[attr-defined]
    assert [name for name in commands if f"procbuilder {name}" not in README] == []


def test_every_file_named_in_the_readme_is_there() -> None:
    names = re.findall(r"\]\(([^)#]+)\)", README)
    assert [name for name in names if not (ROOT / name).is_file()] == []


def test_every_dependency_says_why_it_is_there() -> None:
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    block = text.split("dependencies = [")[1].split("\n]")[0]
    lines = [line for line in block.splitlines() if line.strip()]
    assert [line for line in lines if not re.search(r'",\s+# \S+', line)] == []


def test_the_lock_names_every_dependency_and_no_address() -> None:
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8")
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = project["dependencies"] + project["optional-dependencies"]["test"]
    names = {re.split(r"[<>=]", line)[0].lower().replace(".", "-") for line in wanted}
    assert names - {line.split("==")[0] for line in lock.splitlines()} == set()
    assert "://" not in lock


def test_the_wheel_carries_templates_and_demo_and_stays_small(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    assert {"procbuilder/shipped/templates/pdf/procedure.typ", "procbuilder/shipped/sample_media/hub/procedure.md",
            "procbuilder/shipped/sample_media/drill/procedure.md", "procbuilder/shipped/sample_media/workshop.toml",
            "procbuilder/infer/data/en/protection.toml", "procbuilder/read/FORMAT.md",
            "procbuilder/publish/edition.schema.json"} <= set(names)  # fmt: skip
    assert not [name for name in names if name.startswith(("tests/", "sample_media/")) or "sample_media/make" in name]
    assert wheel.stat().st_size < 30_000_000


def test_the_installed_wheel_runs_the_demo_outside_the_clone(demo_run: DemoRun) -> None:
    """With the libraries of this environment, but the program from the wheel alone."""
    assert (demo_run.code, demo_run.messages) == (0, "")
    assert demo_run.told[0] == f"{demo_run.program}/procbuilder/__init__.py"
    for name in ("hub", "drill"):
        assert (demo_run.folder / name / "out" / "index.html").is_file()
        assert (demo_run.folder / name / "out" / "procedure.pdf").is_file()
