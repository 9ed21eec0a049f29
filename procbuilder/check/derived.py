"""Rules about steps that were proposed and not filmed."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.facts import facts
from procbuilder.model.problem import Problem, Severity


def derived_not_accepted(case: Case) -> Iterator[Problem]:
    """A refit step that was derived from a strip step, and that nobody has accepted yet."""
    numbers = {step.id: number for number, step in case.numbered}
    for number, step in case.numbered:
        for entry in step.all("Derived"):
            source = entry.part("from")
            known = numbers.get(entry.step_id)
            given = facts(step=case.step(number), source=case.step(known) if known else source, typed=source)
            yield Problem("derived-not-accepted", Severity.ASK, entry.place, given, danger=2, subject=f"#{step.id}")
