"""What the project promises about itself: its README, its wheel, its lock."""

import re
import tomllib
import zipfile
from pathlib import Path

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


def _locked(name: str) -> dict[str, int]:
    """How many hashes a lock holds for each ``name==version``."""
    lock = (ROOT / name).read_text(encoding="utf-8")
    assert "://" not in lock
    each = re.findall(r"^(\S+==\S+)[^\\\n]*\\\n((?:    --hash=sha256:[0-9a-f]{64}(?: \\)?\n)+)", lock, re.M)
    assert sum(len(line.split("--hash")) > 1 for line in lock.splitlines()) == sum(h.count("--hash") for _, h in each)
    return {one: hashes.count("--hash") for one, hashes in each}


def test_both_locks_hold_a_hash_for_every_dependency() -> None:
    """The first is within the second, so that what is tested is what is installed."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    extras = project["optional-dependencies"]
    lock, of_tests = _locked("requirements.lock"), _locked("requirements-test.lock")
    for wanted, held in ((project["dependencies"] + extras["build"], lock), (extras["test"], of_tests)):
        names = {re.split(r"[<>=; ]", line)[0].lower().replace(".", "-") for line in wanted}
        assert names - {one.split("==")[0] for one in held} == set()
    assert lock.items() <= of_tests.items()
    assert of_tests["numpy==" + next(one.split("==")[1] for one in of_tests if one.startswith("numpy=="))] > 20


def test_the_readme_installs_by_hash_alone() -> None:
    part = README.split("## Start\n")[1].split("\n## ")[0]
    installs = [line for line in part.splitlines() if "pip install" in line]
    assert [("--require-hashes" in line or "--no-deps --no-build-isolation" in line) for line in installs] == [True] * 4


def test_the_wheel_carries_templates_and_demo_and_stays_small(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    assert {"procbuilder/shipped/templates/pdf/procedure.typ", "procbuilder/shipped/sample_media/hub/procedure.md",
            "procbuilder/shipped/sample_media/drill/procedure.md", "procbuilder/shipped/sample_media/workshop.toml",
            "procbuilder/infer/data/en/protection.toml", "procbuilder/read/FORMAT.md",
            "procbuilder/publish/edition.schema.json"} <= set(names)  # fmt: skip
    assert not [name for name in names if name.startswith(("tests/", "sample_media/")) or "sample_media/make" in name]
    assert wheel.stat().st_size < 30_000_000
