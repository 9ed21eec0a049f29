"""Logs that only grow."""

import subprocess
import sys
from pathlib import Path

import pytest

from procbuilder.keep import append as module
from procbuilder.keep.append import append
from procbuilder.keep.lock import locked
from procbuilder.model.fault import Busy, CannotWrite
from tests.refused import refused

WRITER = """
import sys
from pathlib import Path
from procbuilder.keep.append import append
from tests.refused import refused
for number in range(25):
    append(Path(sys.argv[1]), "who,number", lambda before: [f"{sys.argv[2]},{number},{before.count(10)}"])
"""


def test_a_log_is_begun_with_its_header_and_then_grows(tmp_path: Path) -> None:
    path = tmp_path / "times.csv"
    assert append(path, "a,b", lambda _: ["1,2", "3,4"]) == ["1,2", "3,4"]
    append(path, "a,b", lambda _: ["5,6"])
    assert path.read_bytes() == b"a,b\n1,2\n3,4\n5,6\n"


def test_what_is_there_is_never_touched(tmp_path: Path) -> None:
    """Windows line ends, a missing last one and a byte order mark stay as they are."""
    path = tmp_path / "times.csv"
    path.write_bytes(b"\xef\xbb\xbfa,b\r\n1,2")
    append(path, "a,b", lambda _: ["3,4"])
    assert path.read_bytes() == b"\xef\xbb\xbfa,b\r\n1,2\n3,4\n"


def test_nothing_to_add_writes_nothing(tmp_path: Path) -> None:
    path = tmp_path / "times.csv"
    assert append(path, "a,b", lambda _: []) == []
    assert not path.exists()


def test_two_writers_lose_no_line_and_see_each_others_lines(tmp_path: Path) -> None:
    """Each line carries the number of lines that were there before it."""
    path = tmp_path / "times.csv"
    writers = [subprocess.Popen([sys.executable, "-c", WRITER, str(path), name]) for name in ("ab", "cd")]
    assert [writer.wait(60) for writer in writers] == [0, 0]
    rows = [line.split(",") for line in path.read_text().splitlines()[1:]]
    assert [int(row[2]) for row in rows] == list(range(1, 51))
    for name in ("ab", "cd"):
        assert [int(row[1]) for row in rows if row[0] == name] == list(range(25))


def test_a_failed_write_leaves_the_log_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "times.csv"
    append(path, "a,b", lambda _: ["1,2"])

    def full(_file: int) -> None:
        raise OSError(28, "the disk is full")

    monkeypatch.setattr("os.fsync", full)
    with refused(CannotWrite, "the disk is full"):
        append(path, "a,b", lambda _: ["3,4"])
    assert path.read_bytes() == b"a,b\n1,2\n"


def test_a_writer_that_never_ends_is_told_of(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "PATIENCE", 0.1)
    held = locked(tmp_path, name="times.csv.lock")
    with held, refused(Busy, "another procbuilder is at work in this folder"):
        append(tmp_path / "times.csv", "a,b", lambda _: ["1,2"])
    assert not (tmp_path / "times.csv").exists()


def test_a_build_in_the_same_folder_does_not_hold_the_log(tmp_path: Path) -> None:
    with locked(tmp_path):
        assert append(tmp_path / "times.csv", "a,b", lambda _: ["1,2"]) == ["1,2"]
