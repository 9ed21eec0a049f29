"""SubRip subtitles."""

import re
from pathlib import PurePath

from procbuilder.read.cues import Cues, Format, problem, read_cues
from procbuilder.read.text import TextFile

_TIMES = re.compile(r"\d\s*-->\s*\d")
_TAG = re.compile(r"</?(?:b|i|u|s|font)\b[^<>]*>", re.IGNORECASE)
"""Markup of SubRip; any other ``<`` and ``>`` belongs to the words, unlike in pysrt."""


def read_subrip(source: TextFile) -> Cues:
    """The cues; of a WebVTT file without its first line, too, which is then told."""
    cues, problems = read_cues(source, _FORMAT)
    if PurePath(source.name).suffix.casefold() == ".vtt":
        problems = (problem(source, 1, "no-webvtt", source.name), *problems)
    return cues, problems


def _words(lines: list[str]) -> str:
    import pysrt

    safe = ["1", "00:00:00,000 --> 00:00:01,000", *lines]
    return _TAG.sub("", pysrt.SubRipItem.from_lines(safe).text)


_FORMAT = Format(
    name="subrip",
    time=re.compile(r"(\d{2,4}):([0-5]\d):([0-5]\d)[,.](\d{3})\Z"),
    begins=_TIMES.search,
    words=_words,
    numbered=True,
)
