"""Rules about what the work does to a body: advice, with its source."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.strain import ACTION, ACTION_POINTS, LIMIT, Lift, daily_exposure, vibration_points

_LIFT = "| 25 | from 20 cm, to 110 cm, reach 40 cm, heights of the hands"
"""The kilograms and the way of a lift, as they are written."""


def heavy_lift(case: Case) -> Iterator[Problem]:
    """A load above the recommended weight limit at either end of its lift, for two hands and no turning."""
    for _, step in case.numbered:
        for lift in step.lifts:
            item, load, limits = lift.item, lift.load, lift.limits
            if load is None or not limits:
                yield _lift(lift, f"the lift of {item} cannot be judged", f"write - Lift: {item} {_LIFT}")
                continue
            known = [limit for limit in limits if limit is not None]
            if len(known) < len(limits):
                what = f"the lift of {item} is outside what the NIOSH lifting equation covers"
                yield _lift(lift, what, "use a hoist, or judge it by the workshop's own assessment")
            elif load > min(known):
                times = (
                    f"{load / min(known):.1f} times the {min(known):.0f} kg that the NIOSH lifting equation recommends"
                )
                instead = "use a hoist, bring it closer or higher, or let two people lift it"
                yield _lift(lift, f"{item}, {load:g} kg, is {times} for one person", instead)


def much_vibration(case: Case) -> Iterator[Problem]:
    """Tools of the job that together reach the daily action value of hand-arm vibration."""
    typed = [each for _, step in case.numbered for each in step.vibrations]
    tools = [(each.level, each.minutes) for each in typed if each.level is not None and each.minutes is not None]
    points = sum(vibration_points(level, minutes) for level, minutes in tools)
    if points < ACTION_POINTS:
        return
    exposure = daily_exposure(tools)
    over = f"the limit of {LIMIT:g}" if exposure > LIMIT else f"the action value of {ACTION:g}"
    yield worded(
        Severity.ADVICE,
        typed[0].place,
        f"the tools of this job give {points:.0f} points of hand-arm vibration, "
        f"A(8) {exposure:.1f} m/s²: {over} is reached",
        "take turns, use a tool that shakes less, or shorten its use (HSE exposure points)",
        "much-vibration",
        1,
    )


def _lift(lift: Lift, what: str, instead: str) -> Problem:
    return worded(Severity.ADVICE, lift.place, what, instead, "heavy-lift", 1)
