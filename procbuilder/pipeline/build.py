"""procbuilder build: from a procedure folder to its page, PDF and data.

read → probe (cached) → infer and check → choose stills, cut clips, make the film (cached) → publish
"""

import os
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from procbuilder.keep.cache import Cache
from procbuilder.keep.files import finish_together, is_unfinished
from procbuilder.keep.lock import locked
from procbuilder.model.edition import Edition
from procbuilder.model.fault import Busy, NoProcedure
from procbuilder.model.problem import Problem
from procbuilder.pipeline.assemble import assemble
from procbuilder.pipeline.examine import examine
from procbuilder.pipeline.film import film
from procbuilder.pipeline.narration import read_narration
from procbuilder.pipeline.output import publish
from procbuilder.pipeline.paths import LIBRARY_FILE
from procbuilder.pipeline.recordings import Report, read
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
    film_dropped: bool = False
    """There was a film, which does not fit any more."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All problems, worst first."""
        return self.edition.problems

    @property
    def page(self) -> Path:
        """The page to open."""
        return self.folder / OUT / "index.html"

    @property
    def film(self) -> Path | None:
        """The film of the whole job."""
        return self.folder / OUT / "media" / self.edition.film.file if self.edition.film else None

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


def build(folder: Path, report: Report = silent, *, with_film: bool = False) -> Built:
    """Build one procedure; the old output stays whole until the new one is.

    A film is made only when it is wanted; one that was made before stays as long as it fits.

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
        examined = examine(procedure, problems + more, found)
        studio = Studio(cache, found, folder, procedure.steps)
        edition = assemble(examined, narration, found, studio, report)
        edition = replace(edition, film=film(edition, procedure, narration, studio, report, wanted=with_film))
        report("writing page and PDF", 1, 1)
        had_film = any((folder / OUT / "media").glob("film-*.mp4"))
        unprintable = publish(edition, studio.files, folder / OUT, epoch())
        return Built(folder, edition, unprintable, had_film and edition.film is None)


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
