"""A disk that does not take what is written: full, read-only, held open, in use by another procbuilder."""

import os
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from procbuilder.keep.lock import locked
from procbuilder.model.fault import Busy, CannotWrite
from procbuilder.pipeline.build import build
from procbuilder.pipeline.check import check
from tests.pipeline.bad import run_build
from tests.pipeline.conftest import film
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults, title
from tests.refused import refused

OLD, NEW = "Drill belt cover – off and on", "Belt cover of the drill – off and on"


def made(home: Path) -> Path:
    """A procedure folder."""
    film(home / "recordings" / "strip.mp4")
    (home / "procedure.md").write_text(WHOLE, encoding="utf-8")
    return home


def rewrite(home: Path) -> None:
    """Another title and other footage: page, PDF, data and media change."""
    text = WHOLE.replace(OLD, NEW).replace("0:00.500-0:02", "0:00.250-0:01.750")
    (home / "procedure.md").write_text(text, encoding="utf-8")


def mount(*arguments: str) -> None:
    command = ["mount", *arguments]
    if subprocess.run(command, capture_output=True, check=False).returncode:
        pytest.skip("mounting is not allowed here")


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of three megabytes."""
    if os.name != "posix":
        pytest.skip("small disks are mounted on Linux only")
    place = tmp_path / "disk"
    place.mkdir()
    mount("-t", "tmpfs", "-o", "size=3m", "tmpfs", str(place))
    yield place
    subprocess.run(["umount", "--lazy", str(place)], check=True)


@pytest.mark.parametrize("left", [0, 8, 24, 60, 100, 160, 220])
def test_a_full_disk_is_one_line_and_the_old_output_stays(small_disk: Path, left: int) -> None:
    """The disk runs full with so many kilobytes left: in the cache, among the media or while publishing."""
    home = made(small_disk / "hub")
    build(home)
    rewrite(home)
    room = os.statvfs(small_disk)
    (small_disk / "filler").write_bytes(bytes(room.f_bavail * room.f_frsize - left * 1024))
    code, lines = run_build(home)
    assert (code, len(lines)) == (3, 1)
    assert lines[0].endswith(": cannot be written (the disk is full) – free some space, then run it again")
    assert (faults(home / "out"), title(home / "out")) == ([], OLD)
    (small_disk / "filler").unlink()
    assert run_build(home) == (0, [])
    assert (faults(home / "out"), title(home / "out")) == ([], NEW)


def test_a_read_only_folder_is_one_line_and_can_be_checked(tmp_path: Path) -> None:
    """A read-only mount, since permissions do not bind the superuser."""
    home = made(tmp_path / "hub")
    build(home)
    rewrite(home)
    mount("--bind", str(home), str(home))
    try:
        mount("-o", "remount,bind,ro", str(home))
        code, lines = run_build(home)
        checked = check(home)
    finally:
        subprocess.run(["umount", "--lazy", str(home)], check=True)
    assert (code, len(lines)) == (3, 1)
    assert "cannot be written (it lies where nothing may be written) – make the folder writable" in lines[0]
    assert (faults(home / "out"), title(home / "out")) == ([], OLD)
    assert checked.problems == ()


@pytest.mark.parametrize("held", ["procedure.pdf", "phone.html", "index.html", "manifest.json"])
def test_a_file_held_open_is_one_line_and_the_next_build_makes_all_new(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, held: str
) -> None:
    """Windows refuses to replace a file that a viewer holds open; here the refusal is acted."""
    home = made(tmp_path / "hub")
    build(home)
    rewrite(home)
    replace = Path.replace

    def refuse(self: Path, target: Path) -> Path:
        if target == home / "out" / held:
            raise PermissionError(13, "The process cannot access the file")
        return replace(self, target)

    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", refuse)
        code, lines = run_build(home)
    assert (code, lines) == (
        3,
        ["out: cannot be written (that is not permitted) – "
         "see that it may be written there and that no program holds it open, then run it again"],
    )  # fmt: skip
    assert run_build(home) == (0, [])
    assert (faults(home / "out"), title(home / "out")) == ([], NEW)


def test_a_refusal_before_anything_is_moved_leaves_the_old_output(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    home = made(tmp_path / "hub")
    build(home)
    rewrite(home)

    def refuse(_self: Path, target: Path) -> Path:
        raise PermissionError(13, "Permission denied", str(target))

    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", refuse)
        with refused(CannotWrite, r"cannot be written \(that is not permitted\)"):
            build(home)
    assert (faults(home / "out"), title(home / "out")) == ([], OLD)


def test_a_folder_in_use_is_one_line_and_is_left_alone(tmp_path: Path) -> None:
    home = made(tmp_path / "hub")
    build(home)
    rewrite(home)
    with locked(home):
        code, lines = run_build(home)
        with pytest.raises(Busy):
            build(home)
    assert (code, lines) == (
        3,
        [f"{home}: another procbuilder is at work in this folder – wait until it has finished"],
    )
    assert (faults(home / "out"), title(home / "out")) == ([], OLD)
