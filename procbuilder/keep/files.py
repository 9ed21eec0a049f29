"""Whole writes: a file is there complete, or it is what it was before."""

import os
import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from tempfile import mkstemp

from procbuilder.model.fault import CannotRead, CannotWrite, ChangedMeanwhile, cause_of

_BESIDE = ".new"
_COMPLETE = "complete"


@contextmanager
def explained(path: Path) -> Iterator[None]:
    """Turn what the system says about a failed write into a fault that names the file."""
    try:
        yield
    except OSError as error:
        raise CannotWrite(path, error.errno) from None


@contextmanager
def readable(path: Path) -> Iterator[None]:
    """Turn what the system says about a failed reading into a fault that names the file."""
    try:
        yield
    except OSError as error:
        raise CannotRead(path, cause_of(error.errno)) from None


def write_whole(path: Path, data: bytes) -> None:
    """Write a file beside its place and move it there; the folder is made when it is missing.

    Raises:
        CannotWrite: disk full, folder read-only, file held open.
    """
    with explained(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = mkstemp(dir=path.parent, prefix=".new-")
        beside = Path(name)
        try:
            with open(handle, "wb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            beside.chmod(0o644)
            beside.replace(path)
        finally:
            beside.unlink(missing_ok=True)


def copy_whole(source: Path, path: Path) -> None:
    """Copy a file beside its place and move it there, without reading it into memory.

    Raises:
        CannotRead: the system does not let us read the source.
        CannotWrite: disk full, folder read-only, file held open.
    """
    with readable(source):
        source.open("rb").close()
    beside = path.with_name(f".new-{path.name}")
    with explained(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        try:
            shutil.copyfile(source, beside)
            beside.replace(path)
        finally:
            beside.unlink(missing_ok=True)


def replace_unchanged(path: Path, before: bytes, after: bytes) -> None:
    """Write a source file anew, unless somebody changed it since it was read.

    Raises:
        ChangedMeanwhile: the file no longer holds ``before``.
        CannotWrite: see ``write_whole``.
    """
    if path.read_bytes() != before:
        raise ChangedMeanwhile(path)
    write_whole(path, after)


def replace_together(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write several files, in their order, so that all are new, or all are old, once ``finish_together`` has run.

    They are written whole below ``folder/.new`` first; only then are they moved to their places.

    Raises:
        CannotWrite: see ``write_whole``; when not all could be written, none has been moved.
    """
    finish_together(folder)
    try:
        for name, data in files.items():
            write_whole(folder / _BESIDE / name, data)
        write_whole(folder / _BESIDE / _COMPLETE, "\n".join(files).encode())
    finally:
        finish_together(folder)


def is_unfinished(folder: Path) -> bool:
    """True when a killed command has left files that ``finish_together`` moves or throws away."""
    return (folder / _BESIDE).is_dir()


def finish_together(folder: Path) -> None:
    """Move what a killed command had written completely, and throw away what it had not."""
    beside = folder / _BESIDE
    if not is_unfinished(folder):
        return
    with explained(folder):
        if (beside / _COMPLETE).is_file():
            for name in (beside / _COMPLETE).read_text(encoding="utf-8").split("\n"):
                if (beside / name).is_file():
                    (folder / name).parent.mkdir(parents=True, exist_ok=True)
                    (beside / name).replace(folder / name)
        shutil.rmtree(beside)


def remove(path: Path) -> None:
    """Take away a file, if it is there."""
    with explained(path):
        path.unlink(missing_ok=True)


def remove_others(folder: Path, wanted: set[str]) -> None:
    """Take away the files of a folder that nothing refers to any more."""
    if not folder.is_dir():
        return
    with explained(folder):
        for path in sorted(folder.iterdir()):
            if path.is_file() and path.name not in wanted:
                path.unlink()
