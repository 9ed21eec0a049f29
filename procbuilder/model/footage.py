"""What is known of a recording, and the pictures and clips made from it."""

from dataclasses import dataclass
from fractions import Fraction


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
