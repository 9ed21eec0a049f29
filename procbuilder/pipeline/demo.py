"""procbuilder demo: the sample procedure copied to a folder and built."""

import shutil
from pathlib import Path

from procbuilder.keep.files import explained
from procbuilder.model.fault import AlreadyThere
from procbuilder.pipeline.build import Built, build
from procbuilder.pipeline.recordings import Report
from procbuilder.pipeline.shipped import shipped
from procbuilder.read.procedure import FILE_NAME

SAMPLE = "hub"


def demo(folder: Path, report: Report) -> Built:
    """Copy the demo to a folder and build it; a demo that is there already is built again as it is.

    Raises:
        AlreadyThere: the folder holds something else.
    """
    if folder.exists() and not (folder / FILE_NAME).is_file():
        if not folder.is_dir() or any(folder.iterdir()):
            raise AlreadyThere(folder)
        folder.rmdir()
    if not folder.exists():
        with explained(folder):
            shutil.copytree(shipped("sample_media") / SAMPLE, folder)
    return build(folder, report)
