"""Rules about what the work does to a body: advice, with its source."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.facts import Facts, facts
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.strain import ACTION, ACTION_POINTS, LIMIT, Lift, daily_exposure, vibration_points


def heavy_lift(case: Case) -> Iterator[Problem]:
    """A load above the recommended weight limit at either end of its lift, for two hands and no turning."""
    for _, step in case.numbered:
        for lift in step.lifts:
            form, figures = _judged(lift)
            if form:
                given = facts(item=lift.item) + figures
                yield Problem("heavy-lift", Severity.ADVICE, lift.place, given, form, 1, lift.item)


def _judged(lift: Lift) -> tuple[str, Facts]:
    """Which sentence a lift calls for, with its figures; none when one person may lift it."""
    if lift.load is None or not lift.limits:
        return "unknown", ()
    known = [limit for limit in lift.limits if limit is not None]
    if len(known) < len(lift.limits):
        return "outside", ()
    least = min(known)
    return ("heavy", facts(load=lift.load, times=lift.load / least, limit=least)) if lift.load > least else ("", ())


def much_vibration(case: Case) -> Iterator[Problem]:
    """Tools of the job that together reach the daily action value of hand-arm vibration."""
    typed = [each for _, step in case.numbered for each in step.vibrations]
    tools = [(each.level, each.minutes) for each in typed if each.level is not None and each.minutes is not None]
    points = sum(vibration_points(level, minutes) for level, minutes in tools)
    if points < ACTION_POINTS:
        return
    exposure = daily_exposure(tools)
    form, value = ("limit", LIMIT) if exposure > LIMIT else ("action", ACTION)
    given = facts(points=points, exposure=exposure, value=value)
    subject = ", ".join(dict.fromkeys(each.tool for each in typed))
    yield Problem("much-vibration", Severity.ADVICE, typed[0].place, given, form, 1, subject)
