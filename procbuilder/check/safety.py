"""Rules about dangers and about what protects from them."""

from collections.abc import Iterator

from rapidfuzz import fuzz, process

from procbuilder.check.balance import LIKE
from procbuilder.check.case import Case
from procbuilder.model.commands import done_to
from procbuilder.model.facts import Blank, Line, Term, facts
from procbuilder.model.fields import Field
from procbuilder.model.problem import Problem, Severity, answerable
from procbuilder.model.signal import SIGNALS, Signal


def hazard_incomplete(case: Case) -> Iterator[Problem]:
    """A hazard that does not say what happens, or how to avoid it (ANSI Z535.6: hazard, consequence, avoidance)."""
    for entry in case.procedure.everywhere(*SIGNALS):
        hazard, consequence, avoid = entry.part("hazard"), entry.part("consequence"), entry.part("avoid")
        if hazard and not (consequence and avoid):
            given = facts(signal=Term(entry.name), hazard=hazard, line=_complete(entry))
            form = "consequence" if avoid else "avoid" if consequence else "both"
            severity = Severity.STOP if SIGNALS[entry.name].is_grave else Severity.ASK
            danger = 2 if SIGNALS[entry.name] is Signal.NOTICE else 1
            subject = answerable(severity, hazard)
            yield Problem("hazard-incomplete", severity, entry.place, given, form, danger, subject)


def _complete(entry: Field) -> Line:
    """The hazard with blanks for what it does not say."""
    parts = (
        entry.part("hazard"),
        entry.part("consequence") or Blank("what-happens"),
        entry.part("avoid") or Blank("how-to-avoid"),
    )
    state = entry.part("while")
    return Line(entry.name, parts, (("while", state),) if state else (), entry.place, replaces=True)


def state_never_begins(case: Case) -> Iterator[Problem]:
    """A ``while:`` that names a state which no step begins: the danger or protection would hold nowhere."""
    states = {case.thing(entry.part("state")): entry.part("state") for entry in case.procedure.everywhere("State")}
    for entry in case.procedure.everywhere(*SIGNALS, "For now", "State"):
        state = entry.part("while")
        if not state or case.thing(state) in states:
            continue
        is_mild = entry.name in SIGNALS and not SIGNALS[entry.name].is_grave
        near = process.extractOne(state, list(states.values()), scorer=fuzz.WRatio, score_cutoff=LIKE)
        given = facts(state=state, near=near[0] if near else "", line=Line("State", (state,)))
        severity = Severity.ASK if is_mild else Severity.STOP
        form, subject = "near" if near else "", answerable(severity, state)
        yield Problem("state-never-begins", severity, entry.place, given, form, 1, subject)


def danger_while_safe(case: Case) -> Iterator[Problem]:
    """A danger that would last while something keeps people safe, and end when that is taken away."""
    typed = case.procedure.everywhere("State")
    protecting = {case.thing(entry.part("state")) for entry in typed if entry.part("while")}
    for entry in case.procedure.everywhere(*SIGNALS):
        state = entry.part("while")
        if case.mentioned(state, case.lexicon.safe_states) or (state and case.thing(state) in protecting):
            given = facts(signal=Term(entry.name), hazard=entry.part("hazard"), state=state)
            yield Problem("danger-while-safe", Severity.ASK, entry.place, given, danger=1, subject=state)


def state_safe_or_not(case: Case) -> Iterator[Problem]:
    """A state that readers are told is dangerous, though its words sound safe and no danger is named for it."""
    named = {case.thing(entry.part("while")) for entry in case.procedure.everywhere(*SIGNALS)}
    known = [*case.lexicon.safe_states, *(word for one in case.lexicon.protections for word in one.states)]
    for entry in case.procedure.everywhere("State"):
        state = entry.part("state")
        if entry.part("while") or case.thing(state) in named or case.mentioned(state, known):
            continue
        if case.mentioned(state, case.lexicon.sounds_safe):
            given = facts(state=state)
            yield Problem("state-safe-or-not", Severity.ASK, entry.place, given, danger=1, subject=state)


def protection_taken_away(case: Case) -> Iterator[Problem]:
    """Something that protects is taken away while the state that needs it still lasts."""
    for removed in case.removed:
        moment = removed.moment
        given = facts(
            item=removed.item,
            taken=moment,
            state=removed.state,
            why=removed.reason,
            ends=Line("Ends", (removed.state,), place=case.heading(moment.number)),
        )
        form = "why" if removed.reason else ""
        yield Problem("protection-taken-away", Severity.STOP, moment.place, given, form, 1)


def no_final_check(case: Case) -> Iterator[Problem]:
    """No test of the finished work, in or after the last step that puts back or tightens something."""
    steps = case.procedure.steps
    if not steps:
        return
    closing = [step for step in steps if step.all("On", "Nip up", "Torque")]
    last = closing[-1] if closing else steps[-1]
    checked = any(entry.place > last.place for entry in case.procedure.everywhere("Check", "Measure", "Hold"))
    if checked or any(step.place >= last.place and _tests(step.command, case) for step in steps):
        return
    line = Line("Check", (Blank("what-is-tried"), Blank("what-is-right")), place=last.place)
    given = facts(step=case.step(steps.index(last) + 1), command=last.command, line=line)
    yield Problem("no-final-check", Severity.STOP, last.place, given, danger=2)


def _tests(command: str, case: Case) -> bool:
    """A verb such as "check" must begin a command; a phrase such as "road test" may stand anywhere in it."""
    verbs = [word for word in case.lexicon.tests if " " not in word]
    phrases = [word for word in case.lexicon.tests if " " in word]
    return done_to(command, verbs, case.lexicon.words) is not None or bool(case.mentioned(command, phrases))
