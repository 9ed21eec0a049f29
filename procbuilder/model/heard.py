"""What was heard in a narration: sentences, and the operations that they tell of."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from procbuilder.model.origin import Origin, OriginKind, Place


@dataclass(frozen=True, slots=True)
class Sentence:
    """One spoken sentence, with where it stands and when it was said."""

    words: str
    place: Place
    """The first cue that holds it."""
    recording: str
    start: Fraction
    end: Fraction
    number: int = 0
    """Its place in the narration, from 1."""

    @property
    def origin(self) -> Origin:
        """``said strip 3:12``, to the whole second."""
        return Origin(OriginKind.SAID, self.recording, Fraction(int(self.start)))


class Act(StrEnum):
    """What an operation does to a thing; each but the last two opens or closes something."""

    OFF = "off"
    """Taken off, out or apart."""
    ON = "on"
    SLACKEN = "slacken"
    """Half open: it demands a final tightening."""
    NIP = "nip"
    """Half closed: tightened, but not for good."""
    TIGHTEN = "tighten"
    FOR_NOW = "for now"
    """Fitted for the job only."""
    OUT_AGAIN = "out again"
    STATE = "state"
    """The item is brought into a state that must end."""
    ENDS = "ends"
    RENEW = "renew"
    """Replaced by a new one: opened and closed at once."""
    CHECK = "check"
    WORK = "work"
    """Anything else that is done: cleaned, marked, greased, turned."""


class Tense(StrEnum):
    """How a statement stands to what is being done."""

    NOW = "now"
    EARLIER = "earlier"
    """Done before the film: it opens or closes, but was not filmed."""
    LATER = "later"
    """Announced only: it neither opens nor closes."""
    IF = "if"
    """Only in some cases: it belongs to a branch."""


class SizeKind(StrEnum):
    """What a spoken size measures."""

    HEXAGON = "hexagon"
    DRIVE = "drive"
    BIT = "bit"
    INCH = "inch"
    """A fraction of an inch that may be a hexagon or a drive: to be asked."""


@dataclass(frozen=True, slots=True)
class Size:
    """A spoken size in the form in which it is written: ``13 mm``, ``E12``, ``1/2 in drive``."""

    text: str
    kind: SizeKind
    corrected: tuple[str, ...] = ()
    """Sizes said first and taken back: of "thirteen, sorry, fifteen" it is ``13 mm``."""


@dataclass(frozen=True, slots=True)
class Operation:
    """One thing done, as told: what, to which thing, how many, with the words that say so."""

    verb: str
    """How it is printed, such as ``Remove``."""
    act: Act
    object: str
    """The thing as named, without article, number, ``new`` and ``old``; empty when only pointed at."""
    said: Sentence
    tense: Tense = Tense.NOW
    sure: bool = True
    """A second reading, made apart from the first one, finds it, too."""
    count: Decimal | None = None
    state: str = ""
    """For a state, its name: ``trailer raised``."""
    new: bool = False
    scrap: bool = False
    plural: bool = False
    size: Size | None = None
    words: str = ""
    """The words of the sentence that tell it."""
    opposite: str = ""
    """The command that puts it back, such as ``Fit``; empty when there is none."""
    tail: str = ""
    """What follows them in the sentence, such as ``until the hole lines up``."""

    @property
    def name(self) -> str:
        """What is opened or closed: the state, else the thing."""
        return self.state or self.object
