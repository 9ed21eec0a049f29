"""Where a record stands in the technician's text, and where a fact comes from."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from procbuilder.model.timecode import format_time


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A line of a text file; lines count from 1."""

    file: str
    line: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}"


class OriginKind(StrEnum):
    """How a fact came into the procedure."""

    TYPED = "typed"
    SAID = "said"
    SEEN = "seen"
    DOCUMENT = "document"
    MEMORY = "memory"


@dataclass(frozen=True, slots=True)
class Origin:
    """The source of one fact. ``words`` is how it is printed beside the fact."""

    kind: OriginKind = OriginKind.TYPED
    recording: str = ""
    time: Fraction | None = None
    """Seconds into the recording, for what was said or seen."""
    document: str = ""
    """Short name and place in it, such as ``D1 p. 4``."""

    @property
    def words(self) -> str:
        """``said strip 3:12``, ``from D1 p. 4``, ``from memory``; empty when it was typed."""
        match self.kind:
            case OriginKind.SAID | OriginKind.SEEN if self.time is not None:
                return " ".join(filter(None, (self.kind.value, self.recording, format_time(self.time))))
            case OriginKind.DOCUMENT:
                return f"from {self.document}"
            case OriginKind.MEMORY:
                return "from memory"
        return ""


TYPED = Origin()
