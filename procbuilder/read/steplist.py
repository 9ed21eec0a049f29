"""Rough step lists as people have them: plain lines, tables, subtitles; one reader a format."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import PurePath

from procbuilder.model.procedure import ListedStep
from procbuilder.read.listed import Listed
from procbuilder.read.plainlist import read_lines
from procbuilder.read.subtitles import is_subtitles, read_subtitles
from procbuilder.read.tables import read_table
from procbuilder.read.text import TextFile


def _of_cues(source: TextFile) -> Listed:
    """Each cue is a step."""
    cues, problems = read_subtitles(source)
    return tuple(ListedStep(cue.place, " ".join(cue.text.split()), cue.start, cue.end) for cue in cues), problems


def _ends_with(suffix: str) -> Callable[[str], bool]:
    return lambda name: PurePath(name).suffix.casefold() == suffix


@dataclass(frozen=True, slots=True)
class Reader:
    """Reads one format."""

    takes: Callable[[str], bool]
    """Whether a file of this name is written so."""
    read: Callable[[TextFile], Listed]


READERS = (
    Reader(is_subtitles, _of_cues),
    Reader(_ends_with(".csv"), read_table),
    Reader(_ends_with(".tsv"), partial(read_table, delimiter="\t")),
    Reader(lambda _name: True, read_lines),
)
"""The first that takes a file reads it; what nobody else takes is plain lines."""


def read_step_list(source: TextFile) -> Listed:
    """The steps of a list in file order, and a problem for every line that is not one."""
    return next(reader for reader in READERS if reader.takes(source.name)).read(source)
