"""procbuilder demo: the sample library copied to a folder and built."""

import shutil
from pathlib import Path

from procbuilder.keep.files import explained
from procbuilder.model.fault import AlreadyThere
from procbuilder.pipeline.build import Built, build
from procbuilder.pipeline.paths import LIBRARY_FILE
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.shipped import shipped

PROCEDURES = ("hub", "drill")
"""Folders of the library, in the order in which they are built and told."""


def demo(folder: Path, progress: Progress) -> tuple[Built, ...]:
    """Copy the demo to a folder and build it; a demo that is there already is built again as it is.

    Raises:
        AlreadyThere: the folder holds something else.
    """
    if not (folder / LIBRARY_FILE).is_file():
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            raise AlreadyThere(folder)
        _copy(folder)
    return tuple(build(folder / name, progress) for name in PROCEDURES)


def _copy(folder: Path) -> None:
    """The procedures first, then the file that makes the folder a library."""
    source = shipped("sample_media")
    with explained(folder):
        for name in PROCEDURES:
            shutil.copytree(source / name, folder / name)
        shutil.copy(source / LIBRARY_FILE, folder / LIBRARY_FILE)
