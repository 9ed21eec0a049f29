"""The pieces of an edition in words: statements, dangers, torques, pictures, entries of the ledger."""

from dataclasses import dataclass

from procbuilder.model.footage import Still
from procbuilder.model.ledger import Balance, Opening
from procbuilder.model.marks import Mark, PictureState
from procbuilder.model.sequence import Sequence
from procbuilder.model.signal import Signal
from procbuilder.publish.terms import TYPED, Source


@dataclass(frozen=True, slots=True)
class ToldSign:
    """A safety sign with its meaning."""

    number: str
    meaning: str

    def __str__(self) -> str:
        return f"{self.number} {self.meaning}"


@dataclass(frozen=True, slots=True)
class Told:
    """A statement in words."""

    name: str
    """Name of the field."""
    label: str
    """The same in the language."""
    text: str
    extra: tuple[str, ...] = ()
    """What it says beside: reason, limits, by whom."""
    source: Source = TYPED
    signs: tuple[ToldSign, ...] = ()
    step: int = 0
    """Number of the step that it names; 0 when it names none."""

    def joined(self, by: str = " – ") -> str:
        """All that it says, in one line."""
        return by.join((self.text, *self.extra))


@dataclass(frozen=True, slots=True)
class ToldItem:
    """A tool, supply or part."""

    name: str
    quantity: str
    new: bool
    steps: tuple[int, ...]
    source: Source


@dataclass(frozen=True, slots=True)
class ToldList:
    """A list of what must be ready before the start."""

    name: str
    title: str
    lines: tuple[Told, ...]
    none: bool


@dataclass(frozen=True, slots=True)
class ToldHazard:
    """A danger."""

    signal: Signal
    word: str
    hazard: str
    consequence: str
    avoid: str
    state: str
    while_it_lasts: str
    """``holds while: trailer raised``; empty when it holds for its step only."""
    source: Source
    signs: tuple[ToldSign, ...]


@dataclass(frozen=True, slots=True)
class ToldStanding:
    """What still holds from earlier steps."""

    hazards: tuple[ToldHazard, ...]
    bare: tuple[str, ...]
    """States that last without a danger of their own."""
    protections: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldTray:
    """What goes into one bag or tray."""

    tray: str
    contents: str
    counted: bool
    """It is told how many."""
    holds: str
    off: int
    on: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class ToldTorque:
    """A line of the tightening table."""

    item: str
    number: int
    value: str
    """As typed; empty for a blank."""
    also: str
    """In the other unit; empty when there is none."""
    look_in: str
    order: str
    when: str
    stage: str
    terms: tuple[str, ...]
    """``order: cross``, ``when: dry threads``."""
    source: Source
    whence: str
    """Its source, else the document that it is from, else that no source was named."""
    demanded: bool
    sequence: Sequence | None

    @property
    def both(self) -> str:
        """``15 N·m (11 lbf·ft)``: as typed, then in the other unit."""
        return f"{self.value} ({self.also})" if self.also else self.value


@dataclass(frozen=True, slots=True)
class ToldFigure:
    """A picture."""

    still: Still
    marked: Still | None
    marks: tuple[Mark, ...]
    alt: str
    """For those who cannot see it."""
    caption: str
    labels: tuple[str, ...]
    """What its marks say."""
    weak: tuple[str, ...]
    """What is wrong with it."""
    origin: str
    """``done, strip 1:09``."""
    state: PictureState

    @property
    def shown(self) -> Still:
        """The picture for paper, where nothing lies over it."""
        return self.marked or self.still


@dataclass(frozen=True, slots=True)
class ToldEntry:
    """An entry of the ledger."""

    item: str
    opening: Opening
    how: str
    balance: Balance
    ends: str
    opened: tuple[str, ...]
    """``step 3, strip 1:09``."""
    closed: tuple[str, ...]
    opened_at: str
    """``step 3 (strip 1:09), step 4``."""
    closed_at: str
    count: str
    """How many were opened."""
    back: str
    even: bool
    """As many were closed as opened."""
    held_by: str
    """``held by 2 x M8 bolt``; empty, like each of the following, when nothing was said of it."""
    in_tray: str
    part_of: str
    scrapped: str
    spoilt: str
    nipped: str
    renewed: str
    way: str
    reason: str
