"""Whole writes: complete, or what was there before."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from procbuilder.keep.cache import sha256_of
from procbuilder.keep.files import copy_whole, remove_others, replace_unchanged, write_whole
from procbuilder.keep.lock import locked
from procbuilder.model.fault import Busy, CannotRead, CannotWrite, ChangedMeanwhile
from tests.refused import refused


def test_write_makes_the_folder_and_leaves_nothing_beside(tmp_path: Path) -> None:
    write_whole(tmp_path / "out" / "a.txt", b"one")
    write_whole(tmp_path / "out" / "a.txt", b"two")
    assert [(path.name, path.read_bytes()) for path in (tmp_path / "out").iterdir()] == [("a.txt", b"two")]


def test_a_failed_write_keeps_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.txt"
    write_whole(path, b"old")

    def full(_file: int) -> None:
        raise OSError(28, "the disk is full")

    monkeypatch.setattr(os, "fsync", full)
    with refused(CannotWrite, r"a.txt: cannot be written \(the disk is full\) – free some space"):
        write_whole(path, b"new")
    assert [(entry.name, entry.read_bytes()) for entry in tmp_path.iterdir()] == [("a.txt", b"old")]


def test_writing_below_a_file_is_explained(tmp_path: Path) -> None:
    (tmp_path / "a").write_text("x")
    with refused(CannotWrite, r"cannot be written"):
        write_whole(tmp_path / "a" / "b.txt", b"new")


def test_copy_is_the_same_and_leaves_nothing_beside(tmp_path: Path) -> None:
    (tmp_path / "film").write_bytes(bytes(range(256)) * 99)
    copy_whole(tmp_path / "film", tmp_path / "new" / "film")
    assert (tmp_path / "new" / "film").read_bytes() == (tmp_path / "film").read_bytes()
    assert len(list((tmp_path / "new").iterdir())) == 1


def test_a_source_changed_by_someone_else_is_not_written_over(tmp_path: Path) -> None:
    path = tmp_path / "procedure.md"
    path.write_bytes(b"theirs")
    with refused(ChangedMeanwhile, "was changed by someone else meanwhile – nothing was written"):
        replace_unchanged(path, b"mine, as read", b"mine, edited")
    assert path.read_bytes() == b"theirs"
    replace_unchanged(path, b"theirs", b"both")
    assert path.read_bytes() == b"both"


def test_only_files_that_nothing_refers_to_are_removed(tmp_path: Path) -> None:
    for name in ("a.jpg", "b.jpg"):
        (tmp_path / name).touch()
    (tmp_path / "folder").mkdir()
    remove_others(tmp_path, {"b.jpg"})
    remove_others(tmp_path / "nothing", set())
    assert sorted(path.name for path in tmp_path.iterdir()) == ["b.jpg", "folder"]


def test_a_second_procbuilder_in_the_folder_is_told_to_wait(tmp_path: Path) -> None:
    code = (
        "import sys, time; from pathlib import Path; from procbuilder.keep.lock import locked\n"
        "with locked(Path(sys.argv[1])):\n    print('held', flush=True); time.sleep(60)"
    )
    holder = subprocess.Popen([sys.executable, "-c", code, str(tmp_path)], stdout=subprocess.PIPE)
    try:
        assert holder.stdout
        assert holder.stdout.readline() == b"held\n"
        with refused(Busy, "another procbuilder is at work in this folder"), locked(tmp_path):
            pass
    finally:
        holder.kill()
        holder.communicate()
    with locked(tmp_path):
        """A killed holder leaves the folder free."""


def test_a_source_that_cannot_be_read_is_not_blamed_on_the_target(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def closed(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    (tmp_path / "a.mp4").write_bytes(b"film")
    monkeypatch.setattr(Path, "open", closed)
    with refused(CannotRead, r"a.mp4: cannot be read \(that is not permitted\) – get the right to read it"):
        copy_whole(tmp_path / "a.mp4", tmp_path / "copy.mp4")
    with refused(CannotRead, r"a.mp4: cannot be read"):
        sha256_of(tmp_path / "a.mp4")
    assert not (tmp_path / "copy.mp4").exists()
