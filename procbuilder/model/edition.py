"""A procedure worked out and ready to publish: all that a page, a PDF or a machine needs."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from urllib.parse import quote

from procbuilder.model.estimate import Basis, Estimate
from procbuilder.model.film import Film
from procbuilder.model.footage import Clip, Recording, Still
from procbuilder.model.ledger import Ledger
from procbuilder.model.marks import Mark, PictureState
from procbuilder.model.origin import TYPED, Origin, Place
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import Cue
from procbuilder.model.quantity import Item, Quantity
from procbuilder.model.sign import Sign
from procbuilder.model.timecode import Span
from procbuilder.model.worked import Hazard, Standing, TorqueRow
from procbuilder.model.workshop import Qualification


@dataclass(frozen=True, slots=True)
class Statement:
    """What one field says: a tool, a key point, a check, a hold point."""

    name: str
    """Name of the field, as in its table."""
    parts: tuple[tuple[str, str], ...] = ()
    """Its parts as typed, each with its name; without those that are things."""
    items: tuple[Item, ...] = ()
    """The things that it lists, or the one that it is about."""
    fasteners: tuple[Item, ...] = ()
    """What holds that thing."""
    none: bool = False
    """The technician wrote ``none``: there is nothing, and that is known."""
    origin: Origin = TYPED
    signs: tuple[Sign, ...] = ()
    """Safety signs of what is worn."""
    refers: str = ""
    """Id of the step that it refers to; empty when it refers to none."""
    step: int = 0
    """Number of the step that says it; 0 where it stands with its step, or in no step."""

    def part(self, name: str) -> str:
        """Text of a part; empty when it was not typed."""
        return dict(self.parts).get(name, "")


@dataclass(frozen=True, slots=True)
class ItemLine:
    """A tool, supply or part with its quantity and the steps that use it."""

    name: str
    quantity: Quantity | None
    new: bool
    steps: tuple[int, ...]
    origin: Origin = TYPED


@dataclass(frozen=True, slots=True)
class TrayLine:
    """What goes into one bag or tray when it comes off: for its label, and to count at the end."""

    tray: str
    """Name of the tray as typed; empty when none was named."""
    contents: Item
    """``4 x wheel nut, 19 mm``."""
    holds: str
    """What the fasteners hold; empty when it was not said."""
    off: int
    """Number of the step that takes them off; 0 when it was before the first."""
    on: tuple[int, ...]
    """Numbers of the steps that put them back; empty when none does."""


@dataclass(frozen=True, slots=True)
class FrontList:
    """One list of what must be ready before the start."""

    name: str
    """Name of the field that it is made of."""
    lines: tuple[Statement, ...]
    none: bool
    """The technician wrote ``none``: there is nothing, and that is known."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A picture with what it shows."""

    still: Still
    shows: str
    """As typed; empty when nobody said."""
    state: PictureState
    marks: tuple[Mark, ...] = ()
    """What is drawn on it, in fractions of the still."""
    marked: Still | None = None
    """The same picture with its marks drawn in, for print and film; None when there are none."""


@dataclass(frozen=True, slots=True)
class PicturePair:
    """One thing before it came off and after it went on again."""

    item: str
    off: int
    """Number of the step that took it off."""
    found: Figure | None
    on: int
    """Number of the step that put it back; 0 when none does."""
    done: Figure | None


@dataclass(frozen=True, slots=True)
class EditionStep:
    """One step as the reader gets it."""

    number: int
    id: str
    command: str
    spans: tuple[Span, ...]
    prose: tuple[str, ...]
    """Markdown paragraphs and lists, as typed."""
    hazards: tuple[Hazard, ...]
    standing: Standing
    reserved: str
    """Who alone may do this step; the method is then not shown."""
    only_if: str
    holds: tuple[Statement, ...]
    """Hold points: what must be checked, and by whom, before the next step."""
    tools: tuple[Statement, ...]
    supplies: tuple[Statement, ...]
    parts: tuple[Statement, ...]
    wear: tuple[Statement, ...]
    moves: tuple[Statement, ...]
    """Off, On, Slacken, Nip up, For now, Out again, State, Ends: what the step opens and closes."""
    torques: tuple[TorqueRow, ...]
    key_points: tuple[Statement, ...]
    checks: tuple[Statement, ...]
    """Measure and Check."""
    notes: tuple[Statement, ...]
    """Everything else that was typed for the step."""
    figures: tuple[Figure, ...]
    """The chosen picture first."""
    as_found: Figure | None
    """For a step that puts something back: how it looked before it came off."""
    as_found_step: int
    """Number of the step that took it off; 0 when there is none."""
    clip: Clip | None
    captions: tuple[Cue, ...]
    """Words said during the clip, in seconds of the clip."""
    basis: Basis
    minutes: Decimal
    """Likely hands-on minutes; 0 when nothing is known."""
    footage: Fraction
    """Seconds of recording."""
    timed: bool = False
    """It may have a stopwatch: neither reserved nor a hold point, and nothing can burn."""
    withheld: tuple[Place, ...] = ()
    """Lines that were to hide something and are not understood: because of them it has no pictures and no clip."""
    no_phone: str = ""
    """Why it is worked without a phone, by its printed card: ``brake cleaner``. Empty: the phone may be there."""


@dataclass(frozen=True, slots=True)
class EditionSection:
    """A section of the procedure with the steps below it."""

    title: str
    prose: tuple[str, ...]
    notes: tuple[Statement, ...]
    steps: tuple[EditionStep, ...]


LONGEST_ADDRESS = 300
"""Signs of an address that a phone reads from a code of 18 mm; in one of more, the squares are too small."""


@dataclass(frozen=True, slots=True)
class Edition:
    """The whole."""

    title: str
    number: str
    revision: str
    status: str
    """draft, review or withdrawn; a procedure with a stop is always a draft."""
    item: str
    applies_to: str
    not_for: str
    author: str
    work_place: str
    people: str
    ask: str
    language: str
    intro: tuple[str, ...]
    hazards: tuple[Hazard, ...]
    """Those of the front lists."""
    lists: tuple[FrontList, ...]
    """Conditions, documents, wear, scope: lists without quantities."""
    tools: tuple[ItemLine, ...]
    """In order of first use."""
    supplies: tuple[ItemLine, ...]
    parts: tuple[ItemLine, ...]
    trays: tuple[TrayLine, ...]
    """Bags and trays, in the order in which their contents come off."""
    sections: tuple[EditionSection, ...]
    torques: tuple[TorqueRow, ...]
    ledger: Ledger
    pairs: tuple[PicturePair, ...]
    """For what came off, in the order of the ledger, as far as there are pictures."""
    estimate: Estimate
    closing: tuple[Statement, ...]
    """Findings and later re-checks of the whole job, then those that steps say."""
    problems: tuple[Problem, ...]
    recordings: tuple[Recording, ...]
    paper: str = "a4"
    """What it is printed on: ``a4`` or ``letter``."""
    address: str = ""
    """Where its page lies for a browser, up to the last slash; empty when nobody said."""
    reader: Qualification | None = None
    """For whom this edition is; None: for everybody."""
    film: Film | None = None
    """The whole job as one film; None when none was made of this text and footage."""

    def address_of(self, step: EditionStep) -> str:
        """Where a phone finds a step with its clip and its dangers; empty when nobody said, where no phone may be
        used, and when no phone could read it from paper."""
        if step.reserved or step.no_phone or not step.clip or not self.address:
            return ""
        address = f"{self.address}index.html#{quote(step.id)}"
        return address if len(address) <= LONGEST_ADDRESS else ""

    @property
    def steps(self) -> tuple[EditionStep, ...]:
        """All steps in order."""
        return tuple(step for section in self.sections for step in section.steps)
