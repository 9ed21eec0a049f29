"""An edition in the words of its language: what page, print, sheets, film and task all say."""

from dataclasses import dataclass

from procbuilder.model.estimate import Basis, Estimate
from procbuilder.model.film import Film
from procbuilder.model.footage import Clip
from procbuilder.model.ledger import Balance
from procbuilder.model.problem import Severity
from procbuilder.model.procedure import Cue
from procbuilder.publish.language import Language
from procbuilder.publish.timebars import Bar
from procbuilder.publish.told import (
    Told,
    ToldEntry,
    ToldFigure,
    ToldHazard,
    ToldItem,
    ToldList,
    ToldStanding,
    ToldTorque,
    ToldTray,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class SpokenStep:
    """One step as it is read."""

    number: int
    id: str
    command: str
    spans: str
    """``strip 0:42-1:15``; empty when it was not filmed."""
    prose: tuple[str, ...]
    hazards: tuple[ToldHazard, ...]
    standing: ToldStanding
    where: str
    """``Step 3 of 11``."""
    reserved: str
    """Who alone may do it; the method is then not shown."""
    stop: str
    """That somebody else does it."""
    safe: str
    """What must have been told before going on, where nothing is to be checked."""
    only_if: str
    holds: tuple[Told, ...]
    tools: tuple[Told, ...]
    supplies: tuple[Told, ...]
    parts: tuple[Told, ...]
    wear: tuple[Told, ...]
    moves: tuple[Told, ...]
    held_by: tuple[tuple[str, str], ...]
    """Count and size of what holds a thing, with the thing."""
    torques: tuple[ToldTorque, ...]
    key_points: tuple[Told, ...]
    checks: tuple[Told, ...]
    notes: tuple[Told, ...]
    figures: tuple[ToldFigure, ...]
    as_found: ToldFigure | None
    as_found_step: int
    clip: Clip | None
    clip_moves: tuple[str, ...]
    """Where its clip does not begin or end at the typed times."""
    captions: tuple[Cue, ...]
    held: str
    """Seconds for which the marked pictures stand still at the beginning of the clip."""
    basis: Basis
    basis_words: str
    minutes: str
    """Those that were typed or logged; the length of footage is no time of work."""
    timed: bool
    withheld: str
    """That its pictures and clip are withheld, and because of which lines; empty when they are not."""
    no_phone: str
    address: str
    """Where a phone finds it; empty when nobody said, and where no phone may be used."""
    open: tuple[str, ...]
    """What is still open when it begins."""


@dataclass(frozen=True, slots=True)
class SpokenSection:
    """A section with its steps."""

    title: str
    prose: tuple[str, ...]
    notes: tuple[Told, ...]
    steps: tuple[SpokenStep, ...]


@dataclass(frozen=True, slots=True)
class SpokenPair:
    """One thing before it came off and after it went on again."""

    item: str
    off: int
    found: ToldFigure | None
    on: int
    done: ToldFigure | None


@dataclass(frozen=True, slots=True)
class SpokenProblem:
    """Something wrong or missing."""

    severity: Severity
    word: str
    place: str
    what: str
    instead: str


@dataclass(frozen=True, slots=True)
class SpokenRecording:
    """A recording with what is odd about it."""

    name: str
    path: str
    sha256: str
    length: str
    width: int
    height: int
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Spoken:
    """The whole."""

    language: Language
    title: str
    number: str
    revision: str
    status: str
    status_words: str
    why_draft: str
    """What keeps it a draft; empty when nothing does but the missing approval."""
    reader: str
    """For whom it is; empty: for everybody."""
    item: str
    applies_to: str
    not_for: str
    author: str
    work_place: str
    people: str
    ask: str
    intro: tuple[str, ...]
    hazards: tuple[ToldHazard, ...]
    lists: tuple[ToldList, ...]
    tools: tuple[ToldItem, ...]
    supplies: tuple[ToldItem, ...]
    parts: tuple[ToldItem, ...]
    trays: tuple[ToldTray, ...]
    sections: tuple[SpokenSection, ...]
    torques: tuple[ToldTorque, ...]
    ledger: tuple[ToldEntry, ...]
    pairs: tuple[SpokenPair, ...]
    estimate: Estimate
    sentences: tuple[str, ...]
    """The estimate."""
    bars: tuple[Bar, ...]
    """The minutes of each step."""
    closing: tuple[Told, ...]
    problems: tuple[SpokenProblem, ...]
    """The worst first."""
    recordings: tuple[SpokenRecording, ...]
    film: Film | None
    film_length: str

    @property
    def steps(self) -> tuple[SpokenStep, ...]:
        """All steps in order."""
        return tuple(step for section in self.sections for step in section.steps)

    def having(self, *balances: Balance) -> tuple[ToldEntry, ...]:
        """Entries of the ledger that end in one of these ways."""
        return tuple(entry for entry in self.ledger if entry.balance in balances)
