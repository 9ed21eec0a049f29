"""Subtitles of the narration, and the words said during a clip."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from procbuilder.model.fault import CannotRead, InputFault
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Cue, Narration, Procedure
from procbuilder.model.timecode import Span
from procbuilder.pipeline.paths import find
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import read_file

MOSTLY = Fraction(1)
"""Seconds of a cue, or half of a shorter one, that must lie in a stretch for its words to be shown there."""


def read_narration(procedure: Procedure) -> tuple[tuple[Narration, ...], tuple[Problem, ...]]:
    """The narration of every recording that has one; a file that cannot be read is a problem."""
    narration: list[Narration] = []
    problems: list[Problem] = []
    for named in procedure.front.narration:
        path = find(procedure.folder, named)
        if isinstance(path, Problem):
            problems.append(replace(path, severity=Severity.ASK, subject=named.path))
            continue
        try:
            cues, found = read_subtitles(read_file(path, named.path))
        except (InputFault, CannotRead) as fault:
            facts = fault.named(named.path)
            problems.append(Problem("narration", Severity.ASK, named.place, facts, fault.form, 4, subject=named.path))
            continue
        narration.append(Narration(named.name, cues))
        problems += found
    return tuple(narration), tuple(problems)


def said_in(
    narration: Iterable[Narration], stretches: Iterable[Span], begin: Fraction = Fraction(0)
) -> tuple[Cue, ...]:
    """The cues within stretches of footage that are played one after the other, in seconds of the clip.

    ``begin`` is where in the clip the footage begins.
    """
    by_recording = {entry.recording: entry.cues for entry in narration}
    cues: list[Cue] = []
    for stretch in stretches:
        for cue in by_recording.get(stretch.recording, ()):
            start, end = max(cue.start, stretch.start), min(cue.end, stretch.end)
            if cue.text and end > start and end - start >= min(MOSTLY, (cue.end - cue.start) / 2):
                shift = begin - stretch.start
                cues.append(replace(cue, start=start + shift, end=end + shift))
        begin += stretch.seconds
    return tuple(sorted(cues, key=lambda cue: (cue.start, cue.end)))
