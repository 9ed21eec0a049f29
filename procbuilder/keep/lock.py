"""One procbuilder at a time in a folder."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from procbuilder.keep.files import explained
from procbuilder.model.fault import Busy, CannotWrite


@contextmanager
def locked(folder: Path, *, name: str = "lock", patience: float = 0) -> Iterator[None]:
    """Hold the folder until the block ends; a killed command leaves no lock behind.

    Args:
        folder: the procedure folder.
        name: what is held: the whole folder, or one file of it.
        patience: seconds to wait for another one.

    Raises:
        Busy: another procbuilder holds it.
        CannotWrite: the folder is read-only.
    """
    from filelock import FileLock, Timeout

    path = folder / ".procbuilder" / name
    with explained(path):
        path.parent.mkdir(parents=True, exist_ok=True)
    lock = FileLock(path, timeout=patience)
    try:
        lock.acquire()
    except Timeout:
        raise Busy(folder) from None
    except OSError as error:
        raise CannotWrite(path, error.errno) from None
    try:
        yield
    finally:
        lock.release()
