"""In which language a procedure is written."""

from pathlib import Path

from procbuilder.read.front import read_front
from procbuilder.read.procedure import FILE_NAME


def language_named(folder: Path) -> str:
    """What stands behind ``language:`` in the procedure of a folder; empty when nothing can be read there.

    A file that is not UTF-8 is told of in its own language too, so signs that cannot be read do not matter here.
    """
    try:
        text = (folder / FILE_NAME).read_text("utf-8-sig", "replace")
    except OSError:
        return ""
    return read_front(text.split("\n"), FILE_NAME)[0]["language"]
