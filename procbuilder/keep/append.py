"""Logs that only grow: lines are added at the end, whole, and never by two at once."""

from collections.abc import Callable
from pathlib import Path

from procbuilder.keep.files import write_whole
from procbuilder.keep.lock import locked

PATIENCE = 10.0
"""Seconds to wait for somebody else who adds lines."""


def append(path: Path, header: str, more: Callable[[bytes], list[str]]) -> list[str]:
    """Add lines to a log; returns them. Without any, nothing is written.

    Args:
        path: the log; it is begun with the header when it is not there.
        header: its first line.
        more: called with what the log holds, while nobody else can add; returns the lines to add.

    Raises:
        Busy: somebody else kept adding.
        CannotWrite: the log is as it was.
    """
    with locked(path.parent, name=f"{path.name}.lock", patience=PATIENCE):
        before = path.read_bytes() if path.is_file() else f"{header}\n".encode()
        lines = more(before)
        if lines:
            end = b"" if before.endswith(b"\n") else b"\n"
            write_whole(path, before + end + "".join(f"{line}\n" for line in lines).encode())
        return lines
