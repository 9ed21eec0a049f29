"""From a heading and its fields to a step, and ids that no two steps share."""

from dataclasses import replace

from procbuilder.model.fields import Field
from procbuilder.model.marks import HiddenPath, Picture
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Prose, Section, Step, ThreePoint, Wait
from procbuilder.model.timecode import Span
from procbuilder.read.fields import Faults
from procbuilder.read.headings import Heading, free_id, slug
from procbuilder.read.values import read_hidden, read_minutes, read_picture, read_skip, read_wait

LineFaults = list[tuple[int, str, str]]
"""(line, what is wrong, what to write instead)"""


def make_step(
    place: Place, heading: Heading, prose: tuple[Prose, ...], fields: tuple[Field, ...], recordings: tuple[str, ...]
) -> tuple[Step, LineFaults]:
    """A step with the values of its fields read; faults carry the line of their field."""
    home = heading.spans[0].recording if heading.spans else recordings[0] if len(recordings) == 1 else ""
    pictures: list[Picture] = []
    hidden: list[HiddenPath] = []
    skips: list[Span] = []
    minutes: list[ThreePoint] = []
    waits: list[Wait] = []
    all_faults: LineFaults = []
    for entry in fields:
        faults: Faults = []
        match entry.name:
            case "Picture":
                pictures += filter(None, [read_picture(entry, home, faults)])
            case "Hide":
                hidden += filter(None, [read_hidden(entry, home, faults)])
            case "Skip":
                skips += read_skip(entry, recordings, home, faults)
            case "Time":
                minutes += filter(None, [read_minutes(entry.part("minutes"), faults)])
            case "Wait":
                waits += filter(None, [read_wait(entry, faults)])
        all_faults += ((entry.place.line, what, instead) for what, instead in faults)
    step = Step(
        place, heading.command, heading.id, bool(heading.id), heading.spans, prose, fields,
        tuple(pictures), tuple(hidden), tuple(skips), minutes[-1] if minutes else None, tuple(waits),
    )  # fmt: skip
    return step, all_faults


def settle_ids(sections: tuple[Section, ...]) -> tuple[tuple[Section, ...], tuple[Problem, ...]]:
    """Every step with an id of its own: typed ones stay, the others are made from the command.

    A typed id that stands twice is a problem; the later step gets a number behind it.
    """
    steps = [step for section in sections for step in section.steps]
    taken: dict[str, Step] = {}
    problems = []
    for step in steps:
        if step.id_typed and step.id in taken:
            what = f"the id {step.id} stands twice, first in line {taken[step.id].place.line}"
            instead = f"write another one: {{#{free_id(step.id, set(taken))}}}"
            problems.append(Problem(Severity.STOP, step.place, what, instead, "doubled-id", 4))
        elif step.id_typed:
            taken[step.id] = step
    settled = tuple(_settle(section, taken) for section in sections)
    return _unique(settled, set(taken)), tuple(problems)


def _settle(section: Section, first: dict[str, Step]) -> Section:
    """Mark a doubled id as one that was not typed, so that it is made anew."""
    steps = (
        replace(step, id_typed=False) if step.id_typed and first[step.id].place != step.place else step
        for step in section.steps
    )
    return replace(section, steps=tuple(steps))


def _unique(sections: tuple[Section, ...], taken: set[str]) -> tuple[Section, ...]:
    done = []
    for section in sections:
        steps = []
        for step in section.steps:
            if not step.id_typed:
                step = replace(step, id=free_id(step.id or slug(step.command), taken))
                taken.add(step.id)
            steps.append(step)
        done.append(replace(section, steps=tuple(steps)))
    return tuple(done)
