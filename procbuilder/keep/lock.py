"""One procbuilder at a time in a folder."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from procbuilder.keep.files import explained
from procbuilder.model.fault import Busy


@contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Hold the folder until the block ends; a killed command leaves no lock behind.

    Raises:
        Busy: another procbuilder holds it.
    """
    from filelock import FileLock, Timeout

    path = folder / ".procbuilder" / "lock"
    with explained(path):
        path.parent.mkdir(parents=True, exist_ok=True)
    lock = FileLock(path, timeout=0)
    try:
        lock.acquire()
    except Timeout:
        raise Busy(folder) from None
    try:
        yield
    finally:
        lock.release()
