"""What is known of a recording, and the pictures and clips made from it."""

import re
from dataclasses import dataclass
from fractions import Fraction

from procbuilder.model.stretch import Stretches
from procbuilder.model.timecode import Span, format_time

_WEAK = re.compile(r"the best there is, but ([^,]+)|(no picture of this step could be measured)")


@dataclass(frozen=True, slots=True)
class Recording:
    """Facts of one video file, read from the file itself."""

    name: str
    path: str
    sha256: str
    duration: Fraction
    """Seconds from the first to the end of the last picture, measured, not taken from the header."""
    width: int
    """Pixels as shown, after rotation."""
    height: int
    rotation: int = 0
    """Degrees anticlockwise by which the stored pictures are turned to stand upright."""
    codec: str = ""
    pictures: int = 0
    """Number of pictures in the file."""
    variable_rate: bool = False
    audio: Fraction | None = None
    """Seconds of sound; None when there is none."""
    remarks: tuple[str, ...] = ()
    """What is odd about the file, in words."""


@dataclass(frozen=True, slots=True)
class Damage:
    """A stretch of a recording with pictures that are damaged in the file."""

    span: Span
    """From the first to the last of them."""
    pictures: int

    def __str__(self) -> str:
        many = "pictures are" if self.pictures > 1 else "picture is"
        start, end = format_time(Fraction(int(self.span.start))), format_time(Fraction(int(self.span.end)))
        where = f"between {start} and {end}" if start != end else f"at {start}"
        return f"{self.pictures} {many} damaged in recording {self.span.recording} {where}"


@dataclass(frozen=True, slots=True)
class Heard:
    """What is heard in a recording; the two do not overlap."""

    speech: Stretches
    """Somebody speaks; pauses within a sentence are part of it."""
    noise: Stretches
    """Loud, and no speech: tools, blows, an engine."""


@dataclass(frozen=True, slots=True)
class Measure:
    """What was measured on one picture of a step window."""

    time: Fraction
    sharpness: float
    """Log of the 90th percentile of block Tenengrad; comparable only within one step."""
    motion: float
    """Log of the mean difference to its neighbours."""
    brightness: float
    """Mean grey, 0 to 255."""
    clipped: float
    """Share of pixels that are black or white without detail."""
    strangeness: float = 0.0
    """Mean difference to the median picture of the window, 0 to 255."""


@dataclass(frozen=True, slots=True)
class Choice:
    """The moment chosen for a step's picture, with the reason in words."""

    recording: str
    time: Fraction
    reason: str


@dataclass(frozen=True, slots=True)
class Still:
    """A picture file ready to publish."""

    file: str
    """Name below ``media/``; carries a hash of its content."""
    width: int
    height: int
    source: str
    """``strip 0:42`` or the file it came from."""
    reason: str

    @property
    def weakness(self) -> str:
        """What is wrong with the picture, as its reason says it: ``dark and blurred``; empty when nothing is."""
        told = _WEAK.match(self.reason)
        return told[1] or told[2] if told else ""


@dataclass(frozen=True, slots=True)
class Clip:
    """A short cut of one step, ready to publish."""

    file: str
    seconds: Fraction
    width: int
    height: int
    sound: bool
    held: Fraction = Fraction(0)
    """Seconds at its beginning for which the marked pictures of the step stand still."""
