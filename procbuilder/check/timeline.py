"""Rules about when the recordings were filmed. Words give differences of times alone: no date, no time of day."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise

from procbuilder.check.case import Case
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worded

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
            what = f"{before.name} ends and {after.name} begins {_words(gap)} later, by the camera's clock: not filmed"
            instead = "write what was done in between as a step without a time, or as a Wait"
        elif gap < -_CLOCK:
            both = min(before.ended, after.ended) - after.begun
            what = f"{before.name} and {after.name} were filmed at the same time for {_words(both)}, by their clocks"
            instead = "use one of them for each step, or set the clock of the camera"
        else:
            continue
        yield worded(Severity.ADVICE, after.place, what, instead, "time-between-recordings", 5)


def other_speed(case: Case) -> Iterator[Problem]:
    """A recording that does not run at the speed of the work, as its camera says."""
    for named in case.procedure.front.recordings:
        film = case.films.get(named.name)
        if film is None or film.speed is None or film.speed == 1:
            continue
        times, how = (film.speed, "faster") if film.speed > 1 else (1 / film.speed, "slower")
        yield worded(
            Severity.ADVICE,
            named.place,
            f"{named.name} runs {float(times):.3g} times {how} than the work, so its length tells no time",
            "type the minutes of its steps: Time: 12",
            "other-speed",
            5,
        )


def _filmed(case: Case) -> Iterator[_Filmed]:
    """The recordings whose clock is known; one with a time zone cannot be compared with one without."""
    for named in case.procedure.front.recordings:
        film, recording = case.films.get(named.name), case.recordings.get(named.name)
        if film and recording and film.begun:
            begun = datetime.fromisoformat(film.begun).replace(tzinfo=None)
            yield _Filmed(named.name, named.place, begun, begun + timedelta(seconds=float(recording.duration)))


def _words(time: timedelta) -> str:
    """``27 min``, ``3 h 5 min`` or ``40 s``."""
    seconds = round(time.total_seconds())
    if seconds < 60:
        return f"{seconds} s"
    hours, minutes = divmod(round(seconds / 60), 60)
    return f"{hours} h {minutes} min" if hours else f"{minutes} min"
