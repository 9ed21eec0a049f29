"""Files that a procedure names: only inside its own folder or its library."""

from pathlib import Path

from procbuilder.model.facts import facts
from procbuilder.model.fault import cause_of
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import NamedFile

LIBRARY_FILE = "workshop.toml"
OUT = "out"
"""Folder of a procedure's outputs."""


def find(folder: Path, named: NamedFile) -> Path | Problem:
    """The file behind a typed path, or the problem with it."""
    try:
        path = (folder / named.path).resolve()
        there, is_folder = path.is_file(), path.is_dir()
    except PermissionError as error:
        denied = facts(path=named.path, why=cause_of(error.errno))
        return Problem("unreadable", Severity.STOP, named.place, denied, "denied", 4)
    except (OSError, RuntimeError, ValueError):
        return Problem("path", Severity.STOP, named.place, facts(path=named.path[:60]), "impossible", 4)
    if not any(path.is_relative_to(room) for room in _rooms(folder)):
        return Problem("path", Severity.STOP, named.place, facts(path=named.path), "outside", 3)
    if not there:
        form = "folder" if is_folder else "missing"
        return Problem("missing-file", Severity.STOP, named.place, facts(path=named.path), form, 4)
    return path


def _rooms(folder: Path) -> tuple[Path, ...]:
    home = folder.resolve()
    return (home, home.parent) if (home.parent / LIBRARY_FILE).is_file() else (home,)
