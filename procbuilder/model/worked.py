"""What is worked out of a procedure: dangers and torques."""

from dataclasses import dataclass

from procbuilder.model.ledger import Moment
from procbuilder.model.origin import TYPED, Origin, Place
from procbuilder.model.quantity import Item
from procbuilder.model.sequence import Sequence
from procbuilder.model.sign import Sign
from procbuilder.model.signal import Signal
from procbuilder.model.torque import Stage, Torque


@dataclass(frozen=True, slots=True)
class Hazard:
    """One hazard statement."""

    signal: Signal
    hazard: str
    consequence: str
    avoid: str
    state: str
    """The state while which it holds; empty when it holds for its step only."""
    place: Place
    origin: Origin = TYPED
    signs: tuple[Sign, ...] = ()
    """Safety signs that its words call for."""


@dataclass(frozen=True, slots=True)
class Standing:
    """What still holds at a step because an earlier step began it."""

    hazards: tuple[Hazard, ...] = ()
    states: tuple[str, ...] = ()
    """States that last at this step."""
    protections: tuple[Item, ...] = ()
    """Things that must stay in place at this step."""


@dataclass(frozen=True, slots=True)
class RemovedProtection:
    """Something that keeps people safe, taken away while it is still needed."""

    item: str
    """As typed where it is taken away."""
    state: str
    """The state that still lasts."""
    reason: str
    """Why it matters, from the word lists; empty when the link was typed as ``while:``."""
    moment: Moment


@dataclass(frozen=True, slots=True)
class TakenOff:
    """Something that a step takes off by its words, and that no later step speaks of."""

    item: str
    command: str
    moment: Moment


@dataclass(frozen=True, slots=True)
class HeardTorque:
    """A torque that was said while a step was filmed."""

    step: str
    value: Torque
    words: str
    """The sentence."""
    origin: Origin
    place: Place
    """The line of the subtitle file."""


@dataclass(frozen=True, slots=True)
class TorqueRow:
    """One line of the tightening table. Never a guess: without a typed value it is a blank."""

    item: Item
    step: str
    number: int
    value: Torque
    """Without a text it is a ruled blank."""
    look_in: str
    """Where to look a blank up, or the document the value came from."""
    order: str
    when: str
    origin: Origin
    place: Place
    also: tuple[Stage, ...] = ()
    """The value in the other unit, rounded to what was typed; empty when there is none."""
    demanded: bool = False
    """The row is there because something is tightened, not because a Torque field was typed."""
    sequence: Sequence | None = None
    """The turns of its fasteners; None where order or number is not known."""
    of: str = ""
    """The larger part to which this group belongs, as typed."""
    heard: str = ""
    """What was said of its value: no torque until a person writes it in."""
