"""Rules about what the work does to a body: advice, with its source."""

import re
from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.fields import Field
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.strain import ACTION, ACTION_POINTS, LIMIT, daily_exposure, vibration_points, weight_limit

_NUMBER = re.compile(r"(\d{1,4}(?:\.\d{1,3})?)\s*(?:kg|m/s²|min(?:utes)?)?\Z")
_PATH = re.compile(
    r"from (?P<from>\d{1,3}(?:\.\d)?)(?: cm)?, to (?P<to>\d{1,3}(?:\.\d)?)(?: cm)?, "
    r"reach (?P<reach>\d{1,3}(?:\.\d)?)(?: cm)?\Z"
)
_LIFT = "| 25 | from 20 cm, to 110 cm, reach 40 cm, heights of the hands"
"""The kilograms and the way of a lift, as they are written."""


def heavy_lift(case: Case) -> Iterator[Problem]:
    """A load above the recommended weight limit at either end of its lift, for two hands and no turning."""
    for _, step in case.numbered:
        for entry in step.all("Lift"):
            load, ends = _number(entry.part("kg")), _ends(entry.part("path"))
            item = entry.item.name if entry.items else entry.part("item")
            if load is None or ends is None:
                yield _lift(entry, f"the lift of {item} cannot be judged", f"write - Lift: {item} {_LIFT}")
                continue
            limits = [weight_limit(reach, height, travel) for reach, height, travel in ends]
            known = [limit for limit in limits if limit is not None]
            if len(known) < len(limits):
                what = f"the lift of {item} is outside what the NIOSH lifting equation covers"
                yield _lift(entry, what, "use a hoist, or judge it by the workshop's own assessment")
            elif load > min(known):
                times = (
                    f"{load / min(known):.1f} times the {min(known):.0f} kg that the NIOSH lifting equation recommends"
                )
                instead = "use a hoist, bring it closer or higher, or let two people lift it"
                yield _lift(entry, f"{item}, {load:g} kg, is {times} for one person", instead)


def much_vibration(case: Case) -> Iterator[Problem]:
    """Tools of the job that together reach the daily action value of hand-arm vibration."""
    entries = [entry for _, step in case.numbered for entry in step.all("Vibration")]
    read = [(_number(entry.part("level")), _number(entry.part("minutes"))) for entry in entries]
    tools = [(level, minutes) for level, minutes in read if level is not None and minutes is not None]
    points = sum(vibration_points(level, minutes) for level, minutes in tools)
    if points < ACTION_POINTS:
        return
    exposure = daily_exposure(tools)
    over = f"the limit of {LIMIT:g}" if exposure > LIMIT else f"the action value of {ACTION:g}"
    yield worded(
        Severity.ADVICE,
        entries[0].place,
        f"the tools of this job give {points:.0f} points of hand-arm vibration, "
        f"A(8) {exposure:.1f} m/s²: {over} is reached",
        "take turns, use a tool that shakes less, or shorten its use (HSE exposure points)",
        "much-vibration",
        1,
    )


def _lift(entry: Field, what: str, instead: str) -> Problem:
    return worded(Severity.ADVICE, entry.place, what, instead, "heavy-lift", 1)


def _number(text: str) -> float | None:
    match = _NUMBER.match(text.strip())
    return float(match[1]) if match else None


def _ends(path: str) -> list[tuple[float, float, float]] | None:
    """Reach, height and travel at both ends of a lift."""
    match = _PATH.match(path.strip())
    if not match:
        return None
    low, high, reach = (float(match[name]) for name in ("from", "to", "reach"))
    return [(reach, height, abs(high - low)) for height in (low, high)]
