"""Whole writes: a file is there complete, or it is what it was before."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import NamedTemporaryFile

from procbuilder.model.fault import CannotWrite, ChangedMeanwhile


@contextmanager
def explained(path: Path) -> Iterator[None]:
    """Turn what the system says about a failed write into a fault that names the file."""
    try:
        yield
    except OSError as error:
        raise CannotWrite(path, error.strerror or str(error)) from None


def write_whole(path: Path, data: bytes) -> None:
    """Write a file beside its place and move it there; the folder is made when it is missing.

    Raises:
        CannotWrite: disk full, folder read-only, file held open.
    """
    with explained(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(dir=path.parent, prefix=".new-", delete=False) as file:
            beside = Path(file.name)
            try:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
                file.close()
                beside.chmod(0o644)
                beside.replace(path)
            except BaseException:
                file.close()
                beside.unlink(missing_ok=True)
                raise


def copy_whole(source: Path, path: Path) -> None:
    """Copy a file beside its place and move it there, without reading it into memory.

    Raises:
        CannotWrite: disk full, folder read-only, file held open.
    """
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


def remove_others(folder: Path, wanted: set[str]) -> None:
    """Take away the files of a folder that nothing refers to any more."""
    if not folder.is_dir():
        return
    with explained(folder):
        for path in sorted(folder.iterdir()):
            if path.is_file() and path.name not in wanted:
                path.unlink()
