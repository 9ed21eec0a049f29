"""procbuilder build: from a procedure folder to its page, PDF and data.

read → probe and scan (cached) → infer and check → choose stills, cut clips (cached) → publish
"""

import os
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from procbuilder.keep.cache import Cache
from procbuilder.keep.files import finish_together, is_unfinished
from procbuilder.keep.lock import locked
from procbuilder.model.edition import Edition
from procbuilder.model.fault import Busy, NoProcedure
from procbuilder.model.problem import Problem
from procbuilder.pipeline.assemble import assemble
from procbuilder.pipeline.examine import examine
from procbuilder.pipeline.narration import read_narration
from procbuilder.pipeline.output import publish
from procbuilder.pipeline.paths import LIBRARY_FILE
from procbuilder.pipeline.recordings import Report, filmed, read
from procbuilder.pipeline.scanning import scan
from procbuilder.pipeline.studio import Studio
from procbuilder.read.procedure import FILE_NAME, read_procedure

OUT = "out"


@dataclass(frozen=True, slots=True)
class Built:
    """What a build has made."""

    folder: Path
    edition: Edition
    unprintable: tuple[str, ...]
    """Characters that the PDF shows as an empty box."""
    filmed: tuple[str, ...] = ()
    """When each recording was filmed, by its clock; never to be published."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All problems, worst first."""
        return self.edition.problems

    @property
    def page(self) -> Path:
        """The page to open."""
        return self.folder / OUT / "index.html"

    @property
    def print(self) -> Path:
        """The PDF."""
        return self.folder / OUT / "procedure.pdf"


def silent(_what: str, _done: int, _of: int) -> None:
    """A report that nobody reads."""


def procedures(folder: Path) -> tuple[Path, ...]:
    """The procedure folders that a folder stands for: itself, or all those of a library.

    Raises:
        NoProcedure: there is none.
    """
    if (folder / FILE_NAME).is_file():
        return (folder,)
    inside = tuple(sorted(path.parent for path in folder.glob(f"*/{FILE_NAME}")))
    if not inside or not (folder / LIBRARY_FILE).is_file():
        raise NoProcedure(folder)
    return inside


def build(folder: Path, report: Report = silent, *, thorough: bool = False) -> Built:
    """Build one procedure; the old output stays whole until the new one is.

    Args:
        folder: Of the procedure.
        report: Told what is done.
        thorough: Look for cuts in every picture of the steps, not only where one is suspected.

    Raises:
        Fault: it cannot be built at all; what is wrong in the text is no fault but a problem.
    """
    if not (folder / FILE_NAME).is_file():
        raise NoProcedure(folder)
    with locked(folder):
        finish_together(folder / OUT)
        cache = Cache(folder)
        procedure, problems = read_procedure(folder)
        narration, more = read_narration(procedure)
        found = read(procedure, cache, report)
        footage = scan(procedure, found, cache, report, thorough=thorough)
        examined = examine(procedure, problems + more, found, footage)
        studio = Studio(cache, found, folder)
        edition = assemble(examined, narration, found, studio, report)
        report("writing page and PDF", 1, 1)
        unprintable = publish(edition, studio.files, folder / OUT, epoch())
        return Built(folder, edition, unprintable, filmed(found))


def finish(out: Path) -> None:
    """Make whole what a killed build had begun to put out; a build that is at work does so itself."""
    if is_unfinished(out):
        with suppress(Busy), locked(out.parent):
            finish_together(out)


def epoch() -> int:
    """Seconds since 1970 that the PDF carries as its date: SOURCE_DATE_EPOCH, else 0.

    PDF/A demands a date, and the day of the build would give other bytes each day.
    """
    text = os.environ.get("SOURCE_DATE_EPOCH", "")
    return int(text) if text.isdigit() else 0
