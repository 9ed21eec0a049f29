"""WebVTT subtitles, as in the standard of the W3C."""

import re
from html import unescape

from procbuilder.read.cues import ARROW, Cues, Format, read_cues
from procbuilder.read.text import TextFile

HEADER = "WEBVTT"
_COMMENTS = ("NOTE", "STYLE", "REGION")


def read_webvtt(source: TextFile) -> Cues:
    """The cues; header, notes, styles and regions are none."""
    return read_cues(source, _FORMAT)


def _is_comment(first: int, block: list[str]) -> bool:
    return first == 1 or block[0].split(maxsplit=1)[0] in _COMMENTS


def _words(lines: list[str]) -> str:
    import webvtt

    safe = [HEADER, "", "00:00.000 --> 00:01.000", *lines, ""]
    return unescape("\n".join(caption.text for caption in webvtt.from_string("\n".join(safe)).captions))


_FORMAT = Format(
    name="webvtt",
    time=re.compile(r"(?:(\d{1,4}):)?([0-5]\d):([0-5]\d)\.(\d{3})\Z"),
    begins=lambda line: ARROW in line,
    words=_words,
    is_comment=_is_comment,
)
