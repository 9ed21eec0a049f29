"""The estimate: minutes of each step with all their evidence, and the hours of the whole job."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from procbuilder.model.footage import FootageSplit
from procbuilder.model.origin import Place
from procbuilder.model.workstudy import Allowance


class Basis(StrEnum):
    """Where the minutes of a step come from; the best evidence first."""

    LOG = "log"
    """Logged runs."""
    TYPED = "typed"
    FOOTAGE = "footage"
    """The hands-on part of the one stretch of film of that step, in which no cut was found: one run."""
    CUT = "cut-footage"
    """The same of several stretches, or of one with cuts or with parts left out: a lower bound."""
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True)
class Evidence:
    """One source for the minutes of a step. All are kept; the best one counts."""

    basis: Basis
    low: Decimal
    likely: Decimal
    high: Decimal
    count: int = 1
    """Number of logged runs, or of stretches of film."""


@dataclass(frozen=True, slots=True)
class StepTime:
    """Hands-on minutes of one step."""

    step: str
    basis: Basis
    low: Decimal
    """From the log: one run of ten is shorter. Typed: as typed."""
    likely: Decimal
    """From the log: half of the runs are shorter."""
    high: Decimal
    footage: Fraction
    """Seconds of recording of this step, whatever the basis."""
    split: FootageSplit | None = None
    """How they are spent; None when nothing was filmed, or it was not scanned."""
    extra: bool = False
    """The step belongs to a branch (``Only if``): its minutes are not in the totals."""
    people: int = 1
    """How many work on it at the same time."""
    evidence: tuple[Evidence, ...] = ()
    """All there is, the best first."""


@dataclass(frozen=True, slots=True)
class OddTime:
    """A logged time far from what the others let expect: kept, but it moves the estimate little."""

    place: Place
    """Its line in the log."""
    step: str
    minutes: Decimal
    low: Decimal
    """Eight of ten such times were expected between low and high."""
    high: Decimal


@dataclass(frozen=True, slots=True)
class Practice:
    """What the practice log adds to an estimate."""

    sittings: int = 0
    """Times that somebody did the job, or a part of it."""
    people: int = 0
    rows: int = 0
    """Rows of steps that the procedure has."""
    unused: int = 0
    """Rows of steps that it no longer has."""
    repeated: bool = False
    """Somebody did it more than once, so that the learning rate is not only a stated one."""
    odd: tuple[OddTime, ...] = ()


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """The likely hours under another condition, by a factor of the workshop file."""

    name: str
    """``on a lift``, as typed; empty for the allowance."""
    factor: Decimal
    low: Decimal
    likely: Decimal
    high: Decimal
    origin: str
    """Where the factor comes from, as typed."""
    allowance: Allowance | None = None
    """Time for rest and interruptions that the factor adds; None for another condition."""


@dataclass(frozen=True, slots=True)
class Price:
    """What the labour costs at the rate of the workshop file; person-hours count."""

    rate: Decimal
    """Of one hour."""
    currency: str
    low: Decimal
    high: Decimal


@dataclass(frozen=True, slots=True)
class Extra:
    """Minutes that come on top when something is so."""

    condition: str
    minutes: str
    """As typed, or summed over the steps of the branch; empty when nobody said."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """The total: summed over the steps, then rounded up once to tenths of an hour."""

    steps: tuple[StepTime, ...] = ()
    low: Decimal = Decimal(0)
    """Hours, hands-on, the third time or later: the usual range, in which not all steps go well or badly at once."""
    likely: Decimal = Decimal(0)
    high: Decimal = Decimal(0)
    waiting: Decimal = Decimal(0)
    """Likely minutes of waiting, not in the hours above."""
    stated: str = ""
    """The total that the technician states, as typed."""
    worst_low: Decimal = Decimal(0)
    """Hours if every step goes well."""
    worst_high: Decimal = Decimal(0)
    """Hours if every step goes badly."""
    person_hours: Decimal = Decimal(0)
    """Likely hours, those of two people counted twice."""
    overlapping: Decimal = Decimal(0)
    """Likely minutes of waiting in which other work can be done."""
    elapsed: Decimal = Decimal(0)
    """Likely hours from start to end: hands-on, and waiting that does not overlap."""
    stated_hours: Decimal | None = None
    """The stated total in hours; None when it cannot be read as a time, or there is none."""
    unaccounted: Decimal | None = None
    """Stated minus elapsed hours, both in tenths: what the steps do not account for. Below 0: they take longer."""
    first: tuple[Decimal, Decimal] = (Decimal(0), Decimal(0))
    """Likely hours of the first time, at both ends of the learning rate."""
    practised: tuple[Decimal, Decimal] = (Decimal(0), Decimal(0))
    """Likely hours of the tenth time."""
    rate: tuple[Decimal, Decimal] = (Decimal(0), Decimal(0))
    """Share of the time left after each doubling of the number of times done: both ends."""
    films: int = 0
    """Recordings in which steps of the totals are seen."""
    practice: Practice = Practice()
    place: str = ""
    """Where the work is done, as typed."""
    not_included: tuple[str, ...] = ()
    extras: tuple[Extra, ...] = ()
    elsewhere: tuple[Elsewhere, ...] = ()
    price: Price | None = None
    """None without a rate, and for a lower bound."""
    seen_by: str = ""
    """Who will see logged times, as the workshop file says."""
    kept: str = ""
    """How long rows of the log are kept, as it says."""

    def count(self, basis: Basis) -> int:
        """How many steps of the totals have their minutes from this evidence."""
        return sum(step.basis is basis and not step.extra for step in self.steps)

    @property
    def lower_bound(self) -> bool:
        """True when some step has no minutes but those of cut footage, or none at all."""
        return self.count(Basis.CUT) + self.count(Basis.NOTHING) > 0
