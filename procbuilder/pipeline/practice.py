"""The practice log of a procedure and what its library says about times."""

from dataclasses import dataclass
from pathlib import Path

from procbuilder.model.practice import Logged, Run
from procbuilder.model.problem import Problem
from procbuilder.model.workshop import UNKNOWN_WORKSHOP, Workshop
from procbuilder.pipeline.paths import LIBRARY_FILE
from procbuilder.read.practice import read_practice
from procbuilder.read.procedure import FILE_NAME, read_procedure
from procbuilder.read.text import read_file
from procbuilder.read.workshop import read_workshop

LOG = "times.csv"


@dataclass(frozen=True, slots=True)
class Times:
    """What times are known besides the procedure itself."""

    runs: tuple[Run, ...] = ()
    workshop: Workshop = UNKNOWN_WORKSHOP
    problems: tuple[Problem, ...] = ()
    neighbours: tuple[Logged, ...] = ()
    """The other procedures of the library that have a log."""


def read_times(folder: Path) -> Times:
    """The log and the workshop file of a procedure folder; either may be missing.

    Raises:
        NotText: one of them is not UTF-8 text.
    """
    runs: tuple[Run, ...] = ()
    problems: tuple[Problem, ...] = ()
    if (folder / LOG).is_file():
        log = read_practice(read_file(folder / LOG))
        runs, problems = log.runs, log.problems
    workshop, more = read_library(folder.resolve().parent)
    return Times(runs, workshop, problems + more, _neighbours(folder.resolve()))


def _neighbours(folder: Path) -> tuple[Logged, ...]:
    """What is wrong with their text and logs is told where they are built themselves."""
    if not (folder.parent / LIBRARY_FILE).is_file():
        return ()
    others = (log.parent for log in sorted(folder.parent.glob(f"*/{LOG}")) if log.parent != folder)
    return tuple(_logged(other) for other in others if (other / FILE_NAME).is_file())


def _logged(folder: Path) -> Logged:
    log = read_practice(read_file(folder / LOG, f"../{folder.name}/{LOG}"))
    return Logged(folder.name, read_procedure(folder)[0], log.runs)


def read_library(library: Path) -> tuple[Workshop, tuple[Problem, ...]]:
    """The workshop file of a library; nothing when there is none."""
    path = library / LIBRARY_FILE
    return read_workshop(read_file(path, f"../{LIBRARY_FILE}")) if path.is_file() else (UNKNOWN_WORKSHOP, ())
