"""Rules about dangers and about what protects from them."""

from collections.abc import Iterator

from rapidfuzz import fuzz, process

from procbuilder.check.balance import when
from procbuilder.check.case import Case
from procbuilder.model.commands import done_to
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.signal import SIGNALS, Signal


def hazard_incomplete(case: Case) -> Iterator[Problem]:
    """A hazard that does not say what happens, or how to avoid it (ANSI Z535.6: hazard, consequence, avoidance)."""
    for entry in case.procedure.everywhere(*SIGNALS):
        lacks = [words for part, words in (("consequence", "what happens"), ("avoid", "how to avoid it"))
                 if not entry.part(part)]  # fmt: skip
        if lacks and entry.part("hazard"):
            parts = [entry.part("hazard"), entry.part("consequence") or "what happens",
                     entry.part("avoid") or "how to avoid it"]  # fmt: skip
            parts += [f"while: {entry.part('while')}"] if entry.part("while") else []
            yield worded(
                Severity.STOP if SIGNALS[entry.name].is_grave else Severity.ASK,
                entry.place,
                f'{entry.name} "{entry.part("hazard")}" does not say {" and ".join(lacks)}',
                f'write "- {entry.name}: {" | ".join(parts)}"',
                "hazard-incomplete",
                2 if SIGNALS[entry.name] is Signal.NOTICE else 1,
            )


def state_never_begins(case: Case) -> Iterator[Problem]:
    """A ``while:`` that names a state which no step begins: the danger or protection would hold nowhere."""
    states = {case.thing(entry.part("state")): entry.part("state") for entry in case.procedure.everywhere("State")}
    for entry in case.procedure.everywhere(*SIGNALS, "For now", "State"):
        state = entry.part("while")
        if not state or case.thing(state) in states:
            continue
        is_mild = entry.name in SIGNALS and not SIGNALS[entry.name].is_grave
        near = process.extractOne(state, list(states.values()), scorer=fuzz.WRatio, score_cutoff=65)
        guess = f'did you mean "while: {near[0]}"? Or add' if near else "add"
        yield worded(
            Severity.ASK if is_mild else Severity.STOP,
            entry.place,
            f'"while: {state}" names a state that no step begins',
            f'{guess} "- State: {state}" to the step that brings it about',
            "state-never-begins",
            1,
        )


def protection_taken_away(case: Case) -> Iterator[Problem]:
    """Something that protects is taken away while the state that needs it still lasts."""
    for removed in case.removed:
        why = f": {removed.reason}" if removed.reason else ""
        yield worded(
            Severity.STOP,
            removed.moment.place,
            f'{removed.item} is taken away {when(removed.moment)} while "{removed.state}" still lasts{why}',
            f'end the state first: put "- Ends: {removed.state}" into this step or an earlier one, '
            "or move this line to the step that ends it",
            "protection-taken-away",
            1,
        )


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
    yield worded(
        Severity.STOP,
        last.place,
        f'nothing is checked after step {steps.index(last) + 1}, "{last.command}"',
        'add "- Check: what is tried | what is right" to it or to a later step',
        "no-final-check",
        2,
    )


def _tests(command: str, case: Case) -> bool:
    """A verb such as "check" must begin a command; a phrase such as "road test" may stand anywhere in it."""
    verbs = [word for word in case.lexicon.tests if " " not in word]
    phrases = [word for word in case.lexicon.tests if " " in word]
    return done_to(command, verbs, case.lexicon.words) is not None or bool(case.mentioned(command, phrases))
