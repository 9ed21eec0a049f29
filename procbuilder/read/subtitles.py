"""Subtitles, in whichever format they are: one reader a format."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import PurePath

from procbuilder.read.cues import Cues
from procbuilder.read.subrip import read_subrip
from procbuilder.read.text import TextFile
from procbuilder.read.webvtt import HEADER, read_webvtt


@dataclass(frozen=True, slots=True)
class Reader:
    """Reads one format."""

    suffix: str
    """Of its file names."""
    takes: Callable[[TextFile], bool]
    """Whether it can read a file."""
    read: Callable[[TextFile], Cues]


READERS = (
    Reader(".vtt", lambda source: source.text.startswith(HEADER), read_webvtt),
    Reader(".srt", lambda _source: True, read_subrip),
)
"""The first that takes a file reads it: people give files the names of other formats."""


def is_subtitles(name: str) -> bool:
    """True when a file name says that it holds subtitles."""
    return PurePath(name).suffix.casefold() in {reader.suffix for reader in READERS}


def read_subtitles(source: TextFile) -> Cues:
    """Cues in the order of the file, and a problem for each cue that is odd or cannot be read."""
    return next(reader for reader in READERS if reader.takes(source)).read(source)
