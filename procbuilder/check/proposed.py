"""Rules about dangers that are not stated: proposed by the work that the words of a step point to."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.activity import Activity, Hit
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import Step
from procbuilder.model.signal import Signal

_SHOWN = 4
"""Further steps that are named one by one."""


def dangers_not_confirmed(case: Case) -> Iterator[Problem]:
    """Nobody says that the dangers of the whole job were gone through; no word found never means that there is none."""
    confirmed = any(entry.part("name") for entry in case.procedure.listed("Dangers confirmed"))
    none = any(entry.none for entry in case.procedure.listed("Danger"))
    if case.procedure.steps and not confirmed and not none:
        yield worded(
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
        first = open_hits[0]
        where = f"to {first.where}" if first.number else "before the first step"
        more = f"{_wear(activity, first, case)}{_lasting(activity, first, case)}"
        settled = f'"- Downgraded: {activity.hazard} | name | reason" before the first step'
        yield worded(
            Severity.ASK,
            first.place,
            f"{activity.hazard}: proposed from {_evidence(open_hits)}",
            f'add {where} "{activity.line}"{more}; or {settled}{_remarks(activity, case)}',
            "danger-proposed",
            2 if activity.signal is Signal.NOTICE else 1,
            blocks=True,
            subject=activity.hazard,
            order=activity.signal.rank,
        )


def hold_missing(case: Case) -> Iterator[Problem]:
    """Work that is usually held until somebody has checked it, and no hold point in or after it."""
    holds = [number for number, step in case.numbered if step.all("Hold")]
    for one in case.noticed:
        steps = [hit for hit in one.hits if hit.number]
        if one.activity.hold and steps and not any(number >= steps[0].number for number in holds):
            yield worded(
                Severity.ASK,
                steps[0].place,
                f"{one.activity.name} has no hold point ({_evidence(steps)})",
                f'add "- Hold: {one.activity.hold} | who checks it" to the step after which it must be checked',
                "hold-missing",
                1,
                subject=one.activity.name,
                order=one.activity.signal.rank + len(Signal),
            )


def not_reserved(case: Case) -> Iterator[Problem]:
    """Work that the law leaves to qualified people, in a step that is open to everybody."""
    steps = case.procedure.steps
    for one in case.noticed:
        open_hits = [hit for hit in one.hits if hit.number and not steps[hit.number - 1].all("Reserved")]
        if one.activity.reserved and open_hits:
            yield worded(
                Severity.ASK,
                open_hits[0].place,
                f"{one.activity.name} may be reserved by law ({_evidence(open_hits)})",
                f'add "- Reserved: {one.activity.reserved}" to each such step: an apprentice is then not shown how; '
                f'or "- Refused: not reserved: {one.activity.name} | why not"',
                "not-reserved",
                1,
                blocks=True,
                subject=one.activity.name,
                order=one.activity.signal.rank,
            )


def gloves_near_rotation(case: Case) -> Iterator[Problem]:
    """Gloves where something turns: the glove is caught, and the arm goes after it (ISO 7010 P028)."""
    told = case.lexicon.checks
    listed = any(case.mentioned(entry.raw, told.gloves) for entry in case.procedure.listed("Wear"))
    worn = [
        (number, step) for number, step in case.numbered if listed or case.mentioned(_raw(step, "Wear"), told.gloves)
    ]
    turning = [(number, step, words) for number, step in worn if (words := _turning(step, case))]
    if turning:
        number, step, words = turning[0]
        others = ", ".join(str(other) for other, _, _ in turning[1:])
        where = f'step {number}, where something turns ("{words}")' + (f", and in steps {others}" if others else "")
        yield worded(
            Severity.ASK,
            step.place,
            f"gloves are worn in {where}",
            'take them out of its list, or out of the list before the steps, and add "- Danger: a glove is caught by '
            'what turns | hand drawn in, fingers torn off | no gloves, sleeves and hair tied"',
            "gloves-near-rotation",
            1,
            blocks=True,
        )


def _turning(step: Step, case: Case) -> str:
    """What turns at a step that does not forbid gloves; empty when nothing does."""
    if case.mentioned(_raw(step), case.lexicon.checks.no_gloves):
        return ""
    return case.mentioned(f"{step.command} ; {_raw(step, 'Tool', 'State')}", case.lexicon.rotating)


def _raw(step: Step, *names: str) -> str:
    return " ; ".join(entry.raw for entry in (step.all(*names) if names else step.fields))


def _evidence(hits: list[Hit]) -> str:
    """``"petrol pipe" in step 4, also in steps 6, 7``."""
    first, *others = hits
    rest = [str(hit.number) for hit in others if hit.number]
    more = f" and {len(rest) - _SHOWN} more" if len(rest) > _SHOWN else ""
    also = f", also in {'step' if len(rest) == 1 else 'steps'} {', '.join(rest[:_SHOWN])}{more}" if rest else ""
    return f'"{first.words}" in {first.where}{also}'


def _lasting(activity: Activity, hit: Hit, case: Case) -> str:
    """The state during which it stands, as fields to copy, where the step begins none."""
    if not activity.begins or not hit.number or case.procedure.steps[hit.number - 1].all("State", "Ends"):
        return ""
    return f'; if it lasts, "- State: {activity.begins}" too, and "- Ends: {activity.begins}" where it ends'


def _remarks(activity: Activity, case: Case) -> str:
    """Who may do it, and the signs of the hazard and of what must not be."""
    signs = [f"{sign} {case.lexicon.signs[sign].meaning}" for sign in activity.signs if sign in case.lexicon.signs]
    shown = [sign for sign in signs if not sign.startswith("M")]
    known = "; ".join(filter(None, (activity.who, f"ISO 7010 {', '.join(shown)}" if shown else "")))
    return f" ({known})" if known else ""


def _wear(activity: Activity, hit: Hit, case: Case) -> str:
    """Protective equipment that is not listed yet, as a field to copy, with the numbers of its signs."""
    here = case.procedure.steps[hit.number - 1].all("Wear") if hit.number else ()
    known = " ; ".join(entry.raw for entry in (*case.procedure.listed("Wear"), *here))
    worn = {number: sign for number in activity.signs if (sign := case.lexicon.signs.get(number)) and sign.worn}
    missing = [number for number, sign in worn.items() if not case.mentioned(known, (sign.worn, *sign.words))]
    names = "; ".join(worn[number].worn for number in missing)
    return f' and "- Wear: {names}" (ISO 7010 {", ".join(missing)})' if missing else ""


def _before(case: Case) -> Place:
    return next((section.place for section in case.procedure.sections), case.procedure.place)
