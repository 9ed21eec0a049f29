"""What the project promises about itself: its README, its wheel, its lock."""

import re
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest
from typer.main import get_command

from procbuilder.cli import app

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


@pytest.fixture(scope="session")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of this clone, built without isolation so that no network is needed."""
    pytest.importorskip("hatchling", reason="hatchling builds the wheel")
    target = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(target), str(ROOT)]
    subprocess.run(command, check=True, capture_output=True)
    return next(target.glob("*.whl"))


def test_the_wheel_carries_templates_and_demo_and_stays_small(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    assert {"procbuilder/shipped/templates/pdf/procedure.typ", "procbuilder/shipped/sample_media/hub/procedure.md",
            "procbuilder/shipped/sample_media/drill/procedure.md", "procbuilder/shipped/sample_media/workshop.toml",
            "procbuilder/infer/data/protection.toml", "procbuilder/read/FORMAT.md",
            "procbuilder/publish/edition.schema.json"} <= set(names)  # fmt: skip
    assert not [name for name in names if name.startswith(("tests/", "sample_media/")) or "sample_media/make" in name]
    assert wheel.stat().st_size < 30_000_000


def test_the_installed_wheel_runs_the_demo_outside_the_clone(wheel: Path, tmp_path: Path) -> None:
    """With the libraries of this environment, but the program from the wheel alone."""
    inside = tmp_path / "inside"
    install = [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-index", "--target", str(inside)]
    subprocess.run([*install, str(wheel)], check=True, capture_output=True)
    code = (
        "import sys; sys.path.insert(0, sys.argv.pop(1)); import procbuilder; print(procbuilder.__file__);"
        "from procbuilder.cli import main; main()"
    )
    command = [sys.executable, "-P", "-c", code, str(inside), "demo", str(tmp_path / "demo")]
    result = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert (result.returncode, result.stderr) == (0, "")
    assert result.stdout.splitlines()[0] == f"{inside}/procbuilder/__init__.py"
    for name in ("hub", "drill"):
        assert (tmp_path / "demo" / name / "out" / "index.html").is_file()
        assert (tmp_path / "demo" / name / "out" / "procedure.pdf").is_file()
