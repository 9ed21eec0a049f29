"""The pictures of all steps: those that each shows, and how it looked before, where something is put back."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import TypeVar

from procbuilder.model.edition import Figure
from procbuilder.model.facts import Phrase, StepRef, facts
from procbuilder.model.fault import CannotRead
from procbuilder.model.ledger import Ledger, Opening
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import Step
from procbuilder.model.words import Words
from procbuilder.pipeline.examine import Examined
from procbuilder.pipeline.figures import as_found, figures, weak
from procbuilder.pipeline.material import Material, unreadable
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.trimming import Trimmed

Made = TypeVar("Made")


@dataclass(frozen=True, slots=True)
class Pictures:
    """The pictures of the steps."""

    figures: Mapping[str, tuple[Figure, ...]]
    """By id of the step; those of which none could be made are missing."""
    as_found: Mapping[str, tuple[Figure, str]]
    """By id of a step that puts something back: how it looked before, and the id of the step that took it off."""
    problems: tuple[Problem, ...] = ()


def choose(examined: Examined, trimmed: Mapping[str, Trimmed], material: Material, progress: Progress) -> Pictures:
    """Choose and make the pictures of the steps; what cannot be read, and a weak picture, is a problem."""
    steps = examined.procedure.steps
    shown: dict[str, tuple[Figure, ...]] = {}
    before: dict[str, tuple[Figure, str]] = {}
    problems: list[Problem] = []
    taken_off = {step.id: step for step in steps if not step.all("Finding")}
    for number, step in enumerate(steps):
        progress(Phrase("choosing", facts(command=step.command)), number, len(steps))
        for opened in filter(None, map(taken_off.get, _opened(step, examined.ledger, examined.lexicon.words))):
            made = _attempt(as_found, opened, trimmed[opened.id], material)
            if isinstance(made, Problem):
                problems.append(made)
            elif made:
                before[step.id] = made, opened.id
                break
        own = _attempt(figures, step, trimmed[step.id], material)
        if isinstance(own, Problem):
            problems.append(own)
        else:
            shown[step.id] = own
            problems += weak(StepRef(step.id, number + 1), step, own)
    return Pictures(shown, before, tuple(problems))


def _attempt(
    make: Callable[[Step, Trimmed, Material], Made], step: Step, footage: Trimmed, material: Material
) -> Made | Problem:
    """What ``make`` gives, or that a recording or picture file cannot be read."""
    try:
        return make(step, footage, material)
    except CannotRead as fault:
        return unreadable(fault, material, step)


def _opened(step: Step, ledger: Ledger, words: Words) -> Iterator[str]:
    """Ids of the other steps that took off what a step puts back, in the order of the ledger."""
    back = {words.thing(item.name) for entry in step.all("On") for item in entry.items}
    for entry in ledger.entries:
        came_off = entry.opened[0].step if entry.opening is Opening.OFF and entry.opened else step.id
        if came_off != step.id and words.thing(entry.item) in back:
            yield came_off
