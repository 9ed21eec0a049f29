"""Rules about what the work does to a body, with their source."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.facts import Blank, Facts, Line, Phrase, facts
from procbuilder.model.problem import Problem, Severity, answerable
from procbuilder.model.strain import ACTION, ACTION_POINTS, LIMIT, Lift, daily_exposure, team_limit, vibration_points


def heavy_lift(case: Case) -> Iterator[Problem]:
    """A load above the recommended weight limit at either end of its lift, for two hands and no turning."""
    for _, step in case.numbered:
        for lift in step.lifts:
            form, figures = _judged(lift, max(step.crew, 1))
            if form:
                given = facts(item=lift.item) + figures
                grave = Severity.ADVICE if form in ("heavy", "outside") else Severity.ASK
                yield Problem("heavy-lift", grave, lift.place, given, form, 1, lift.item)


def _judged(lift: Lift, people: int) -> tuple[str, Facts]:
    """Which sentence a lift calls for, with its figures; none when so many people may lift it."""
    if lift.load is None or not lift.limits:
        line = Line("Lift", (lift.item, f"{lift.load:g}" if lift.load else Blank("kg"), Phrase("path")))
        return "unknown", facts(line=line)
    known = [limit for limit in lift.limits if limit is not None]
    if len(known) < len(lift.limits):
        return "outside", ()
    least = min(known)
    limit = team_limit(least, people)
    if lift.load <= limit:
        return "", ()
    figures = facts(
        load=lift.load, times=lift.load / limit, limit=limit, people=people, alone=least, assumed=Phrase("lift-assumed")
    )
    return "heavy-team" if people > 1 else "heavy" if lift.load <= team_limit(least, 2) else "too-heavy", figures


def much_vibration(case: Case) -> Iterator[Problem]:
    """Tools of the job that together reach the daily action value of hand-arm vibration; or cannot be judged."""
    for each in (each for _, step in case.numbered for each in step.vibrations):
        if each.level is None or each.minutes is None:
            line = Line("Vibration", (each.tool, Blank("level"), Blank("minutes")))
            given = facts(tool=each.tool, line=line)
            yield Problem("much-vibration", Severity.ASK, each.place, given, "unknown", 1, each.tool)
    typed = [each for _, step in case.numbered for each in step.vibrations]
    tools = [(each.level, each.minutes) for each in typed if each.level is not None and each.minutes is not None]
    points = sum(vibration_points(level, minutes) for level, minutes in tools)
    if points < ACTION_POINTS:
        return
    exposure = daily_exposure(tools)
    form, value = ("limit", LIMIT) if exposure > LIMIT else ("action", ACTION)
    given = facts(points=points, exposure=exposure, value=value)
    subject = ", ".join(dict.fromkeys(each.tool for each in typed))
    # Directive 2002/44/EC forbids what is above the limit: nobody may answer it away.
    grave = Severity.STOP if form == "limit" else Severity.ADVICE
    yield Problem("much-vibration", grave, typed[0].place, given, form, 1, answerable(grave, subject))
