"""procbuilder check: the problems of a procedure, without opening a recording."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from procbuilder.check.settled import unsettled
from procbuilder.keep.cache import Cache
from procbuilder.keep.files import replace_unchanged
from procbuilder.model.fault import NoProcedure
from procbuilder.model.problem import Problem, worst_first
from procbuilder.model.readability import Counts, counted
from procbuilder.pipeline.examine import Examined, examine
from procbuilder.pipeline.examine import check as broken_rules
from procbuilder.pipeline.library import Failed, Library, Source, library_around, read_library, read_source
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.narration import read_narration
from procbuilder.pipeline.recordings import Filmed, filmed, known
from procbuilder.pipeline.scanning import scanned
from procbuilder.read.edits import add_ids
from procbuilder.read.procedure import FILE_NAME, read_procedure


@dataclass(frozen=True, slots=True)
class Checked:
    """The problems found, and what could not be looked at."""

    folder: Path
    problems: tuple[Problem, ...]
    unread: tuple[str, ...]
    """Recordings whose length is not known yet, so that times were not compared with it."""
    unscanned: tuple[str, ...]
    """Recordings of which it is not known where they are cut, and where somebody talks."""
    filmed: tuple[Filmed, ...]
    """When each recording was filmed, by its clock; never to be published."""
    reading: Counts | None = None
    """Counts of the text that a reader reads at the job; None when it is not in English."""


def check(folder: Path) -> Checked:
    """Check one procedure.

    Raises:
        NoProcedure, CannotRead, NotText, NoText: there is nothing to check.
    """
    source = read_source(folder)
    return _checked(source, library_around(source))


def check_all(folder: Path) -> Iterator[Checked | Failed]:
    """Check all procedures of a library; one that cannot be read keeps nobody from the others.

    Raises:
        NoProcedure: it is no library.
    """
    library, sources = read_library(folder)
    for source in sources:
        yield source if isinstance(source, Failed) else _checked(source, library)


def _checked(source: Source, library: Library) -> Checked:
    folder, procedure = source.folder, source.procedure
    narration, narration_problems = read_narration(procedure)
    cache = Cache(folder)
    recordings = known(procedure, cache)
    footage = scanned(Material(folder, procedure.steps, recordings, cache))
    examined = examine(source, narration, recordings, footage, library)
    broken = broken_rules(examined)
    found = (*source.problems, *library.problems, *narration_problems, *recordings.problems, *broken)
    problems = worst_first(unsettled(procedure, found))
    return Checked(folder, problems, recordings.unread, footage.unscanned, filmed(recordings), _reading(examined))


def _reading(examined: Examined) -> Counts | None:
    """Counts of commands, prose and key points; None in a language for which the formulas were not made."""
    if not examined.lexicon.words.plainly_read:
        return None
    texts: list[str] = []
    for step in examined.procedure.steps:
        texts += [step.command, *(prose.text for prose in step.prose)]
        texts += [part for entry in step.all("Key point") for _, part in entry.parts]
    return counted(texts)


def write_ids(folder: Path) -> int:
    """Write into the source the ids that steps have so far only in memory; returns how many.

    Raises:
        ChangedMeanwhile, CannotWrite: nothing was written.
    """
    path = folder / FILE_NAME
    if not path.is_file():
        raise NoProcedure(folder)
    before = path.read_bytes()
    procedure, _ = read_procedure(folder)
    missing = [step for step in procedure.steps if not step.id_typed]
    after = add_ids(before, missing)
    if after != before:
        replace_unchanged(path, before, after)
    return sum(old != new for old, new in zip(before.splitlines(), after.splitlines(), strict=True))
