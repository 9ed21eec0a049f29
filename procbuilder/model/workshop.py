"""What a library's ``workshop.toml`` says: times, labour, dangers and words of its own, and who is qualified for what.

Nothing of it is assumed when it is not there.
"""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from procbuilder.model.activity import Activity
from procbuilder.model.heard import Act
from procbuilder.model.workstudy import Allowance


@dataclass(frozen=True, slots=True)
class Condition:
    """How much longer or shorter the work takes under another condition."""

    name: str
    """``on a lift``."""
    factor: Decimal
    instead_of: str
    """The condition with which it is compared; it must stand in the procedure's ``place``. Empty: any."""
    origin: str
    """Where the factor comes from; demanded."""


@dataclass(frozen=True, slots=True)
class Qualification:
    """What somebody may do that the law leaves to qualified people."""

    name: str
    """As ``Reserved`` names it."""
    holder: str
    valid_until: date


@dataclass(frozen=True, slots=True)
class OwnOperation:
    """Something that is said in this workshop, and what it does to a thing."""

    print: str
    """The command as it is printed."""
    act: Act
    verbs: tuple[str, ...]
    particles: tuple[str, ...] = ()
    things: tuple[str, ...] = ()
    """Things or groups of things for which it counts; empty means all."""
    state: str = ""
    opposite: str = ""
    scrap: bool = False


@dataclass(frozen=True, slots=True)
class OwnWords:
    """What a workshop adds to the words of the trade."""

    nicknames: tuple[tuple[str, str], ...] = ()
    """(what is said, the name under which it is filed)"""
    objects: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """(group, things)"""
    operations: tuple[OwnOperation, ...] = ()


NO_OWN_WORDS = OwnWords()


@dataclass(frozen=True, slots=True)
class Workshop:
    """The workshop file."""

    conditions: tuple[Condition, ...] = ()
    allowance: Allowance | None = None
    """For rest, fetching and interruptions."""
    allowance_origin: str = ""
    seen_by: str = ""
    """Who will see logged times."""
    kept: str = ""
    """How long rows of the practice log are kept, in words."""
    rate: Decimal | None = None
    """Price of a labour hour."""
    currency: str = ""
    paper: str = ""
    """``a4`` or ``letter``; empty when it is not said."""
    address: str = ""
    """Where the library lies for a browser, such as ``https://shop.example/jobs/``; empty: nowhere."""
    dangers: tuple[Activity, ...] = ()
    """Activities of its own."""
    qualifications: tuple[Qualification, ...] = ()
    words: OwnWords = NO_OWN_WORDS


UNKNOWN_WORKSHOP = Workshop()
"""Of a procedure that lies in no library."""
