"""The practice log: who worked on which step, when, and for how long."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from procbuilder.model.origin import Place
from procbuilder.model.procedure import Procedure

HEADER = "who,when,step,minutes"
"""First line of ``times.csv``."""

WHO = re.compile(r"[^\W_][\w.-]{0,11}\Z")
"""Initials or a code: letters and digits, at most twelve signs, no space, so that no full name is asked for."""
LONGEST = Decimal(1440)
"""Minutes of one row: a day."""


@dataclass(frozen=True, slots=True)
class Run:
    """One row of the log: one step, done once by one person."""

    who: str
    """Initials or a code."""
    when: str
    """``2026-05-04``, or with the time of day ``2026-05-04T14:30``; sorts by time."""
    step: str
    """Id of the step."""
    minutes: Decimal
    """Hands-on minutes."""
    place: Place

    @property
    def line(self) -> str:
        """As it stands in ``times.csv``; two rows with the same line are the same row."""
        return f"{self.who},{self.when},{self.step},{self.minutes:f}"


@dataclass(frozen=True, slots=True)
class Logged:
    """Another procedure of the library with its log."""

    name: str
    """Of its folder."""
    procedure: Procedure
    runs: tuple[Run, ...]


def sittings(runs: Sequence[Run]) -> list[tuple[str, int]]:
    """For each row the person and the number of that person's sitting, counted from 1 in order of time.

    A sitting ends with the day, or when a step comes that the person has already done in it. Rows of several logs
    are counted apart: whoever has done one job often does another for the first time.
    """
    found: dict[int, tuple[str, int]] = {}
    current: dict[tuple[str, str], tuple[str, int, set[str]]] = {}
    for at in sorted(range(len(runs)), key=lambda at: runs[at].when):
        run = runs[at]
        day, number, done = current.get((run.who, run.place.file), ("", 0, set()))
        if day != run.when[:10] or run.step in done:
            day, number, done = run.when[:10], number + 1, set()
        done.add(run.step)
        current[run.who, run.place.file] = day, number, done
        found[at] = run.who, number
    return [found[at] for at in range(len(runs))]
