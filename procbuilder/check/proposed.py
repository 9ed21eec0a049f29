"""Rules about dangers that are not stated: proposed by the work that the words of a step point to."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.activity import Activity, Hit
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.words import mentioned
from procbuilder.model.worked import Signal

_RANK = {signal: rank for rank, signal in enumerate(Signal)}
_SHOWN = 4
"""Further steps that are named one by one."""
_WORN = frozenset(
    {"M003", "M004", "M007", "M008", "M009", "M010", "M013", "M014", "M015", "M016", "M017", "M018", "M019", "M022",
     "M026", "M032", "M047"}
)  # fmt: skip
"""Signs that tell what to wear."""


def dangers_not_confirmed(case: Case) -> Iterator[Problem]:
    """Nobody says that the dangers of the whole job were gone through; no word found never means that there is none."""
    confirmed = any(entry.part("name") for entry in case.procedure.listed("Dangers confirmed"))
    none = any(entry.none for entry in case.procedure.listed("Danger"))
    if case.procedure.steps and not confirmed and not none:
        yield Problem(
            Severity.ASK,
            _before(case),
            "nobody has confirmed the dangers of the whole job",
            'go through the job, state what can hurt somebody, then add "- Dangers confirmed: name | date" before '
            'the first step; where there is nothing at all, "- Danger: none"',
            "dangers-not-confirmed",
            1,
            blocks=True,
            order=-1,
        )


def danger_proposed(case: Case) -> Iterator[Problem]:
    """Words that point to dangerous work, and no stated danger that covers it."""
    for one in case.noticed:
        activity = one.activity
        open_hits = [hit for hit in one.hits if not hit.told]
        if not open_hits:
            continue
        where = "before the first step" if not open_hits[0].number else f"to {open_hits[0].where}"
        settled = f'"- Downgraded: {activity.hazard} | name | reason" before the first step'
        yield Problem(
            Severity.ASK,
            open_hits[0].place,
            f"{activity.hazard}: proposed from {_evidence(open_hits)}",
            f'add {where} "{activity.line}"{_wear(activity, open_hits[0], case)}, or {settled}',
            "danger-proposed",
            2 if activity.signal is Signal.NOTICE else 1,
            blocks=True,
            subject=activity.hazard,
            order=_RANK[activity.signal],
        )


def hold_missing(case: Case) -> Iterator[Problem]:
    """Work that is usually held until somebody has checked it, and no hold point in or after it."""
    holds = [number for number, step in case.numbered if step.all("Hold")]
    for one in case.noticed:
        steps = [hit for hit in one.hits if hit.number]
        if one.activity.hold and steps and not any(number >= steps[0].number for number in holds):
            yield Problem(
                Severity.ASK,
                steps[0].place,
                f"{one.activity.name} has no hold point ({_evidence(steps)})",
                f'add "- Hold: {one.activity.hold} | who checks it" to the step after which it must be checked',
                "hold-missing",
                1,
                subject=f"{one.activity.name} has no hold point",
                order=_RANK[one.activity.signal] + len(_RANK),
            )


def not_reserved(case: Case) -> Iterator[Problem]:
    """Work that the law leaves to qualified people, in a step that is open to everybody."""
    steps = case.procedure.steps
    for one in case.noticed:
        open_hits = [hit for hit in one.hits if hit.number and not steps[hit.number - 1].all("Reserved")]
        if one.activity.reserved and open_hits:
            yield Problem(
                Severity.ASK,
                open_hits[0].place,
                f"{one.activity.name} may be reserved by law ({_evidence(open_hits)})",
                f'add "- Reserved: {one.activity.reserved}" to each such step: an apprentice is then not shown how; '
                f'or "- Refused: {one.activity.name} may be reserved by law | why not"',
                "not-reserved",
                1,
                blocks=True,
                subject=f"{one.activity.name} may be reserved by law",
                order=_RANK[one.activity.signal],
            )


def gloves_near_rotation(case: Case) -> Iterator[Problem]:
    """Gloves where something turns: the glove is caught, and the arm goes after it (ISO 7010 P028)."""
    front = any(mentioned(item.name, ["glove"]) for entry in case.procedure.listed("Wear") for item in entry.items)
    for number, step in case.numbered:
        worn = [entry for entry in step.all("Wear") if mentioned(entry.raw, ["glove"])]
        words = [step.command, *(item.name for entry in step.all("Tool") for item in entry.items)]
        words += [entry.part("state") for entry in step.all("State")]
        turning = next((found for text in words if (found := mentioned(text, case.lexicon.rotating))), "")
        if not turning or mentioned(" ; ".join(entry.raw for entry in step.fields), ["no glove", "without glove"]):
            continue
        if worn or front:
            where = "" if worn else ", by the list before the steps"
            yield Problem(
                Severity.ASK,
                worn[0].place if worn else step.place,
                f'gloves are worn in step {number}{where}, where something turns ("{turning}")',
                'take the gloves out of its list, and add "- Danger: a glove is caught by what turns | hand drawn in, '
                'fingers torn off | no gloves, sleeves and hair tied"',
                "gloves-near-rotation",
                1,
                blocks=True,
            )


def _evidence(hits: list[Hit]) -> str:
    """``"petrol pipe" in step 4, also in steps 6, 7``."""
    first, *others = hits
    rest = [str(hit.number) for hit in others if hit.number]
    more = f" and {len(rest) - _SHOWN} more" if len(rest) > _SHOWN else ""
    also = f", also in {'step' if len(rest) == 1 else 'steps'} {', '.join(rest[:_SHOWN])}{more}" if rest else ""
    return f'"{first.words}" in {first.where}{also}'


def _wear(activity: Activity, hit: Hit, case: Case) -> str:
    """Protective equipment that is not listed yet, as a field to copy, with the numbers of its signs."""
    here = case.procedure.steps[hit.number - 1].all("Wear") if hit.number else ()
    known = " ; ".join(entry.raw for entry in (*case.procedure.listed("Wear"), *here))
    missing = [sign for sign in activity.signs if sign in _WORN and not mentioned(known, [case.lexicon.signs[sign]])]
    names = "; ".join(case.lexicon.signs[sign] for sign in missing)
    return f' and "- Wear: {names}" (ISO 7010 {", ".join(missing)})' if missing else ""


def _before(case: Case) -> Place:
    return next((section.place for section in case.procedure.sections), case.procedure.place)
