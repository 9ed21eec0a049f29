"""Recordings damaged in every way: each ends in time as pictures and a clip, or is refused by its name.

The media libraries are not written in Python, and a fault in them would end the program: so all of it runs in programs
of its own.
"""

import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from tests.media import mutants

COUNT, PARTS = 384, 2
PICTURES = 300
_SECONDS = 30
_BUILT = 8


@pytest.fixture(scope="module")
def damaged(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """Damaged recordings of eight kinds, hurt in eight ways."""
    folder = tmp_path_factory.mktemp("fuzz")
    return list(mutants.mutants(mutants.samples(tmp_path_factory.mktemp("whole")), folder, COUNT))


def _ends(files: list[Path], folder: Path) -> list[str]:
    """What the worker says of each file."""
    command = [sys.executable, "-m", "tests.media.mutant_worker", str(_SECONDS), str(folder), *map(str, files)]
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    assert run.returncode == 0, (run.returncode, run.stdout.splitlines()[-1:], run.stderr[-500:])
    return [line for line in run.stdout.splitlines() if " ends as " in line]


def test_damaged_recording_ends_in_time(damaged: list[Path], tmp_path: Path) -> None:
    """Nothing crashes, hangs or fails; some are refused and most are made."""
    with ThreadPoolExecutor(PARTS) as pool:
        parts = pool.map(lambda i: _ends(damaged[i::PARTS], tmp_path / f"part{i}"), range(PARTS))
        ends = [line for part in parts for line in part]
    outcomes = [line.split(" ends as ")[1].split(" after ")[0] for line in ends]
    assert len(outcomes) == COUNT
    assert [line for line, outcome in zip(ends, outcomes, strict=True) if outcome not in ("made", "refused")] == []
    assert outcomes.count("made") > COUNT // 2
    assert outcomes.count("refused") > COUNT // 10


def test_damaged_picture_ends_in_time(tmp_path: Path) -> None:
    """Six kinds, hurt in eight ways; what is read at all is read in the memory that the sound ones take."""
    (tmp_path / "sound").mkdir()
    (tmp_path / "hurt").mkdir()
    files = list(mutants.mutants(mutants.pictures(tmp_path / "sound"), tmp_path / "hurt", PICTURES))
    ends = [line.split(" ends as ")[1] for line in _ends(files, tmp_path / "made")]
    outcomes = [end.split(" after ")[0] for end in ends]
    assert {*outcomes} == {"made", "refused"}
    assert len(outcomes) == PICTURES
    assert outcomes.count("refused") > PICTURES // 10
    assert max(int(end.split(" with ")[1].split(" MB")[0]) for end in ends) < 500


def test_build_with_a_damaged_recording_names_it(damaged: list[Path], tmp_path: Path) -> None:
    """The command ends with 0, 1 or 3, without a traceback; a recording that cannot be read is named."""
    chosen = damaged[:: len(damaged) // _BUILT][:_BUILT]
    with ThreadPoolExecutor(PARTS) as pool:
        runs = list(pool.map(lambda path: _build(path, tmp_path / path.stem), chosen))
    for path, run in zip(chosen, runs, strict=True):
        assert run.returncode in (0, 1, 3), (path.name, run.returncode, run.stderr)
        assert "Traceback" not in run.stderr, (path.name, run.stderr)
        if "cannot be read" in run.stderr:
            assert f"recordings/{path.name}" in run.stderr
    assert sum("cannot be read" in run.stderr for run in runs) > 0


def _build(recording: Path, home: Path) -> "subprocess.CompletedProcess[str]":
    (home / "recordings").mkdir(parents=True)
    (home / "recordings" / recording.name).write_bytes(recording.read_bytes())
    text = f"---\nrecordings: recordings/{recording.name}\n---\n# Cap\n\n## Work\n\n### 0:00-0:01 Prise off the cap\n"
    (home / "procedure.md").write_text(text, encoding="utf-8")
    command = [sys.executable, "-m", "procbuilder.cli", "build", str(home)]
    return subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)
