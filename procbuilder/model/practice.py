"""The practice log: who worked on which step, when, and for how long."""

import re
from calendar import monthrange
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from procbuilder.model.origin import Place
from procbuilder.model.procedure import Procedure

HEADER = "who,when,step,minutes"
"""First line of ``times.csv``."""

WHO = re.compile(r"[^\W_][\w.-]{0,11}\Z")
"""Initials or a code: letters and digits, at most twelve signs, no space, so that no full name is asked for."""
_SPAN = re.compile(r"(\d{1,3}) (month|year)s?")
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
class PracticeLog:
    """A procedure of the library with its log."""

    name: str
    """Of its folder."""
    procedure: Procedure
    runs: tuple[Run, ...]


def last_kept(kept: str, today: date) -> date | None:
    """The first day that is still kept, from ``24 months`` or ``2 years``; None when it is said in other words."""
    found = _SPAN.fullmatch(kept.strip().casefold())
    if found is None:
        return None
    months = today.year * 12 + today.month - 1 - int(found[1]) * (12 if found[2] == "year" else 1)
    year, month = divmod(months, 12)
    return date(year, month + 1, min(today.day, monthrange(year, month + 1)[1])) if year > 0 else None


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
