"""The practice log of a procedure and what its library says about times."""

from dataclasses import dataclass
from pathlib import Path

from procbuilder.model.practice import Run
from procbuilder.model.problem import Problem
from procbuilder.model.workshop import UNKNOWN_WORKSHOP, Workshop
from procbuilder.pipeline.paths import LIBRARY_FILE
from procbuilder.read.practice import read_practice
from procbuilder.read.text import read_file
from procbuilder.read.workshop import read_workshop

LOG = "times.csv"


@dataclass(frozen=True, slots=True)
class Times:
    """What times are known besides the procedure itself."""

    runs: tuple[Run, ...] = ()
    workshop: Workshop = UNKNOWN_WORKSHOP
    problems: tuple[Problem, ...] = ()


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
    return Times(runs, workshop, problems + more)


def read_library(library: Path) -> tuple[Workshop, tuple[Problem, ...]]:
    """The workshop file of a library; nothing when there is none."""
    path = library / LIBRARY_FILE
    return read_workshop(read_file(path, f"../{LIBRARY_FILE}")) if path.is_file() else (UNKNOWN_WORKSHOP, ())
