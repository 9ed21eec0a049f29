"""A procedure worked out and ready to publish: all that a page, a PDF or a machine needs."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from urllib.parse import quote

from procbuilder.model.estimate import Basis, Estimate
from procbuilder.model.film import Film
from procbuilder.model.footage import Clip, Recording, Still
from procbuilder.model.ledger import Ledger
from procbuilder.model.marks import Mark
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import Cue
from procbuilder.model.sign import Sign
from procbuilder.model.timecode import Span
from procbuilder.model.worked import Hazard, Standing, TorqueRow


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a list: a tool, a condition, a key point, with its origin in words."""

    text: str
    extra: str = ""
    """Reason, limits or what is right; empty when there is none."""
    origin: str = ""
    """``said strip 3:12``; empty when it was typed."""
    signs: tuple[Sign, ...] = ()
    """Safety signs of what is worn."""


@dataclass(frozen=True, slots=True)
class ItemLine:
    """A tool, supply or part with its quantity and the steps that use it."""

    name: str
    quantity: str
    new: bool
    steps: tuple[int, ...]
    origin: str = ""


@dataclass(frozen=True, slots=True)
class TrayLine:
    """What goes into one bag or tray when it comes off: for its label, and to count at the end."""

    tray: str
    """Name of the tray as typed; empty when none was named."""
    contents: str
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

    title: str
    lines: tuple[Line, ...]
    none: bool
    """The technician wrote ``none``: there is nothing, and that is known."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A picture with what it shows."""

    still: Still
    alt: str
    caption: str
    state: str
    """found, done or detail."""
    marks: tuple[Mark, ...] = ()
    """What is drawn on it, in fractions of the still."""
    marked: Still | None = None
    """The same picture with its marks drawn in, for print and film; None when there are none."""

    @property
    def labels(self) -> tuple[str, ...]:
        """What its marks say."""
        return tuple(mark.label for mark in self.marks if mark.label)


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
class Named:
    """A field shown under its own name: Measure, Check, Hold, Hidden, If, …"""

    name: str
    text: str
    extra: tuple[str, ...] = ()
    """Its further parts in order, such as limits, tool or who; a word part as ``with: feeler gauge``."""
    origin: str = ""
    step: int = 0
    """Number of the step that it names; 0 when it names none."""


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
    holds: tuple[Named, ...]
    """Hold points: what must be checked, and by whom, before the next step."""
    tools: tuple[Line, ...]
    supplies: tuple[Line, ...]
    parts: tuple[Line, ...]
    wear: tuple[Line, ...]
    moves: tuple[Named, ...]
    """Off, On, Slacken, Nip up, For now, Out again, State, Ends: what the step opens and closes."""
    torques: tuple[TorqueRow, ...]
    key_points: tuple[Line, ...]
    checks: tuple[Named, ...]
    """Measure and Check."""
    notes: tuple[Named, ...]
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
    no_phone: str = ""
    """Why it is worked without a phone, by its printed card: ``brake cleaner``. Empty: the phone may be there."""


@dataclass(frozen=True, slots=True)
class EditionSection:
    """A section of the procedure with the steps below it."""

    title: str
    prose: tuple[str, ...]
    notes: tuple[Named, ...]
    steps: tuple[EditionStep, ...]


@dataclass(frozen=True, slots=True)
class Edition:
    """The whole."""

    title: str
    number: str
    revision: str
    status: str
    """draft, review or withdrawn; a procedure with a stop is always a draft."""
    why_draft: str
    """What keeps it a draft, in words; empty when nothing does but the missing approval."""
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
    closing: tuple[Named, ...]
    """Findings and later re-checks of the whole job."""
    problems: tuple[Problem, ...]
    recordings: tuple[Recording, ...]
    paper: str = "a4"
    """What it is printed on: ``a4`` or ``letter``."""
    address: str = ""
    """Where its page lies for a browser, up to the last slash; empty when nobody said."""
    reader: str = ""
    """For whom this edition is: a qualification, its holder and last day; empty: for everybody."""
    film: Film | None = None
    """The whole job as one film; None when none was made of this text and footage."""

    def address_of(self, step: EditionStep) -> str:
        """Where a phone finds a step with its clip and its dangers; empty when nobody said,
        and where no phone may be used."""
        hidden = step.reserved or step.no_phone or not step.clip
        return "" if hidden or not self.address else f"{self.address}index.html#{quote(step.id)}"

    @property
    def steps(self) -> tuple[EditionStep, ...]:
        """All steps in order."""
        return tuple(step for section in self.sections for step in section.steps)
