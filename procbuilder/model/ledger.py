"""What was opened and what was closed again."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from procbuilder.model.origin import Place
from procbuilder.model.quantity import Item


class Opening(StrEnum):
    """The ways in which a thing can be open."""

    OFF = "off"
    SLACKENED = "slackened"
    """Half open: it demands a final tightening."""
    TEMPORARY = "for-now"
    """Fitted for the job alone."""
    STATE = "state"


class Balance(StrEnum):
    """How an entry of the ledger ends."""

    CLOSED = "closed"
    ASSUMED = "assumed"
    """No step says so but one that tells to refit in reverse."""
    OPEN = "open"
    LEFT_OPEN = "left-open"
    """On purpose, with a reason."""
    NEVER_OPENED = "never-opened"
    """Closed, but no step opened it."""


@dataclass(frozen=True, slots=True)
class Moment:
    """Where something was opened or closed: the step, the line, and the time on film."""

    step: str
    """Id of the step."""
    number: int
    place: Place
    recording: str = ""
    time: Fraction | None = None
    """Seconds; None when the step was not filmed."""


@dataclass(frozen=True, slots=True)
class OnWay:
    """A way through the steps: with all of these branches taken, or with none of them."""

    branches: tuple[str, ...]
    """Their conditions as typed."""
    taken: bool


@dataclass(frozen=True, slots=True)
class Spoilt:
    """Why a thing cannot be used again once it is off."""

    id: str
    """Name in the list of parts that are used once, or of commands that spoil."""
    why: str
    """As that list says it, in the language of the procedure."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing followed from its opening to its closing."""

    item: str
    """As typed where it was opened."""
    opening: Opening
    balance: Balance
    opened: tuple[Moment, ...]
    closed: tuple[Moment, ...]
    out: Decimal
    """How many were opened; 1 when no count was typed."""
    back: Decimal
    """How many were closed."""
    fasteners: tuple[Item, ...] = ()
    """What held it."""
    tray: str = ""
    scrapped: bool = False
    """It came off for scrap: only a new one closes it."""
    spoilt: Spoilt | None = None
    """Why it cannot be used again though nobody wrote ``scrap``; it then counts as scrap."""
    renewed: bool = False
    """A new one goes on."""
    nipped: bool = False
    """Nipped up since it was slackened: half closed, and still to be tightened for good."""
    of: str = ""
    """The larger part it belongs to, as typed after ``of:``."""
    reason: str = ""
    """Why it is left open, and who says so."""
    uncounted: bool = False
    """Several were opened, and nobody said how many."""
    doubtful: bool = False
    """Opened more than once, and closed by fewer actions that do not say that they are for all of it."""
    way: OnWay | None = None
    """It ends so only on this way; None for every other."""


@dataclass(frozen=True, slots=True)
class Ledger:
    """Every entry, in the order of the openings."""

    entries: tuple[Entry, ...] = ()

    def having(self, *balances: Balance) -> tuple[Entry, ...]:
        """Entries that end in one of these ways."""
        return tuple(entry for entry in self.entries if entry.balance in balances)
