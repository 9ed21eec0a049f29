"""Cues out of blocks of lines, whatever the format of the subtitles: each with its line, each odd one reported.

The libraries accept or drop cues without a word: pysrt reads ``,5`` as 5 ms and drops a cue with a bad time,
webvtt-py takes times that the W3C standard drops. So each line of times is checked first, and the libraries read the
words of one cue at a time.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from procbuilder.model.facts import facts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Cue
from procbuilder.read.text import TextFile

ARROW = "-->"

Cues = tuple[tuple[Cue, ...], tuple[Problem, ...]]
"""Cues in the order of the file, and a problem for each one that is odd or cannot be read."""
_Numbered = tuple[int, list[str]]
"""Line number of the first line, and the lines of one block."""


@dataclass(frozen=True, slots=True)
class Format:
    """How a cue is written. A line of times begins one wherever it stands, as in the W3C standard."""

    name: str
    """Stands in the forms of its problems."""
    time: re.Pattern[str]
    """Hours, minutes, seconds, thousandths."""
    begins: Callable[[str], object]
    """True for a line of times."""
    words: Callable[[list[str]], str]
    """What is said in the lines below the times, without markup."""
    is_comment: Callable[[int, list[str]], bool] = lambda _first, _block: False
    """True for a block, by the number of its first line, of which nothing before a line of times is a cue."""
    numbered: bool = False
    """A cue may have its number in the line above the times."""


def read_cues(source: TextFile, format: Format) -> Cues:
    """All cues of a file."""
    cues: list[Cue] = []
    problems: list[Problem] = []
    for first, block in _cue_blocks(source, format):
        cue, found = _read_cue(source, first, block, format)
        problems += found
        cues += [cue] if cue else []
    return tuple(cues), tuple(problems)


def problem(source: TextFile, line: int, form: str, typed: str, severity: Severity = Severity.ASK) -> Problem:
    """``typed`` is what stands there; an answer names it."""
    return Problem("subtitles", severity, Place(source.name, line), facts(typed=typed), form, 4, subject=typed)


def _cue_blocks(source: TextFile, format: Format) -> Iterator[_Numbered]:
    for first, block in _blocks(source.lines):
        times = [at for at, line in enumerate(block) if format.begins(line)]
        begin = times[:1] if format.is_comment(first, block) else [0]
        cuts = [at - (format.numbered and block[at - 1].strip().isdecimal()) for at in times[1:]]
        for since, until in pairwise([*begin, *cuts, len(block)]):
            yield first + since, block[since:until]


def _blocks(lines: list[str]) -> Iterator[_Numbered]:
    """What stands between blank lines."""
    block: list[str] = []
    for number, line in enumerate([*lines, ""], 1):
        if line.strip():
            block.append(line)
        elif block:
            yield number - len(block), block
            block = []


def _read_cue(source: TextFile, first: int, block: list[str], format: Format) -> tuple[Cue | None, list[Problem]]:
    at = next((index for index, line in enumerate(block) if ARROW in line), None)
    if at is None:
        return None, [problem(source, first, f"no-cue-{format.name}", block[0])]
    line, typed = first + at, block[at].strip()
    times = [_seconds(text, format) for text in _time_texts(block[at])]
    if len(times) != 2 or None in times:
        return None, [problem(source, line, f"times-{format.name}", typed)]
    start, end = (time for time in times if time is not None)
    odd = []
    if end <= start:
        odd.append(problem(source, line, "ends-first" if end < start else "no-length", typed, Severity.ADVICE))
    words = "\n".join(said.strip() for said in format.words(block[at + 1 :]).splitlines() if said.strip())
    if not words:
        odd.append(problem(source, line, "no-words", typed, Severity.ADVICE))
    return Cue(Place(source.name, line), start, end, words), odd


def _time_texts(line: str) -> list[str]:
    """The two times; what WebVTT puts behind them (cue settings) and SubRip positions are left out."""
    before, _, after = line.partition(ARROW)
    return [before.strip(), *after.split()[:1]]


def _seconds(text: str, format: Format) -> Fraction | None:
    match = format.time.match(text)
    if not match:
        return None
    hours, minutes, seconds, thousandths = (int(part or 0) for part in match.groups())
    return Fraction(hours * 3600 + minutes * 60 + seconds) + Fraction(thousandths, 1000)
