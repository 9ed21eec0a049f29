"""What is said, heard and shown wrong in each shot: the records that film, sound and truth are made from.

All moments are seconds from the start of the shot.
"""

from dataclasses import dataclass

Window = tuple[float, float]


@dataclass(frozen=True)
class Line:
    """One spoken sentence."""

    at: float
    spoken: str
    """As the voice has to say it, numbers spelt out."""
    shown: str = ""
    """As the subtitle writes it, if different."""

    @property
    def words(self) -> str:
        """The text of the subtitle."""
        return self.shown or self.spoken


@dataclass(frozen=True)
class Sound:
    """One noise, or a row of them."""

    at: float
    kind: str
    times: int = 1
    every: float = 0.64


@dataclass(frozen=True)
class Event:
    """Something that is done to the item."""

    at: float
    what: str
    opens: str = ""
    closes: str = ""


@dataclass(frozen=True)
class Habit:
    """Something that real recordings have and a clean one would not."""

    at: float
    until: float
    kind: str
    note: str


@dataclass(frozen=True)
class Step:
    """One step of the job as its author would cut it."""

    name: str
    command: str
    jotted: str = ""
    """The line of the rough list; empty where the author forgot it."""


@dataclass(frozen=True)
class Take:
    """A shot with all that belongs to it."""

    shot: str
    step: Step | None = None
    """The step that begins with this shot; None carries on with the one before, or is talk."""
    lines: tuple[Line, ...] = ()
    sounds: tuple[Sound, ...] = ()
    events: tuple[Event, ...] = ()
    habits: tuple[Habit, ...] = ()
    covered: tuple[Window, ...] = ()
    """When a hand or a tool hides the part."""
    finished: tuple[Window, ...] = ()
    """When the finished state is in sight; empty where the still end of the shot shows it."""
    zoom: float = 0.0
    """How far the picture creeps in on a still shot."""
