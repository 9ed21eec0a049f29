"""Rules about steps that were proposed and not filmed."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.problem import Problem, Severity, worded


def derived_not_accepted(case: Case) -> Iterator[Problem]:
    """A refit step that was derived from a strip step, and that nobody has accepted yet."""
    numbers = {step.id: number for number, step in case.numbered}
    for number, step in case.numbered:
        for entry in step.all("Derived"):
            source = entry.part("from")
            known = numbers.get(source.removeprefix("#"))
            yield worded(
                Severity.ASK,
                entry.place,
                f"step {number} is derived from {f'step {known}' if known else source} and was not filmed",
                f'read it, put it right, then take the line "- Derived: {source}" away',
                "derived-not-accepted",
                2,
            )
