"""procbuilder build LIBRARY: what all share is read once, then each procedure is a job of its own."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from procbuilder.model.fault import Fault
from procbuilder.model.workshop import Qualification
from procbuilder.pipeline.build import USUAL, Built, Options, build_source, reader_of
from procbuilder.pipeline.library import Failed, Library, Source, read_library
from procbuilder.pipeline.progress import Progress


@dataclass(frozen=True, slots=True)
class Job:
    """One procedure of a library that is to be built."""

    folder: Path
    run: Callable[[Progress], Built | Failed]


def jobs(folder: Path, options: Options = USUAL, today: date | None = None) -> tuple[Job, ...]:
    """One job for each procedure of a library, whose files are read once; one that fails keeps nobody from the others.

    Raises:
        NoProcedure: it is no library.
        NotQualified: see ``build``.
    """
    library, sources = read_library(folder)
    found = [source for source in sources if isinstance(source, Source)]
    readers = {source.folder: reader_of(source, library, options, today) for source in found}
    return tuple(
        Job(source.folder, partial(_attempt, source, library, readers.get(source.folder), options))
        for source in sources
    )


def _attempt(
    source: Source | Failed, library: Library, reader: Qualification | None, options: Options, progress: Progress
) -> Built | Failed:
    """A procedure that fails keeps its last good output."""
    if isinstance(source, Failed):
        return source
    try:
        return build_source(source, library, reader, options, progress)
    except Fault as fault:
        return Failed(source.folder, fault)
