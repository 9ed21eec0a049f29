"""What comes with the program: where the templates and the demo lie, and how one program is told from another."""

import sysconfig
from pathlib import Path

_PACKAGE = Path(__file__).parent.parent


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
    paths = sysconfig.get_paths()
    libraries = {kind: Path(paths[kind]).stat().st_mtime_ns for kind in ("purelib", "platlib")}
    return f"{files} {libraries}"
