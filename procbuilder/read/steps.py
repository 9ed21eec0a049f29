"""From a heading and its fields to a step, and ids that no two steps share."""

from dataclasses import replace

from procbuilder.model.facts import facts
from procbuilder.model.fields import Field
from procbuilder.model.marks import HiddenPath, Picture
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Prose, Section, Step, ThreePoint, Wait
from procbuilder.model.strain import Lift, Vibration
from procbuilder.model.timecode import Span
from procbuilder.read.flaws import Flaw, Flaws
from procbuilder.read.headings import Heading, free_id, slug
from procbuilder.read.stated import read_crew
from procbuilder.read.values import (
    read_hidden,
    read_lift,
    read_minutes,
    read_picture,
    read_skip,
    read_vibration,
    read_wait,
)

FieldFlaws = list[tuple[Field, Flaw]]
"""What cannot be read, and in which field."""


def make_step(
    place: Place, heading: Heading, prose: tuple[Prose, ...], fields: tuple[Field, ...], recordings: tuple[str, ...]
) -> tuple[Step, FieldFlaws]:
    """A step with the values of its fields read; flaws carry their field."""
    home = heading.spans[0].recording if heading.spans else recordings[0] if len(recordings) == 1 else ""
    pictures: list[Picture] = []
    hidden: list[HiddenPath] = []
    skips: list[Span] = []
    minutes: list[ThreePoint] = []
    waits: list[Wait] = []
    lifts: list[Lift] = []
    vibrations: list[Vibration] = []
    crew = 0
    found: FieldFlaws = []
    for entry in fields:
        flaws: Flaws = []
        match entry.name:
            case "Picture":
                pictures += filter(None, [read_picture(entry, home, flaws)])
            case "Hide":
                hidden += filter(None, [read_hidden(entry, home, flaws)])
            case "Skip":
                skips += read_skip(entry, recordings, home, flaws)
            case "Time":
                minutes += filter(None, [read_minutes(entry.part("minutes"), flaws)])
            case "Wait":
                waits += filter(None, [read_wait(entry, flaws)])
            case "Lift":
                lifts.append(read_lift(entry))
            case "People":
                crew = read_crew(entry.part("number"))
            case "Vibration":
                vibrations.append(read_vibration(entry))
        found += ((entry, one) for one in flaws)
    step = Step(
        place, heading.command, heading.id, bool(heading.id), heading.spans, prose, fields,
        tuple(pictures), tuple(hidden), tuple(skips), minutes[-1] if minutes else None, tuple(waits),
        tuple(lifts), tuple(vibrations), crew,
    )  # fmt: skip
    return step, found


def settle_ids(sections: tuple[Section, ...]) -> tuple[tuple[Section, ...], tuple[Problem, ...]]:
    """Every step with an id of its own: typed ones stay, the others are made from the command.

    A typed id that stands twice is a problem; the later step gets a number behind it.
    """
    steps = [step for section in sections for step in section.steps]
    first: dict[str, Step] = {}
    for step in steps:
        if step.id_typed:
            first.setdefault(step.id, step)
    taken = dict.fromkeys(first, 1)
    problems: list[Problem] = []
    settled = []
    for section in sections:
        own = [_settled(step, first.get(step.id), taken, problems) for step in section.steps]
        settled.append(replace(section, steps=tuple(own)))
    return tuple(settled), tuple(problems)


def _settled(step: Step, first: Step | None, taken: dict[str, int], problems: list[Problem]) -> Step:
    """The step as it is when it is the first with its typed id, else with an id made for it."""
    if not step.id_typed:
        return replace(step, id=free_id(slug(step.command), taken))
    assert first is not None
    if first.place == step.place:
        return step
    other = free_id(step.id, taken)
    given = facts(id=step.id, first=first.place.line, other=other)
    problems.append(Problem("doubled-id", Severity.STOP, step.place, given, danger=4))
    return replace(step, id=other, id_typed=False)
