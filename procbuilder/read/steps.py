"""From a heading and its fields to a step, and ids that no two steps share."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from itertools import chain
from typing import TypeVar

from procbuilder.model.facts import facts
from procbuilder.model.fields import Field
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Prose, Section, Step
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
_Value = TypeVar("_Value")


def make_step(
    place: Place, heading: Heading, prose: tuple[Prose, ...], fields: tuple[Field, ...], recordings: tuple[str, ...],
    withheld: Iterable[Place] = (),
) -> tuple[Step, FieldFlaws]:  # fmt: skip
    """A step with the values of its fields read; flaws carry their field.

    ``withheld`` are lines that ask to hide something and are no field that can be read.
    """
    home = heading.spans[0].recording if heading.spans else recordings[0] if len(recordings) == 1 else ""
    values = _Values(fields)
    minutes = values.read("Time", lambda entry, flaws: read_minutes(entry.part("minutes"), flaws))
    crew = values.read("People", lambda entry, _: read_crew(entry.part("number")))
    step = Step(
        place, heading.command, heading.id, bool(heading.id), heading.spans, prose, fields,
        pictures=values.read("Picture", lambda entry, flaws: read_picture(entry, home, flaws)),
        hidden=values.read("Hide", lambda entry, flaws: read_hidden(entry, home, flaws)),
        skips=tuple(chain(*values.read("Skip", lambda entry, flaws: read_skip(entry, recordings, home, flaws)))),
        minutes=minutes[-1] if minutes else None,
        waits=values.read("Wait", read_wait),
        lifts=values.read("Lift", lambda entry, _: read_lift(entry)),
        vibrations=values.read("Vibration", lambda entry, _: read_vibration(entry)),
        crew=crew[-1] if crew else 0,
    )  # fmt: skip
    return replace(step, withheld=tuple(sorted({*withheld, *_not_read(step)}))), values.flaws


def _not_read(step: Step) -> Iterator[Place]:
    """The lines that ask to hide something, and were not read."""
    read = {path.place for path in step.hidden}
    boxes = {picture.place: len(picture.hidden) for picture in step.pictures}
    for entry in step.fields:
        below = [child.place for child in entry.children if child.name == "Hide"]
        if len(below) > boxes.get(entry.place, 0):
            yield from below
        if entry.name == "Hide" and entry.place not in read:
            yield entry.place


class _Values:
    """The values of the fields of one step, and what cannot be read of them."""

    def __init__(self, fields: tuple[Field, ...]) -> None:
        self.fields = fields
        self.flaws: FieldFlaws = []

    def read(self, name: str, reader: Callable[[Field, Flaws], _Value | None]) -> tuple[_Value, ...]:
        """What a reader makes of each field of this name, as far as it can be read."""
        values = []
        for entry in self.fields:
            if entry.name == name:
                flaws: Flaws = []
                values.append(reader(entry, flaws))
                self.flaws += ((entry, one) for one in flaws)
        return tuple(value for value in values if value is not None)


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
