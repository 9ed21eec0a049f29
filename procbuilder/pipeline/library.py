"""What procedures are read from: their own folders, and what the library around them tells of all."""

import os
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from procbuilder.infer.alike import NO_NEIGHBOURS, Neighbours, gathered
from procbuilder.keep.files import readable
from procbuilder.model.fault import Fault, NoProcedure
from procbuilder.model.practice import PracticeLog, Run
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import Procedure
from procbuilder.model.workshop import UNKNOWN_WORKSHOP, Workshop
from procbuilder.pipeline.paths import LIBRARY_FILE
from procbuilder.read.practice import PracticeFile, read_practice
from procbuilder.read.procedure import FILE_NAME, read_procedure
from procbuilder.read.text import read_file
from procbuilder.read.workshop import read_workshop

LOG = "times.csv"


@dataclass(frozen=True, slots=True)
class Source:
    """A procedure as it stands in its folder."""

    folder: Path
    procedure: Procedure
    runs: tuple[Run, ...] = ()
    """Rows of its log."""
    problems: tuple[Problem, ...] = ()
    """Of its text and its log."""


@dataclass(frozen=True, slots=True)
class Failed:
    """A procedure that a command could not go on with."""

    folder: Path
    fault: Fault


@dataclass(frozen=True, slots=True)
class Library:
    """What all procedures of a folder share; nothing when it is no library."""

    workshop: Workshop = UNKNOWN_WORKSHOP
    neighbours: Neighbours = NO_NEIGHBOURS
    problems: tuple[Problem, ...] = ()

    def beside(self, source: Source) -> Neighbours:
        """What the logs of the others tell."""
        return replace(self.neighbours, but=source.folder.resolve().name)


def is_procedure(folder: Path) -> bool:
    """Whether a folder holds a procedure.

    Raises:
        CannotRead: the system does not let us look into it.
    """
    with readable(folder):
        return (folder / FILE_NAME).is_file()


def procedures(folder: Path) -> tuple[Path, ...]:
    """The procedure folders that a folder stands for: itself, or all those of a library in the order of their names.

    Raises:
        NoProcedure: there is none.
    """
    if is_procedure(folder):
        return (folder,)
    inside = tuple(sorted(each for each in folder.glob("*/") if _is_shut(each) or is_procedure(each)))
    if not inside or not (folder / LIBRARY_FILE).is_file():
        raise NoProcedure(folder)
    return inside


def _is_shut(folder: Path) -> bool:
    """Whether we may not look into a folder: it is told, since it may hold a procedure."""
    return not os.access(folder, os.R_OK | os.X_OK)


def read_source(folder: Path) -> Source:
    """A procedure and its log.

    Raises:
        NoProcedure, CannotRead, NotText, NoText: there is nothing that can be read.
    """
    if not is_procedure(folder):
        raise NoProcedure(folder)
    procedure, problems = read_procedure(folder)
    log = read_practice(read_file(folder / LOG)) if (folder / LOG).is_file() else PracticeFile()
    return Source(folder, procedure, log.runs, problems + log.problems)


def read_library(folder: Path) -> tuple[Library, tuple[Source | Failed, ...]]:
    """A library and its procedures in the order of their names, each file of them read once.

    Raises:
        NoProcedure: it is none.
        CannotRead, NotText: the workshop file cannot be read.
    """
    sources = tuple(_read(each) for each in procedures(folder))
    workshop, problems = read_workshop_of(folder)
    logs = (log for source in sources if isinstance(source, Source) for log in _log(source))
    return Library(workshop, gathered(logs, workshop.words), problems), sources


def library_around(source: Source) -> Library:
    """The library of a procedure that is worked on alone. Of the others only what its estimate asks for is read.

    What is wrong with them is told where they are worked on themselves.

    Raises:
        CannotRead, NotText: the workshop file cannot be read.
    """
    home = source.folder.resolve()
    workshop, problems = read_workshop_of(home.parent)
    logs: list[PracticeLog] = []
    if source.runs and (home.parent / LIBRARY_FILE).is_file():
        for log in sorted(home.parent.glob(f"*/{LOG}")):
            with suppress(Fault):
                logs += _log(read_source(log.parent)) if log.parent != home else ()
    return Library(workshop, gathered(logs, workshop.words), problems)


def read_workshop_of(library: Path) -> tuple[Workshop, tuple[Problem, ...]]:
    """The workshop file of a library; nothing when there is none."""
    path = library / LIBRARY_FILE
    return read_workshop(read_file(path, f"../{LIBRARY_FILE}")) if path.is_file() else (UNKNOWN_WORKSHOP, ())


def _read(folder: Path) -> Source | Failed:
    try:
        return read_source(folder)
    except Fault as fault:
        return Failed(folder, fault)


def _log(source: Source) -> Iterator[PracticeLog]:
    if source.runs:
        yield PracticeLog(source.folder.resolve().name, source.procedure, source.runs)
