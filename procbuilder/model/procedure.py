"""A procedure as written: the records that reading a procedure file gives."""

from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from procbuilder.model.fields import Field
from procbuilder.model.marks import HiddenPath, Picture
from procbuilder.model.origin import Place
from procbuilder.model.strain import Lift, Vibration
from procbuilder.model.timecode import Span

FRONT_NAMES = (
    "format", "number", "revision", "status", "item", "applies to", "not for", "recordings", "narration",
    "author", "place", "people", "ask", "stated time", "language",
)  # fmt: skip
"""The keys of the front matter, in the order in which they are written."""

STATUSES = ("draft", "review", "withdrawn")
"""What may be typed as status; *approved* is never typed."""


@dataclass(frozen=True, slots=True)
class NamedFile:
    """A recording or subtitle file that the front matter names."""

    name: str
    path: str
    """As typed, relative to the procedure folder."""
    place: Place


@dataclass(frozen=True, slots=True)
class Front:
    """Front matter: every scalar as typed text."""

    values: tuple[tuple[str, str], ...] = ()
    places: tuple[tuple[str, Place], ...] = ()
    recordings: tuple[NamedFile, ...] = ()
    narration: tuple[NamedFile, ...] = ()
    stated: Fraction | None = None
    """Minutes that the technician states for the whole job; None when they cannot be read, or there are none."""
    crew: int = 1
    """How many people work on it."""

    def __getitem__(self, name: str) -> str:
        """The text of a key; empty when it was not typed."""
        return dict(self.values).get(name, "")

    def place(self, name: str, default: Place) -> Place:
        """Where a key stands."""
        return dict(self.places).get(name, default)


@dataclass(frozen=True, slots=True)
class ThreePoint:
    """Minutes: if all goes well, most likely, if it goes badly."""

    low: Decimal
    likely: Decimal
    high: Decimal


@dataclass(frozen=True, slots=True)
class Wait:
    """Waiting that is not work."""

    minutes: ThreePoint
    reason: str
    overlaps: bool
    place: Place


@dataclass(frozen=True, slots=True)
class Prose:
    """Text between the fields, kept as typed (CommonMark)."""

    text: str
    place: Place


@dataclass(frozen=True, slots=True)
class Step:
    """One step: a command, the footage that shows it, and its fields."""

    place: Place
    command: str
    id: str
    id_typed: bool = True
    """False when the id was made from the command and is not yet in the file."""
    spans: tuple[Span, ...] = ()
    prose: tuple[Prose, ...] = ()
    fields: tuple[Field, ...] = ()
    pictures: tuple[Picture, ...] = ()
    hidden: tuple[HiddenPath, ...] = ()
    skips: tuple[Span, ...] = ()
    minutes: ThreePoint | None = None
    waits: tuple[Wait, ...] = ()
    lifts: tuple[Lift, ...] = ()
    vibrations: tuple[Vibration, ...] = ()
    crew: int = 0
    """How many people work on this step; 0 when it does not say."""
    withheld: tuple[Place, ...] = ()
    """Lines for which neither its pictures nor its clips may be shown: they ask to hide something, and are not
    understood or meet no footage."""

    def all(self, *names: str) -> tuple[Field, ...]:
        """Its fields of these names, in file order."""
        return tuple(entry for entry in self.fields if entry.name in names)

    def shows(self, path: HiddenPath) -> bool:
        """True when something of a hidden region lies in its footage or in a picture that it names."""
        first, last = path.lasts or (path.boxes[0][0],) * 2
        spans = [span for span in self.spans if span.recording == path.recording]
        met = any(path.lasts is None or (span.start <= last and first < span.end) for span in spans)
        times = (one.time for one in self.pictures if one.recording == path.recording and one.time is not None)
        return met or any(path.at(time) for time in times)

    def shares(self, other: "Step") -> bool:
        """True when both show some of the same footage, if only in one picture."""
        if any(one.overlap(two) for one in self.spans for two in other.spans):
            return True
        return any(_pictured(one, two) for one, two in ((self, other), (other, self)))

    @property
    def footage(self) -> Fraction:
        """Seconds of recording, skipped stretches left out."""
        shown = sum((span.seconds for span in self.spans), Fraction(0))
        skipped = sum((span.overlap(skip) for span in self.spans for skip in self.skips), Fraction(0))
        return shown - skipped


def _pictured(one: Step, other: Step) -> bool:
    """A picture of the one shows a moment of the other."""
    named = [(picture.recording, picture.time) for picture in one.pictures if picture.time is not None]
    return any(
        span.recording == recording and span.start <= time <= span.end
        for recording, time in named
        for span in other.spans
    )


@dataclass(frozen=True, slots=True)
class Section:
    """A part of the procedure under a second-level heading."""

    title: str
    place: Place
    prose: tuple[Prose, ...] = ()
    fields: tuple[Field, ...] = ()
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True, slots=True)
class Procedure:
    """The whole file."""

    folder: Path
    place: Place
    """The first line of the file."""
    front: Front
    title: str = ""
    intro: tuple[Prose, ...] = ()
    fields: tuple[Field, ...] = ()
    """Fields above the first section."""
    sections: tuple[Section, ...] = ()

    @property
    def steps(self) -> tuple[Step, ...]:
        """All steps in the order of the file."""
        return tuple(step for section in self.sections for step in section.steps)

    @property
    def front_fields(self) -> tuple[Field, ...]:
        """Fields outside any step: the front lists."""
        return self.fields + tuple(entry for section in self.sections for entry in section.fields)

    def listed(self, *names: str) -> tuple[Field, ...]:
        """Front-list fields of these names."""
        return tuple(entry for entry in self.front_fields if entry.name in names)

    def everywhere(self, *names: str) -> tuple[Field, ...]:
        """Fields of these names in front lists, then in the steps."""
        return self.listed(*names) + tuple(entry for step in self.steps for entry in step.all(*names))


@dataclass(frozen=True, slots=True)
class ListedStep:
    """A line of a rough step list."""

    place: Place
    text: str
    start: Fraction
    end: Fraction | None = None
    """None when the list does not say, and no line follows."""
    recording: str = ""


@dataclass(frozen=True, slots=True)
class Cue:
    """One subtitle: words said from a start to an end."""

    place: Place
    start: Fraction
    end: Fraction
    text: str


@dataclass(frozen=True, slots=True)
class Narration:
    """The spoken words of one recording."""

    recording: str
    cues: tuple[Cue, ...] = field(default=())
