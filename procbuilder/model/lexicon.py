"""Trade knowledge as records: what the word lists of ``infer/data`` hold."""

from dataclasses import dataclass, field

from procbuilder.model.activity import Activity, Order
from procbuilder.model.fastener import InchThread, Thread


@dataclass(frozen=True, slots=True)
class Protection:
    """Things that keep a state from hurting someone, as long as it lasts."""

    state: str
    """Word of a state, such as ``raised``."""
    items: tuple[str, ...]
    """Words of the things that protect: ``axle stand``, ``chock``."""
    reason: str


@dataclass(frozen=True, slots=True)
class SingleUse:
    """Parts that are used once."""

    things: tuple[str, ...]
    why: str
    spoilt: bool = False
    """Coming off spoils it: only a new one closes the entry."""


@dataclass(frozen=True, slots=True)
class Spoiling:
    """Commands that spoil what they take off."""

    verbs: tuple[str, ...]
    why: str
    things: tuple[str, ...] = ()
    """Only these are spoilt by it; empty means whatever is taken off."""


@dataclass(frozen=True, slots=True)
class Ways:
    """Words about the ways through a procedure."""

    reverse: tuple[str, ...] = ()
    refit: tuple[str, ...] = ()
    """One of these and one of ``reverse`` in a sentence: things go back in reverse."""
    given: tuple[str, ...] = ()
    """In front of a condition they say nothing: ``with``."""
    contrary: tuple[str, ...] = ()
    """In front of a condition they say the contrary: ``without``."""
    otherwise: tuple[str, ...] = ()
    """The contrary of the condition before."""


@dataclass(frozen=True, slots=True)
class Lexicon:
    """Words that the rules look for; all in lower case."""

    commands: frozenset[str] = frozenset()
    """Verbs that begin a command."""
    tightening: tuple[str, ...] = ()
    """Words of a command that tightens something for good."""
    tests: tuple[str, ...] = ()
    """Words of a command that tests the finished work."""
    critical: tuple[str, ...] = ()
    """Words of things whose failure can kill: brakes, steering, wheels, fuel, restraints."""
    flammable: tuple[str, ...] = ()
    """Words of what burns or explodes."""
    vapour: tuple[str, ...] = ()
    """Words of what gives off vapour or gas that can catch fire in cold air."""
    rotating: tuple[str, ...] = ()
    """Words of what turns and catches a glove."""
    protections: tuple[Protection, ...] = ()
    single_use: tuple[SingleUse, ...] = ()
    spoiling: tuple[Spoiling, ...] = ()
    ways: Ways = Ways()
    threads: tuple[Thread, ...] = ()
    inch_threads: tuple[InchThread, ...] = ()
    torque_wrenches: tuple[tuple[int, int], ...] = ()
    """Ranges in N·m in which a torque wrench reads well."""
    nicknames: tuple[tuple[str, str], ...] = ()
    """What the workshop says, and the name under which it is filed."""
    activities: tuple[Activity, ...] = ()
    orders: tuple[Order, ...] = ()
    signs: dict[str, str] = field(default_factory=dict)
    """What the ISO 7010 numbers mean."""
