"""What is known of a recording, and the pictures and clips made from it."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from procbuilder.model.stretch import Stretches
from procbuilder.model.timecode import Span


class Oddity(StrEnum):
    """What can be odd about a recording."""

    NO_LENGTH = "no-length"
    """Its header tells no length. Values: the seconds measured."""
    CUT_OFF = "cut-off"
    """Values: the seconds that its header promises, and at which its pictures end."""
    NO_SOUND = "no-sound"
    """Then nothing tells whether it runs at the speed of the work."""
    SOUND_TRACKS = "sound-tracks"
    """There are several; the first is used. Values: how many."""
    SOUND_ENDS_EARLY = "sound-ends-early"
    """Values: seconds before the picture."""
    SOUND_BEGINS_LATE = "sound-begins-late"
    """Values: seconds after the picture."""
    PICTURE_BEGINS_LATE = "picture-begins-late"
    """Values: seconds after the sound."""
    VARIABLE_RATE = "variable-rate"
    """Values: the fewest and the most pictures a second."""
    TURNED = "turned"
    """Filmed with the camera turned; shown upright. Values: degrees."""
    DAMAGED = "damaged"
    """Values: pictures that are damaged in the file, and all."""
    HIGH_RANGE = "high-range"
    """Filmed in high dynamic range; shown in that of ordinary screens. Names: the system."""
    TRACES = "traces"
    """It holds what is removed from all that is published. Names: kinds of ``Trace``."""


class Trace(StrEnum):
    """What a recording can tell about people and places beside its pictures and sound."""

    LOCATION = "location"
    DEVICE = "device"
    TIME = "time-of-filming"
    AUTHOR = "author"
    SENSORS = "sensor-data"


@dataclass(frozen=True, slots=True)
class Remark:
    """Something odd about a recording."""

    oddity: Oddity
    values: tuple[Fraction, ...] = ()
    """Its numbers, in the order that the oddity tells."""
    names: tuple[str, ...] = ()


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
    remarks: tuple[Remark, ...] = ()
    """What is odd about the file."""


@dataclass(frozen=True, slots=True)
class Damage:
    """A stretch of a recording with pictures that are damaged in the file."""

    span: Span
    """From the first to the last of them."""
    pictures: int


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


class End(StrEnum):
    """The two ends of a stretch of footage."""

    BEGINNING = "beginning"
    END = "end"


class Bound(StrEnum):
    """What begins or ends at a time on film."""

    ACTION = "action"
    SHOT = "shot"


@dataclass(frozen=True, slots=True)
class Move:
    """A typed time that was moved to where the action or its shot begins or ends."""

    end: End
    later: Fraction
    """Seconds; below 0 it is earlier than typed."""
    bound: Bound
    part: int = 0
    """Number of the part of the clip; 0 when it has but one."""


@dataclass(frozen=True, slots=True)
class Snapped:
    """A typed span with the times at which its action really begins and ends."""

    typed: Span
    span: Span
    begins: Bound | None = None
    """What is at the moved beginning; None where the typed time stays."""
    ends: Bound | None = None

    @property
    def moves(self) -> tuple[Move, ...]:
        """Each time that was moved."""
        begins = (Move(End.BEGINNING, self.span.start - self.typed.start, self.begins),) if self.begins else ()
        ends = (Move(End.END, self.span.end - self.typed.end, self.ends),) if self.ends else ()
        return (*begins, *ends)


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


class Weakness(StrEnum):
    """What can be wrong with a picture, the worst first."""

    DARK = "dark"
    BURNT_OUT = "burnt-out"
    BLURRED = "blurred"
    COVERED = "covered"
    IN_MOTION = "in-motion"
    TURNED_AWAY = "turned-away"
    EARLY = "early"


class Why(StrEnum):
    """Why a moment was taken as the picture of a step."""

    TYPED = "typed"
    CALM = "calm"
    """The last calm moment with nothing in front; as found, the first."""
    BEFORE_COVERED = "before-covered"
    """The last such moment before something comes in front."""
    BEFORE_TURN = "before-turn"
    """The last such moment before the camera turns away."""
    SHARP_AND_LIT = "sharp-and-lit"
    """The last such moment that is sharp and well lit."""
    BEST_THERE_IS = "best-there-is"
    """Something is wrong with it, and with all others too."""
    MOTION_UNKNOWN = "motion-unknown"
    """No neighbour in time was measured."""
    UNMEASURED = "unmeasured"
    """No picture of the step could be measured: it is from the middle."""


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a moment was taken, with its figures."""

    why: Why
    to_end: Fraction | None = None
    """Whole seconds from it to the end of the step; below 0, from the beginning of the step to it."""
    sharper: int | None = None
    """It is sharper than this share of the pictures measured, in percent; None where that is no reason for it."""
    moves: tuple[Move, ...] = ()
    """Where the step does not begin or end at the typed times."""


TYPED_MOMENT = Reason(Why.TYPED)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A moment that could be the picture of a step, and what it shows."""

    time: Fraction
    why: Why
    weak: tuple[Weakness, ...] = ()


@dataclass(frozen=True, slots=True)
class Choice:
    """The moment chosen for a step's picture."""

    recording: str
    time: Fraction
    reason: Reason
    weak: tuple[Weakness, ...] = ()
    """What is wrong with the best picture there is."""
    candidates: tuple[Candidate, ...] = ()
    """Moments that differ, in order of time, the chosen one among them."""


@dataclass(frozen=True, slots=True)
class Still:
    """A picture file ready to publish."""

    file: str
    """Name below ``media/``; carries a hash of its content."""
    width: int
    height: int
    recording: str
    """Name of the recording it is from; empty for a picture file."""
    time: Fraction | None
    """Seconds into the recording; None for a picture file."""
    original: str
    """The picture file as typed; empty for a moment of a recording."""
    reason: Reason
    weak: tuple[Weakness, ...] = ()
    """What is wrong with the best picture there is; empty when it is good or typed."""


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
    moved: tuple[Move, ...] = ()
    """Where it does not begin or end at the typed times."""
