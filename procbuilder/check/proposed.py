"""Rules about dangers that are not stated: proposed by the work that the words of a step point to."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.activity import Activity, Hit
from procbuilder.model.facts import Blank, Line, Phrase, Term, Value, facts
from procbuilder.model.problem import PAPER, Problem, Severity, answer
from procbuilder.model.procedure import Step
from procbuilder.model.signal import Signal

_SHOWN = 4
"""Further steps that are named one by one."""
_GLOVE_CAUGHT = ("glove-caught", "glove-hand-drawn-in", "no-gloves")
"""The danger, what happens, how to avoid it."""


def dangers_not_confirmed(case: Case) -> Iterator[Problem]:
    """Nobody says that the dangers of the whole job were gone through; no word found never means that there is none."""
    confirmed = any(entry.part("name") for entry in case.procedure.listed("Dangers confirmed"))
    none = any(entry.none for entry in case.procedure.listed("Danger"))
    if case.procedure.steps and not confirmed and not none:
        given = facts(
            confirmed=Line("Dangers confirmed", (Blank("name"), Blank("date")), place=case.front),
            # Without a place: only somebody who went through the whole job can say so.
            none=Line("Danger", ("none",)),
        )
        place = case.front or case.procedure.place
        yield Problem("dangers-not-confirmed", Severity.ASK, place, given, danger=1, blocks=True, order=PAPER)


def danger_proposed(case: Case) -> Iterator[Problem]:
    """Words that point to dangerous work, and no stated danger that covers it."""
    for one in case.noticed:
        activity = one.activity
        open_hits = [hit for hit in one.hits if not hit.told]
        if not open_hits:
            continue
        first = open_hits[0]
        place = case.heading(first.number) if first.number else case.front
        stated = (activity.hazard, activity.consequence, activity.avoid)
        given = facts(
            hazard=activity.hazard,
            evidence=_evidence(open_hits, case),
            where=Phrase("to-step", facts(step=case.step(first.number))) if first.number else Phrase("before-first"),
            line=Line(activity.signal.field, stated, place=place),
            wear=_wear(activity, first, case),
            lasting=_lasting(activity, first, case),
            downgraded=Line("Downgraded", (activity.hazard, Blank("name"), Blank("reason")), place=case.front),
            remarks=_remarks(activity, case),
        )
        yield Problem(
            "danger-proposed",
            Severity.ASK,
            first.place,
            given,
            danger=2 if activity.signal is Signal.NOTICE else 1,
            subject=activity.hazard,
            blocks=True,
            order=activity.signal.rank,
        )


def hold_missing(case: Case) -> Iterator[Problem]:
    """Work that is usually held until somebody has checked it, and no hold point in or after it."""
    holds = [number for number, step in case.numbered if step.all("Hold")]
    for one in case.noticed:
        steps = [hit for hit in one.hits if hit.number]
        if one.activity.hold and steps and not any(number >= steps[0].number for number in holds):
            hold = Line("Hold", (one.activity.hold, Blank("who-checks")))
            given = facts(work=one.activity.name, evidence=_evidence(steps, case), line=hold)
            yield Problem(
                "hold-missing",
                Severity.ASK,
                steps[0].place,
                given,
                danger=1,
                subject=one.activity.name,
                order=one.activity.signal.rank + len(Signal),
            )


def not_reserved(case: Case) -> Iterator[Problem]:
    """Work that the law leaves to qualified people, in a step that is open to everybody."""
    steps = case.procedure.steps
    for one in case.noticed:
        open_hits = [hit for hit in one.hits if hit.number and not steps[hit.number - 1].all("Reserved")]
        if one.activity.reserved and open_hits:
            place = case.heading(open_hits[0].number) if len(open_hits) == 1 else None
            given = facts(
                work=one.activity.name,
                evidence=_evidence(open_hits, case),
                line=Line("Reserved", (one.activity.reserved,), place=place),
                answer=answer("not-reserved", one.activity.name, case.heading(open_hits[0].number)),
            )
            yield Problem(
                "not-reserved",
                Severity.ASK,
                open_hits[0].place,
                given,
                danger=1,
                subject=one.activity.name,
                blocks=True,
                order=one.activity.signal.rank,
            )


def gloves_near_rotation(case: Case) -> Iterator[Problem]:
    """Gloves where something turns: the glove is caught, and the arm goes after it (ISO 7010 P028)."""
    gloves = case.lexicon.checks.gloves
    listed = any(case.mentioned(entry.raw, gloves) for entry in case.procedure.listed("Wear"))
    worn = [(number, step) for number, step in case.numbered if listed or case.mentioned(_raw(step, "Wear"), gloves)]
    turning = [(number, step, words) for number, step in worn if (words := _turning(step, case))]
    if turning:
        (number, step, words), *others = turning
        more = facts(steps=tuple(case.step(other) for other, _, _ in others))
        given = facts(
            step=case.step(number),
            words=words,
            others=Phrase("and-in-steps", more) if others else "",
            line=Line("Danger", tuple(Phrase(part) for part in _GLOVE_CAUGHT)),
        )
        subject = ", ".join(f"#{step.id}" for _, step, _ in turning)
        yield Problem("gloves-near-rotation", Severity.ASK, step.place, given, danger=1, subject=subject, blocks=True)


def _turning(step: Step, case: Case) -> str:
    """What turns at a step that does not forbid gloves; empty when nothing does."""
    if case.mentioned(_raw(step), case.lexicon.checks.no_gloves):
        return ""
    return case.quoted(f"{step.command} ; {_raw(step, 'Tool', 'State')}", case.lexicon.rotating)


def _raw(step: Step, *names: str) -> str:
    return " ; ".join(entry.raw for entry in (step.all(*names) if names else step.fields))


def _evidence(hits: list[Hit], case: Case) -> Phrase:
    """``"petrol pipe" in step 4, also in steps 6, 7``; with the moment of what was said."""
    first, *others = hits
    rest = [hit.number for hit in others if hit.number]
    more = Phrase("and-more", facts(count=len(rest) - _SHOWN)) if len(rest) > _SHOWN else ""
    also = facts(steps=tuple(map(case.step, rest[:_SHOWN])), more=more)
    further = Phrase("also-in", also) if rest else ""
    where = case.step(first.number) if first.number else Phrase("line", facts(line=first.place.line))
    if first.said is None:
        return Phrase("evidence", facts(words=first.words, where=where, also=further))
    if not first.number:
        return Phrase("heard-between", facts(words=first.words, time=first.said, also=further))
    return Phrase("heard", facts(words=first.words, time=first.said, where=where, also=further))


def _lasting(activity: Activity, hit: Hit, case: Case) -> Value:
    """The state during which it stands, as fields to copy, where the step begins none."""
    if not activity.begins or not hit.number or case.procedure.steps[hit.number - 1].all("State", "Ends"):
        return ""
    begins, ends = (Line(field, (activity.begins,)) for field in ("State", "Ends"))
    return Phrase("if-it-lasts", facts(state=begins, ends=ends))


def _remarks(activity: Activity, case: Case) -> Value:
    """Who may do it, and the signs of the hazard and of what must not be."""
    signs = tuple(
        Phrase("sign", facts(number=sign, meaning=Term(case.lexicon.signs[sign].meaning)))
        for sign in activity.signs
        if sign in case.lexicon.signs and not sign.startswith("M")
    )
    if not signs:
        return Phrase("remark", facts(who=activity.who)) if activity.who else ""
    form = "remark-and-signs" if activity.who else "remark-signs"
    return Phrase(form, facts(who=activity.who, signs=signs))


def _wear(activity: Activity, hit: Hit, case: Case) -> Value:
    """Protective equipment that is not listed yet, as a field to copy, with the numbers of its signs."""
    here = case.procedure.steps[hit.number - 1].all("Wear") if hit.number else ()
    known = " ; ".join(entry.raw for entry in (*case.procedure.listed("Wear"), *here))
    worn = {number: sign for number in activity.signs if (sign := case.lexicon.signs.get(number)) and sign.worn}
    missing = tuple(number for number, sign in worn.items() if not case.mentioned(known, (sign.worn, *sign.words)))
    if not missing:
        return ""
    place = case.heading(hit.number) if hit.number else case.front
    line = Line("Wear", (tuple(worn[number].worn for number in missing),), place=place)
    return Phrase("and-wear", facts(line=line, signs=missing))
