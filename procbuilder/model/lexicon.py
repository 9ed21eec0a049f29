"""Trade knowledge as records: what the word lists of ``infer/data`` hold."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from procbuilder.model.activity import Activity, Order
from procbuilder.model.fastener import InchThread, Thread
from procbuilder.model.words import UNKNOWN, Words


@dataclass(frozen=True, slots=True)
class Protection:
    """Things that keep a state from hurting someone, as long as it lasts."""

    id: str
    states: tuple[str, ...]
    """Words of a state, such as ``raised``."""
    items: tuple[str, ...]
    """Words of the things that protect: ``axle stand``, ``chock``."""
    reason: str


@dataclass(frozen=True, slots=True)
class SingleUse:
    """Parts that are used once."""

    id: str
    things: tuple[str, ...]
    why: str
    spoilt: bool = False
    """Coming off spoils it: only a new one closes the entry."""


@dataclass(frozen=True, slots=True)
class Spoiling:
    """Commands that spoil what they take off."""

    id: str
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
    step: tuple[str, ...] = ()
    """Before the number of a step that goes back so."""
    to: tuple[str, ...] = ()
    """Between the numbers of the first and the last step."""
    given: tuple[str, ...] = ()
    """In front of a condition they say nothing: ``with``."""
    contrary: tuple[str, ...] = ()
    """In front of a condition they say the contrary: ``without``."""
    otherwise: tuple[str, ...] = ()
    """The contrary of the condition before."""


@dataclass(frozen=True, slots=True)
class Patterns:
    """Words of a typed order of tightening."""

    star: tuple[str, ...] = ()
    spiral: tuple[str, ...] = ()
    rows: tuple[str, ...] = ()
    """Between the number of rows and how many stand in a row."""


@dataclass(frozen=True, slots=True)
class Refit:
    """Words of refit steps that are proposed."""

    decide: tuple[tuple[tuple[str, ...], str], ...] = ()
    """Words of what is not simply put back, and what must be decided then."""
    threaded: tuple[str, ...] = ()
    """Things that are screwed tight."""
    ends: Mapping[str, str] = field(default_factory=dict)
    """The command that ends a state, by the last word of the state."""
    supply: tuple[str, ...] = ()
    """Last words of states whose end needs what stands before them: ``oil drained``."""
    said: Mapping[str, str] = field(default_factory=dict)
    """The parts of a proposed step."""


@dataclass(frozen=True, slots=True)
class Doing:
    """Verbs that do the same to a thing."""

    id: str
    act: str
    """As in ``Act``: ``off``."""
    verbs: tuple[str, ...]
    opposite: str = ""
    """The verb that puts it back."""


@dataclass(frozen=True, slots=True)
class SignWords:
    """What a safety sign of ISO 7010 means, and the words that call for it."""

    meaning: str
    words: tuple[str, ...] = ()
    worn: str = ""
    """The name of what is worn; empty for any other sign."""


@dataclass(frozen=True, slots=True)
class CheckWords:
    """Words that single questions look for."""

    on_wheels: tuple[str, ...] = ()
    """What is tightened when the wheels stand on the ground."""
    rubber: tuple[str, ...] = ()
    other_head: tuple[str, ...] = ()
    """Heads of bolts for which the hexagon of the thread says nothing."""
    torque_wrench: tuple[str, ...] = ()
    plainly_tight: tuple[str, ...] = ()
    """Typed in place of a torque where none is needed."""
    gloves: tuple[str, ...] = ()
    no_gloves: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Lexicon:
    """Words that the rules look for; all in lower case."""

    language: str = ""
    """Whose words they are; empty when there are none for the language of the procedure."""
    heard: bool = False
    """Whether a narration in it is understood."""
    words: Words = UNKNOWN
    """How its words are told apart."""
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
    checks: CheckWords = CheckWords()
    doings: tuple[Doing, ...] = ()
    """What verbs do to a thing, where commands are not heard as a narration is."""
    kept_small: tuple[str, ...] = ()
    """What goes into a bag or tray even where none is named."""
    not_kept: tuple[str, ...] = ()
    """What comes off without having to go on again."""
    protections: tuple[Protection, ...] = ()
    single_use: tuple[SingleUse, ...] = ()
    spoiling: tuple[Spoiling, ...] = ()
    ways: Ways = Ways()
    patterns: Patterns = Patterns()
    refit: Refit = Refit()
    threads: tuple[Thread, ...] = ()
    inch_threads: tuple[InchThread, ...] = ()
    torque_wrenches: tuple[tuple[int, int], ...] = ()
    """Ranges in N·m in which a torque wrench reads well."""
    nicknames: tuple[tuple[str, str], ...] = ()
    """What the workshop says, and the name under which it is filed."""
    safe_states: tuple[str, ...] = ()
    """Words of states that keep people safe while they last."""
    sounds_safe: tuple[str, ...] = ()
    """Words of states that may keep people safe."""
    synonyms: tuple[tuple[str, ...], ...] = ()
    """Names of the same thing."""
    activities: tuple[Activity, ...] = ()
    orders: tuple[Order, ...] = ()
    moves: Mapping[str, str] = field(default_factory=dict)
    """How a field that moves something is said: ``remove`` for ``Off``."""
    signs: Mapping[str, SignWords] = field(default_factory=dict)
    """By their ISO 7010 numbers, in the order in which they are looked for."""

    @property
    def raised(self) -> tuple[str, ...]:
        """Words of a vehicle that does not stand on its wheels."""
        return next((one.states for one in self.protections if one.id == "raised"), ())
