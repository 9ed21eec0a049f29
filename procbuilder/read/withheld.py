"""Which steps show neither pictures nor clips, because a line that asks to hide something is not obeyed."""

from collections.abc import Iterable
from dataclasses import replace

from procbuilder.model.marks import HiddenPath
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Section, Step


def withhold(sections: tuple[Section, ...], stray: Iterable[Place]) -> tuple[Section, ...]:
    """The sections with the lines that close each step.

    A step is closed by its own lines that are not understood or meet no footage, and by those of every step that shows
    some of the same footage. ``stray`` lines stand in no step: nobody knows what they hide, so they close all of them.
    """
    steps = [step for section in sections for step in section.steps]
    lost = {step.id: [path for path in step.hidden if not step.shows(path)] for step in steps}
    own = {step.id: {*step.withheld, *(path.place for path in lost[step.id])} for step in steps}
    closed = [step for step in steps if own[step.id]]
    stray = set(stray)
    if not closed and not stray:
        return sections

    def closing(step: Step) -> tuple[Place, ...]:
        places = stray | own[step.id]
        for other in closed:
            if step.shares(other) or any(_films(step, path) for path in lost[other.id]):
                places |= own[other.id]
        return tuple(sorted(places))

    return tuple(
        replace(section, steps=tuple(replace(step, withheld=closing(step)) for step in section.steps))
        for section in sections
    )


def _films(step: Step, path: HiddenPath) -> bool:
    """The step shows the times of a region that was typed below another."""
    first, last = path.boxes[0][0], path.boxes[-1][0]
    return any(span.recording == path.recording and span.start <= last and first <= span.end for span in step.spans)
