"""Step lists of plain lines: a time and words."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import ListedStep
from procbuilder.model.timecode import parse_time
from procbuilder.read.listed import Listed, odd_steps, problem
from procbuilder.read.text import TextFile

_TIME = r"\d+:\d+(?::\d+)?(?:[.,]\d+)?"
_LINE = re.compile(
    rf"(?:[-*•]\s+|\d+[.)]\s+)?(?:(?P<name>[a-z][a-z0-9_-]*)\s+)?\[?(?P<start>{_TIME})"
    rf"(?:(?:\s*[-–]\s*|\s+to\s+)(?P<end>{_TIME}))?\]?(?:\s*[-–:]\s+|\s+|\Z)(?P<text>.*)\Z"
)
_SECONDS = r"\d{1,6}(?:\.\d{1,6})?"
_BARE = re.compile(rf"(?P<start>{_SECONDS})(?:\s*[-–]\s*(?P<end>{_SECONDS}))?\s+(?P<text>\D.*)\Z")
_CLOSER = "-"


@dataclass(frozen=True, slots=True)
class _Line:
    """A line that was read: a step, or the end of the step before it."""

    step: ListedStep
    closes: bool = False


def read_lines(source: TextFile) -> Listed:
    """The steps, and a problem for every line that is none; a line whose words are ``-`` ends the one before."""
    numbered = [(number, line.strip()) for number, line in enumerate(source.lines, 1) if line.strip()]
    bare = bool(numbered) and all(_BARE.match(line) for _, line in numbered)
    lines: list[_Line] = []
    problems: list[Problem] = []
    for number, text in numbered:
        place = Place(source.name, number)
        line = _bare(text, place) if bare else _timed(text, place)
        if isinstance(line, _Line):
            lines.append(line)
        else:
            problems.append(line)
    steps = _with_ends(lines)
    return steps, tuple(problems + list(odd_steps(steps)))


def _bare(text: str, place: Place) -> _Line | Problem:
    match = _BARE.match(text)
    if not match:
        return _rejected(text, place)
    end = Fraction(match["end"]) if match["end"] else None
    return _Line(ListedStep(place, match["text"].strip(), Fraction(match["start"]), end))


def _timed(text: str, place: Place) -> _Line | Problem:
    match = _LINE.match(text)
    if not match:
        return _rejected(text, place)
    start, end = parse_time(match["start"]), parse_time(match["end"]) if match["end"] else None
    for typed, seconds in ((match["start"], start), (match["end"], end)):
        if typed and seconds is None:
            return problem(place, "time", typed=typed)
    assert start is not None
    words = match["text"].strip()
    if not words:
        return problem(place, "time-without-words", time=match["start"])
    return _Line(ListedStep(place, words, start, end, match["name"] or ""), closes=words == _CLOSER)


def _rejected(text: str, place: Place) -> Problem:
    return problem(place, "no-time", typed=text)


def _with_ends(lines: list[_Line]) -> tuple[ListedStep, ...]:
    """A step without an end of its own ends where the next line of the same recording begins."""
    steps = []
    for line, following in pairwise([*lines, None]):
        assert line is not None
        step = line.step
        if line.closes:
            continue
        if step.end is None and following and following.step.recording in ("", step.recording):
            step = replace(step, end=following.step.start)
        steps.append(step)
    return tuple(steps)
