"""What is known of a recording, and the pictures and clips made from it."""

from dataclasses import dataclass
from fractions import Fraction

from procbuilder.model.stretch import Stretches
from procbuilder.model.timecode import Span, format_time


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
class PacketFacts:
    """What the packets of a recording tell before a picture is decoded. It is never published."""

    key_spacing: Fraction
    """Usual seconds from one key frame to the next; 0 for a single one."""
    spacing: Fraction
    """Usual seconds from one picture to the next."""
    frozen: Stretches = ()
    """The same picture is shown for a second or longer."""
    plain: Stretches = ()
    """Of these the ones of a single colour: a covered lens."""
    quiet: Stretches = ()
    """Pictures take few bytes; where the encoder keeps its quality, nothing moves."""
    candidates: tuple[Fraction, ...] = ()
    """Times at which there may be a cut."""
    speed: Fraction | None = None
    """How many times faster than it happened it is shown, as its tags say; None when they do not."""
    begun: str = ""
    """When filming began, in ISO 8601, by a clock that may be wrong. For whoever builds the procedure alone."""


@dataclass(frozen=True, slots=True)
class Heard:
    """What is heard in a recording; the two do not overlap."""

    speech: Stretches
    """Somebody speaks; pauses within a sentence are part of it."""
    noise: Stretches
    """Loud, and no speech: tools, blows, an engine."""


@dataclass(frozen=True, slots=True)
class Cut:
    """A moment at which something between two pictures was not filmed."""

    time: Fraction
    """Of the first picture after it."""
    jump: bool = False
    """Both sides show the same place: time is missing, and nothing else tells it."""


@dataclass(frozen=True, slots=True)
class Looked:
    """What the key frames of a recording tell."""

    still: Stretches
    """Nothing moves for two seconds or longer; the camera may sway."""
    unlike: Stretches
    """From one key frame to the next the place is another: a cut, or the camera was swung round."""


@dataclass(frozen=True, slots=True)
class FootageSplit:
    """Seconds of the footage of one step, without what is skipped."""

    hands_on: Fraction
    """Work is seen or heard."""
    talk: Fraction
    """Somebody speaks, and nothing moves."""
    still: Fraction
    """Nothing moves, and nothing is heard."""
    cuts: int = 0
    """Moments at which something was left out: the seconds are a lower bound."""
    speed: Fraction = Fraction(1)
    """How many times faster than it happened it is shown; unless it is 1, no second counts."""


@dataclass(frozen=True, slots=True)
class Snapped:
    """A typed span with the times at which its action really begins and ends."""

    typed: Span
    span: Span
    begins: str = ""
    """What is at the moved beginning, ``where its shot begins``; empty where the typed time stays."""
    ends: str = ""

    @property
    def moves(self) -> tuple[str, ...]:
        """Each time that was moved: ``begins 0.8 s later than typed, where its shot begins``."""
        moves = (
            ("begins", self.span.start - self.typed.start, self.begins),
            ("ends", self.span.end - self.typed.end, self.ends),
        )
        return tuple(f"{what} {_later(by)} than typed, {where}" for what, by, where in moves if where)


def _later(seconds: Fraction) -> str:
    return f"{float(round(abs(seconds), 2)):g} s {'later' if seconds > 0 else 'earlier'}"


@dataclass(frozen=True, slots=True)
class Measure:
    """What was measured on one picture of a step."""

    time: Fraction
    sharpness: float
    """Log of the 90th percentile of block Tenengrad; comparable only within one step."""
    lost: float
    """Log of how much less detail it has than the sharpest pictures of the same places."""
    acuity: float
    """Log of fine against coarse detail: low when the picture is out of focus or smeared."""
    blunter: float
    """How much lower that is than usual in the step."""
    brightness: float
    """Mean grey, 0 to 255."""
    light: float
    """Log of its brightness against the usual one of the step."""
    white: float
    """Share of pixels that are white without detail."""
    motion: float
    """Grey levels by which something moves before the camera."""
    camera: float
    """Picture widths a second by which the camera turns."""
    away: float
    """Picture widths from the usual view of the step."""
    calm: int
    """Number of the calm stretch in which it lies, counted from 1 in order of time; 0 in none."""
    covered: bool = False
    """Whether a hand or a tool is taken to be in front."""
    alone: bool = False
    """Whether no neighbour in time was measured, so that nothing is known of motion."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A moment that could be the picture of a step, and what it shows."""

    time: Fraction
    reason: str


@dataclass(frozen=True, slots=True)
class Choice:
    """The moment chosen for a step's picture, with the reason in words."""

    recording: str
    time: Fraction
    reason: str
    weak: tuple[str, ...] = ()
    """What is wrong with the best picture there is: words of ``WEAK``."""
    candidates: tuple[Candidate, ...] = ()
    """Moments that differ, in order of time, the chosen one among them."""


WEAK = ("dark", "burnt out", "blurred", "covered", "in motion", "turned away", "early")
"""What can be wrong with a picture, the worst first."""


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
    weak: tuple[str, ...] = ()
    """What is wrong with the best picture there is: words of ``WEAK``; empty when it is good or typed."""


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
    moved: tuple[str, ...] = ()
    """Where it does not begin or end at the typed times: ``clip begins 0.8 s later than typed, where …``."""
