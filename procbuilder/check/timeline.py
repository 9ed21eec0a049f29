"""Rules about when the recordings were filmed. Words give differences of times alone: no date, no time of day."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise

from procbuilder.check.case import Case
from procbuilder.model.facts import facts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity

_CLOCK = timedelta(seconds=3)
"""Files are dated to whole seconds, and a camera takes a moment to begin."""
_GAP = timedelta(minutes=1)
"""From here on something worth telling happened between two recordings."""


@dataclass(frozen=True, slots=True)
class _Filmed:
    name: str
    place: Place
    begun: datetime
    ended: datetime


def time_between_recordings(case: Case) -> Iterator[Problem]:
    """Recordings that overlap, or between which time passed, by the clock of their camera."""
    for before, after in pairwise(sorted(_filmed(case), key=lambda each: each.begun)):
        gap = after.begun - before.ended
        if gap >= _GAP:
            form, lasting = "gap", gap
        elif gap < -_CLOCK:
            form, lasting = "overlap", min(before.ended, after.ended) - after.begun
        else:
            continue
        given = facts(before=before.name, after=after.name, lasting=lasting)
        subject = f"{before.name}, {after.name}"
        yield Problem("time-between-recordings", Severity.ADVICE, after.place, given, form, 5, subject)


def other_speed(case: Case) -> Iterator[Problem]:
    """A recording that does not run at the speed of the work, as its camera says."""
    for named in case.procedure.front.recordings:
        film = case.films.get(named.name)
        if film is None or film.speed is None or film.speed == 1:
            continue
        form, times = ("faster", film.speed) if film.speed > 1 else ("slower", 1 / film.speed)
        given = facts(name=named.name, times=float(times))
        yield Problem("other-speed", Severity.ADVICE, named.place, given, form, 5, named.name)


def _filmed(case: Case) -> Iterator[_Filmed]:
    """The recordings whose clock is known; one with a time zone cannot be compared with one without."""
    for named in case.procedure.front.recordings:
        film, recording = case.films.get(named.name), case.recordings.get(named.name)
        if film and recording and film.begun:
            begun = datetime.fromisoformat(film.begun).replace(tzinfo=None)
            yield _Filmed(named.name, named.place, begun, begun + timedelta(seconds=float(recording.duration)))
