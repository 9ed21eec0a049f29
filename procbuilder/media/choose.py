"""Choosing the moment that shows the finished state of a step best, and saying why."""

from collections.abc import Sequence
from fractions import Fraction

from procbuilder.media.calm import AWAY
from procbuilder.model.footage import Candidate, Choice, Measure, Reason, Weakness, Why
from procbuilder.model.timecode import Span

_DARK = 40.0
"""Mean grey below which a picture is called dark."""
_WHITE = 0.3
"""Share of white pixels above which a picture is called burnt out."""
_LIT = 0.35
"""Difference in log brightness from the usual light of the step."""
_LOST, _BLUNTER = 1.1, 0.25
"""Logs of lost detail and of lost acuity above which a picture is blurred: a hand that goes takes detail, too."""
_SHARP, _DETAIL = -0.15, 0.25
"""Acuity, with this much of the log of detail added, below which nothing in a picture has a clean edge.

Little detail alone may be a plain part, and blunt edges alone a dull one."""
_EARLY = Fraction(3)
"""Seconds before the end of a step beyond which a picture does not show how it ends."""
_WORTH_TELLING = 50
"""Share of the pictures, in percent, that the chosen one is sharper than: less is no reason for it."""
_EDGE = Fraction(3, 10)
"""Seconds at both ends of a calm stretch in which something may still be on its way."""
_PENALTY = {
    Weakness.DARK: 3.0, Weakness.BURNT_OUT: 3.0, Weakness.BLURRED: 2.5, Weakness.COVERED: 2.0, Weakness.IN_MOTION: 2.5,
    Weakness.TURNED_AWAY: 4.0, Weakness.EARLY: 3.0,
}  # fmt: skip
_AT_EDGE, _ALONE = 0.5, 1.0
MOST_CANDIDATES = 6
_APART = Fraction(1)
"""Seconds between two candidates."""


def choose(measures: Sequence[Measure], span: Span, *, first: bool = False) -> Choice:
    """The best measured moment of a step: the last calm one with nothing in front, and the sharpest of it.

    Without a measured picture inside the span it is the middle of the span, and its reason says so.

    Args:
        measures: In order of time.
        span: Of the step.
        first: The first calm moment is wanted instead, which shows the step as found.
    """
    inside = [measure for measure in measures if span.start <= measure.time < span.end]
    if not inside:
        middle = (span.start + span.end) / 2
        return Choice(span.recording, middle, Reason(Why.UNMEASURED))
    goal = span.start if first else span.end
    best = _best(inside, goal)
    weak = faults(best, goal)
    return Choice(span.recording, best.time, _reason(best, inside, goal), weak, _candidates(best, inside, goal))


def faults(measure: Measure, goal: Fraction) -> tuple[Weakness, ...]:
    """What is wrong with a picture; ``goal`` is the time near which it should be."""
    found = (
        (measure.brightness < _DARK or measure.light < -_LIT, Weakness.DARK),
        (measure.white > _WHITE or measure.light > _LIT, Weakness.BURNT_OUT),
        (_is_blurred(measure), Weakness.BLURRED),
        (measure.covered, Weakness.COVERED),
        (not measure.calm and not measure.alone, Weakness.IN_MOTION),
        (measure.away > AWAY, Weakness.TURNED_AWAY),
        (abs(goal - measure.time) > _EARLY, Weakness.EARLY),
    )
    return tuple(weakness for true, weakness in found if true)


def _is_blurred(measure: Measure) -> bool:
    soft = measure.acuity + _DETAIL * measure.sharpness < _SHARP
    return soft or (measure.lost > _LOST and measure.blunter > _BLUNTER)


def _best(measures: Sequence[Measure], goal: Fraction) -> Measure:
    """The fewest faults count most, then the place of the calm stretch in time, then sharpness."""
    ends = _ends(measures)

    def rank(measure: Measure) -> tuple[float, float, float]:
        begin, end = ends[measure.calm]
        margin = min(_EDGE, (end - begin) / 4)
        at_edge = measure.time < begin + margin or measure.time > end - margin
        penalty = sum(_PENALTY[weakness] for weakness in faults(measure, goal))
        penalty += _AT_EDGE * at_edge + _ALONE * measure.alone
        place = float(end if measure.calm else measure.time)
        return -penalty, -abs(float(goal) - place), measure.sharpness

    return max(measures, key=rank)


def _ends(measures: Sequence[Measure]) -> dict[int, tuple[Fraction, Fraction]]:
    """First and last time of each calm stretch."""
    ends: dict[int, tuple[Fraction, Fraction]] = {}
    for measure in measures:
        ends[measure.calm] = ends.get(measure.calm, (measure.time, measure.time))[0], measure.time
    return ends


def _reason(best: Measure, measures: Sequence[Measure], goal: Fraction) -> Reason:
    to_end = Fraction(round(goal - best.time))
    if faults(best, goal):
        return Reason(Why.BEST_THERE_IS, to_end)
    if best.alone:
        return Reason(Why.MOTION_UNKNOWN, to_end)
    share = 100 * sum(each.sharpness < best.sharpness for each in measures) // len(measures)
    why = _calm(best, measures) if goal > best.time else Why.CALM
    return Reason(why, to_end, share if share >= _WORTH_TELLING else None)


def _calm(best: Measure, measures: Sequence[Measure]) -> Why:
    """Why it is the last calm moment, or why a later one was not taken."""
    later = [each for each in measures if each.calm > best.calm]
    if not later:
        return Why.CALM
    if any(each.covered for each in later):
        return Why.BEFORE_COVERED
    return Why.BEFORE_TURN if any(each.away > AWAY for each in later) else Why.SHARP_AND_LIT


def _candidates(best: Measure, measures: Sequence[Measure], goal: Fraction) -> tuple[Candidate, ...]:
    """The chosen moment and the best of other stretches, those near the goal first, in order of time."""
    groups: dict[tuple[int, int], list[Measure]] = {}
    for each in measures:
        groups.setdefault((each.calm, 0 if each.calm else int(each.time / _APART)), []).append(each)
    ranked = sorted((_best(group, goal) for group in groups.values()), key=lambda each: _rank(each, goal), reverse=True)
    kept = [best]
    for each in ranked:
        if len(kept) < MOST_CANDIDATES and all(abs(each.time - other.time) >= _APART for other in kept):
            kept.append(each)
    return tuple(_candidate(each, goal) for each in sorted(kept, key=lambda each: each.time))


def _rank(measure: Measure, goal: Fraction) -> tuple[float, float]:
    return -sum(_PENALTY[weakness] for weakness in faults(measure, goal)), -abs(float(goal - measure.time))


def _candidate(measure: Measure, goal: Fraction) -> Candidate:
    weak = faults(measure, goal)
    why = Why.BEST_THERE_IS if weak else Why.MOTION_UNKNOWN if measure.alone else Why.CALM
    return Candidate(measure.time, why, weak)
