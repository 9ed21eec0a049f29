"""Files that a procedure names: only inside its own folder or its library."""

from pathlib import Path

from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import NamedFile

LIBRARY_FILE = "workshop.toml"
OUT = "out"
"""Folder of a procedure's outputs."""


def find(folder: Path, named: NamedFile) -> Path | Problem:
    """The file behind a typed path, or the problem with it."""
    try:
        path = (folder / named.path).resolve()
        there, is_folder = path.is_file(), path.is_dir()
    except (OSError, RuntimeError, ValueError):
        what = f"{named.path[:60]} cannot be a path: it is too long, leads back to itself or holds a NUL byte"
        return worded(Severity.STOP, named.place, what, "name the file as the folder shows it", "path", 4)
    if not any(path.is_relative_to(room) for room in _rooms(folder)):
        what = f"{named.path} leads out of the procedure folder"
        return worded(Severity.STOP, named.place, what, "copy the file into the folder and name it there", "path", 3)
    if not there:
        what = f"{named.path} is a folder" if is_folder else f"{named.path} is not there"
        instead = f"put the file at {named.path} in the procedure folder, or correct the path"
        return worded(Severity.STOP, named.place, what, instead, "missing-file", 4)
    return path


def _rooms(folder: Path) -> tuple[Path, ...]:
    home = folder.resolve()
    return (home, home.parent) if (home.parent / LIBRARY_FILE).is_file() else (home,)
