"""SubRip and WebVTT subtitles: every cue with its line, every cue that is not read reported.

Both libraries accept or drop cues without a word: pysrt reads ``,5`` as 5 ms and drops a cue with
a bad time, webvtt-py takes times that the W3C standard drops. So each timing line is checked first,
and the libraries read one cue at a time.
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from html import unescape
from itertools import pairwise
from pathlib import PurePath

from procbuilder.model.facts import facts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Cue
from procbuilder.read.text import TextFile

_ARROW = "-->"
_SRT = re.compile(r"(\d{2,4}):([0-5]\d):([0-5]\d)[,.](\d{3})\Z")
_VTT = re.compile(r"(?:(\d{1,4}):)?([0-5]\d):([0-5]\d)\.(\d{3})\Z")
_SRT_TIMES = re.compile(r"\d\s*-->\s*\d")
_SRT_TAG = re.compile(r"</?(?:b|i|u|s|font)\b[^<>]*>", re.IGNORECASE)
"""Markup of SubRip; any other ``<`` and ``>`` belongs to the words, unlike in pysrt."""

Numbered = tuple[int, list[str]]
"""Line number of the first line, and the lines of one block."""


def is_subtitles(name: str) -> bool:
    """True when a file name says SubRip or WebVTT."""
    return PurePath(name).suffix.casefold() in (".srt", ".vtt")


def read_subtitles(source: TextFile) -> tuple[tuple[Cue, ...], tuple[Problem, ...]]:
    """Cues in the order of the file, and a problem for each cue that is odd or cannot be read."""
    webvtt = source.text.startswith("WEBVTT")
    cues: list[Cue] = []
    problems: list[Problem] = []
    if PurePath(source.name).suffix.casefold() == ".vtt" and not webvtt:
        problems.append(_problem(source, 1, "no-webvtt", source.name))
    for first, block in _cue_blocks(source, webvtt):
        cue, found = _read_cue(source, first, block, webvtt)
        problems += found
        cues += [cue] if cue else []
    return tuple(cues), tuple(problems)


def _cue_blocks(source: TextFile, webvtt: bool) -> Iterator[Numbered]:
    """Blocks between blank lines; header, notes, styles and regions of WebVTT are no cues.

    A line of times begins a cue wherever it stands, as in the W3C standard.
    """
    for first, block in _blocks(source.lines):
        times = [at for at, line in enumerate(block) if (_ARROW in line if webvtt else _SRT_TIMES.search(line))]
        words = webvtt and (first == 1 or block[0].split(maxsplit=1)[0] in ("NOTE", "STYLE", "REGION"))
        begin = times[:1] if words else [0]
        cuts = [at - (not webvtt and block[at - 1].strip().isdecimal()) for at in times[1:]]
        for since, until in pairwise([*begin, *cuts, len(block)]):
            yield first + since, block[since:until]


def _blocks(lines: list[str]) -> Iterator[Numbered]:
    block: list[str] = []
    for number, line in enumerate([*lines, ""], 1):
        if line.strip():
            block.append(line)
        elif block:
            yield number - len(block), block
            block = []


def _read_cue(source: TextFile, first: int, block: list[str], webvtt: bool) -> tuple[Cue | None, list[Problem]]:
    at = next((index for index, line in enumerate(block) if _ARROW in line), None)
    kind = "webvtt" if webvtt else "subrip"
    if at is None:
        return None, [_problem(source, first, f"no-cue-{kind}", block[0])]
    line = first + at
    times = [_seconds(text, webvtt) for text in _time_texts(block[at])]
    if len(times) != 2 or None in times:
        return None, [_problem(source, line, f"times-{kind}", block[at].strip())]
    start, end = (time for time in times if time is not None)
    problems = []
    if end <= start:
        form = "ends-first" if end < start else "no-length"
        problems.append(_problem(source, line, form, block[at].strip(), Severity.ADVICE))
    text = _payload(block[at:], webvtt)
    if not text:
        problems.append(_problem(source, line, "no-words", block[at].strip(), Severity.ADVICE))
    return Cue(Place(source.name, line), start, end, text), problems


def _time_texts(line: str) -> list[str]:
    """The two times; what WebVTT puts behind them (cue settings) and SubRip positions are left out."""
    before, _, after = line.partition(_ARROW)
    return [before.strip(), *after.split()[:1]]


def _seconds(text: str, webvtt: bool) -> Fraction | None:
    match = (_VTT if webvtt else _SRT).match(text)
    if not match:
        return None
    hours, minutes, seconds, thousandths = (int(part or 0) for part in match.groups())
    return Fraction(hours * 3600 + minutes * 60 + seconds) + Fraction(thousandths, 1000)


def _payload(block: list[str], webvtt: bool) -> str:
    """The words of one cue without their markup, on one line each."""
    if webvtt:
        import webvtt as library

        safe = ["00:00.000 --> 00:01.000", *block[1:]]
        captions = library.from_string("WEBVTT\n\n" + "\n".join(safe) + "\n").captions
        text = unescape("\n".join(caption.text for caption in captions))
    else:
        import pysrt

        safe = ["1", "00:00:00,000 --> 00:00:01,000", *block[1:]]
        text = _SRT_TAG.sub("", pysrt.SubRipItem.from_lines(safe).text)
    return "\n".join(line.strip() for line in text.splitlines() if line.strip())


def _problem(source: TextFile, line: int, form: str, typed: str, severity: Severity = Severity.ASK) -> Problem:
    """``typed`` is what stands there; an answer names it."""
    return Problem("subtitles", severity, Place(source.name, line), facts(typed=typed), form, 4, subject=typed)
