"""Trade knowledge as records: what the word lists of ``infer/data`` hold."""

from dataclasses import dataclass, field

from procbuilder.model.activity import Activity, Order


@dataclass(frozen=True, slots=True)
class Protection:
    """Things that keep a state from hurting someone, as long as it lasts."""

    state: str
    """Word of a state, such as ``raised``."""
    items: tuple[str, ...]
    """Words of the things that protect: ``axle stand``, ``chock``."""
    reason: str


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
    single_use: tuple[str, ...] = ()
    """Words of fasteners that hold by themselves and only once."""
    protections: tuple[Protection, ...] = ()
    safe_states: tuple[str, ...] = ()
    """Words of states that keep people safe while they last."""
    synonyms: tuple[tuple[str, ...], ...] = ()
    """Names of the same thing."""
    activities: tuple[Activity, ...] = ()
    orders: tuple[Order, ...] = ()
    signs: dict[str, str] = field(default_factory=dict)
    """What the ISO 7010 numbers mean."""
