"""A library: each of its files is read once, and what fails in one procedure keeps nobody from the others."""

import json
import os
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest
from typer.testing import CliRunner

from procbuilder.cli import app
from procbuilder.infer import alike
from procbuilder.keep.lock import locked
from procbuilder.model.fault import Busy, NoProcedure, NotQualified, NotText
from procbuilder.model.procedure import Step
from procbuilder.pipeline.build import Built, Options, build
from procbuilder.pipeline.check import Checked, check, check_all
from procbuilder.pipeline.jobs import jobs
from procbuilder.pipeline.library import Failed, procedures, read_library
from procbuilder.pipeline.progress import silent
from procbuilder.pipeline.publishing import Published
from tests.growth import no_blow_up
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults, title

TEXT = """\
---
number: P-{number}
---
# Pump {number} – seal

## Work

### Pull the split pin out {{#pin}}

- Time: 2

### Fit the seal {{#seal}}

### Fit the cover of pump {number} {{#cover}}
"""

UNFILMED = (
    WHOLE.replace("recordings: {strip: recordings/strip.mp4}\n", "")
    .replace("0:00.500-0:02 ", "")
    .replace("0:02-0:03.500 ", "")
)
"""Without a stop."""


def library(folder: Path, count: int) -> Path:
    """So many procedures with practice logs; two of their operations are the same in all of them."""
    for number in range(count):
        home = folder / f"pump-{number:03}"
        home.mkdir(parents=True)
        (home / "procedure.md").write_text(TEXT.format(number=number), encoding="utf-8")
        rows = [f"{who},2026-03-{day:02},{step},{4 + number % 3}"
                for who, day in (("ab", 1 + number % 28), ("cd", 2)) for step in ("pin", "seal", "cover")]  # fmt: skip
        (home / "times.csv").write_text("\n".join(["who,when,step,minutes", *rows, ""]), encoding="utf-8")
    (folder / "workshop.toml").write_text('[times]\nseen_by = "nobody else"\n', encoding="utf-8")
    return folder


@pytest.fixture
def reads(monkeypatch: pytest.MonkeyPatch) -> Counter[str]:
    """How often each text was read, by folder and name."""
    read, count = Path.read_bytes, Counter[str]()

    def counted(self: Path) -> bytes:
        if self.suffix in (".md", ".csv") or self.name == "workshop.toml":
            count[f"{self.parent.name}/{self.name}"] += 1
        return read(self)

    monkeypatch.setattr(Path, "read_bytes", counted)
    return count


def _checked(folder: Path) -> list[Checked | Failed]:
    return list(check_all(folder))


def _built(folder: Path) -> list[Built | Failed]:
    return [job.run(silent) for job in jobs(folder)]


@pytest.mark.parametrize("work", [_checked, _built])
def test_each_text_of_forty_procedures_is_read_once(
    tmp_path: Path, reads: Counter[str], monkeypatch: pytest.MonkeyPatch, work: Callable[[Path], list[object]]
) -> None:
    monkeypatch.setattr("procbuilder.pipeline.build.publish", lambda *_: Published(()))
    folder = library(tmp_path / "library", 40)
    assert len(work(folder)) == 40
    assert len(reads) == 81
    assert set(reads.values()) == {1}


def test_alone_a_procedure_without_a_log_reads_no_neighbour(tmp_path: Path, reads: Counter[str]) -> None:
    folder = library(tmp_path / "library", 3)
    (folder / "pump-001" / "times.csv").unlink()
    check(folder / "pump-001")
    assert reads == {"pump-001/procedure.md": 1, "library/workshop.toml": 1}


def test_four_hundred_procedures_are_checked_without_a_blow_up(tmp_path: Path) -> None:
    def prepare(count: int) -> Callable[[], list[Checked | Failed]]:
        folder = tmp_path / str(count)
        if not folder.exists():
            library(folder, count)
        return lambda: _checked(folder)

    assert len(no_blow_up(prepare, 400)) == 400


def test_each_log_is_understood_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of each procedure for the others, and of its steps without typed minutes for itself."""
    heard: Counter[str] = Counter()
    understood = alike.kind_of

    def counted(step: Step, *given: object) -> str:
        heard[step.command] += 1
        return understood(step, *given)  # type: ignore[arg-type]

    monkeypatch.setattr(alike, "kind_of", counted)
    _checked(library(tmp_path / "library", 5))
    assert heard["Pull the split pin out"] == 5
    assert {heard[f"Fit the cover of pump {number}"] for number in range(5)} == {2}


def test_an_estimate_in_a_library_is_the_one_of_the_procedure_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("procbuilder.pipeline.build.publish", lambda *_: Published(()))
    folder = library(tmp_path / "library", 4)
    together = [built.edition.estimate for built in _built(folder) if isinstance(built, Built)]
    assert together == [build(each).edition.estimate for each in procedures(folder)]
    (folder / "workshop.toml").unlink()
    assert together[0] != build(folder / "pump-000").edition.estimate


def test_a_procedure_that_fails_keeps_its_output_and_the_others_are_built(tmp_path: Path) -> None:
    folder = library(tmp_path / "library", 3)
    before = [built for built in _built(folder) if isinstance(built, Built)]
    assert len(before) == 3
    for home in procedures(folder):
        text = (home / "procedure.md").read_text(encoding="utf-8")
        (home / "procedure.md").write_text(text.replace("# Pump", "# Second pump"), encoding="utf-8")
    (folder / "pump-001" / "procedure.md").write_bytes(b"# Pump\n\xff\n")
    first, broken, last = _built(folder)
    assert isinstance(broken, Failed)
    assert isinstance(broken.fault, NotText)
    assert broken.folder == folder / "pump-001"
    titles = [title(home / "out") for home in procedures(folder)]
    assert titles == ["Second pump 0 – seal", "Pump 1 – seal", "Second pump 2 – seal"]
    assert [faults(home / "out") for home in procedures(folder)] == [[], [], []]
    assert isinstance(first, Built)
    assert isinstance(last, Built)


def test_what_fails_at_work_is_told_too(tmp_path: Path) -> None:
    folder = library(tmp_path / "library", 2)
    with locked(folder / "pump-000"):
        busy, built = _built(folder)
    assert isinstance(busy, Failed)
    assert isinstance(busy.fault, Busy)
    assert isinstance(built, Built)


@pytest.mark.parametrize("command", ["build", "check"])
def test_the_summary_names_what_failed_and_the_gravest_code_counts(tmp_path: Path, command: str) -> None:
    folder = library(tmp_path / "library", 3)
    (folder / "pump-000" / "procedure.md").write_text(UNFILMED, encoding="utf-8")
    (folder / "pump-002" / "procedure.md").write_bytes(b"# Pump\n\xff\n")
    ended = CliRunner().invoke(app, [command, str(folder)])
    assert ended.stderr.splitlines()[-2:] == [
        "3 procedures: 1 without a stop, 1 with one, 1 failed",
        f"pump-002: {folder}/pump-002/procedure.md:2: a character is not UTF-8"
        " – save the file as UTF-8 text and try again",
    ]
    assert ended.exit_code == 1
    if command == "build":
        with locked(folder / "pump-000"):
            assert CliRunner().invoke(app, [command, str(folder)]).exit_code == 3


def test_a_check_of_a_library_as_data_says_which_procedure(tmp_path: Path) -> None:
    folder = library(tmp_path / "library", 2)
    ended = CliRunner().invoke(app, ["check", "--json", str(folder)])
    assert {one["file"] for one in json.loads(ended.stdout)} == {"pump-000/procedure.md", "pump-001/procedure.md"}


def test_what_holds_for_the_whole_library_is_told_once(tmp_path: Path) -> None:
    folder = library(tmp_path / "library", 2)
    with pytest.raises(NotQualified):
        jobs(folder, Options(reader="electrician"))
    (folder / "workshop.toml").write_bytes(b"\xff")
    with pytest.raises(NotText):
        read_library(folder)
    (folder / "workshop.toml").unlink()
    with pytest.raises(NoProcedure):
        read_library(folder)


def test_what_may_not_be_read_is_told_and_keeps_nobody_from_the_others(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As POSIX.1 has it for a folder without the right to search it: EACCES for all that lies in it."""
    (tmp_path / "workshop.toml").write_text("", encoding="utf-8")
    for name in ("open", "shut"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "procedure.md").write_text(TEXT.format(number=1), encoding="utf-8")
    is_file, access = Path.is_file, os.access

    def closed(path: Path) -> bool:
        if path.parent.name == "shut":
            raise PermissionError(13, "Permission denied", str(path))
        return is_file(path)

    monkeypatch.setattr(Path, "is_file", closed)
    monkeypatch.setattr(os, "access", lambda path, mode: Path(path).name != "shut" and access(path, mode))
    result = CliRunner().invoke(app, ["check", str(tmp_path)])
    assert (result.exit_code, type(result.exception)) == (3, SystemExit)
    assert result.stderr.splitlines()[-1] == (
        f"shut: {tmp_path / 'shut'}: cannot be read (that is not permitted) – "
        "get the right to read it, or copy it here anew"
    )
