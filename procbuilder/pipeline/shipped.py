"""What comes with the program: where the templates and the demo lie, and how one program is told from another."""

import sys
from pathlib import Path

_PACKAGE = Path(__file__).parent.parent
_LIBRARIES = ("site-packages", "dist-packages")
"""Names of the folders in which installed libraries lie."""


def shipped(name: str) -> Path:
    """A folder that comes with procbuilder, such as ``templates`` or ``sample_media``.

    It lies inside the installed package, or beside it in a clone.
    """
    inside = _PACKAGE / "shipped" / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


def program() -> str:
    """Tells this program from any that may publish the same edition in another way.

    It names size and time of each file of procbuilder and its templates, and the time of the folders of libraries,
    which change when one is installed, updated or removed.
    """
    every = (path for folder in (_PACKAGE, shipped("templates")) for path in folder.rglob("*"))
    own = sorted(path for path in every if path.is_file() and path.suffix != ".pyc")
    files = [(str(path), status.st_size, status.st_mtime_ns) for path in own for status in [path.stat()]]
    folders = (folder for folder in map(Path, sys.path) if folder.name in _LIBRARIES and folder.is_dir())
    libraries = [(str(folder), folder.stat().st_mtime_ns) for folder in folders]
    return f"{files} {libraries}"
