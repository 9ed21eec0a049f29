"""What the readers of step lists share."""

from collections.abc import Iterator

from procbuilder.model.facts import Time, Value, facts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import ListedStep

Listed = tuple[tuple[ListedStep, ...], tuple[Problem, ...]]
"""The steps of a list in file order, and a problem for every line that is not one."""


def problem(place: Place, form: str, /, **values: Value) -> Problem:
    """Something wrong in a list."""
    return Problem("step-list", Severity.ASK, place, facts(**values), form, 4)


def odd_steps(steps: tuple[ListedStep, ...]) -> Iterator[Problem]:
    """Steps that have no length or end before they start; they are kept."""
    for step in steps:
        if step.end is not None and step.end <= step.start:
            form = "no-length" if step.end == step.start else "ends-first"
            yield problem(step.place, form, step=step.text, end=Time(step.end))
