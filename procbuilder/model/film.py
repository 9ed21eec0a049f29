"""The film of a whole procedure: what it shows in which order, and what became of it."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from procbuilder.model.procedure import Cue


class Style(StrEnum):
    """How a line of a card is set."""

    WHERE = "where"
    """Small, above the rest: which step of how many."""
    TITLE = "title"
    FACT = "fact"
    """A label and what it says."""
    SIGNAL = "signal"
    """A signal word and its hazard; the label is the word."""
    STANDING = "standing"
    """What holds from earlier steps, white on black."""
    STOP = "stop"
    """What nobody may go on without, framed."""
    SMALL = "small"


@dataclass(frozen=True, slots=True)
class Panel:
    """How a signal word is set: colours as ``#rrggbb``."""

    ground: str
    ink: str
    alert: bool
    """The safety alert sign goes with it."""


@dataclass(frozen=True, slots=True)
class CardLine:
    """A paragraph of a card."""

    style: Style
    text: str
    label: str = ""
    panel: Panel | None = None
    """That of its signal word."""


@dataclass(frozen=True, slots=True)
class Card:
    """A page of text that is shown long enough to be read."""

    lines: tuple[CardLine, ...]

    @property
    def seconds(self) -> Fraction:
        """One second, and four words a second; from 3 to 12 s without a hazard.

        Adults read 238 words a minute silently (Brysbaert 2019, a review of 190 studies; from memory).

        What still holds from earlier steps was read before and stays in sight during the footage.
        """
        read = [line for line in self.lines if line.style not in (Style.WHERE, Style.STANDING, Style.SMALL)]
        words = sum(len(f"{line.label} {line.text}".split()) for line in read)
        needed = max(Fraction(3), Fraction(1) + Fraction(words, 4))
        return needed if any(line.style is Style.SIGNAL for line in read) else min(needed, Fraction(12))


@dataclass(frozen=True, slots=True)
class Scene:
    """A chapter: what must be known, the footage between two bands of words, what must follow."""

    title: str
    """Name of the chapter."""
    before: tuple[Card, ...]
    step: str = ""
    """Id of the step whose footage is shown; empty when none is."""
    head: str = ""
    """Above the footage."""
    standing: str = ""
    """Below the head: what is still dangerous."""
    points: tuple[str, ...] = ()
    """Below the footage, one after the other."""
    after: tuple[Card, ...] = ()
    number: int = 0
    """Number of the step of which it tells; 0 for the whole job."""


@dataclass(frozen=True, slots=True)
class Chapter:
    """A part of the film that a player can jump to."""

    start: Fraction
    title: str
    number: int = 0
    """Number of the step of which it tells; 0 for the whole job."""


@dataclass(frozen=True, slots=True)
class Film:
    """The film, ready to publish."""

    file: str
    """Name below ``media/``; carries a hash of its content."""
    seconds: Fraction
    width: int
    height: int
    sound: bool
    chapters: tuple[Chapter, ...]
    captions: tuple[Cue, ...]
    """Words said during the film, in its seconds."""
