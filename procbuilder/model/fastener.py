"""Threads with the figures that standards publish for them. They serve to ask questions, never to give a value."""

import math
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

STRENGTHS = ("4.6", "5.6", "8.8", "10.9", "12.9")
"""Strength classes of ISO 898-1, the weakest first."""


@dataclass(frozen=True, slots=True)
class Thread:
    """One metric thread."""

    size: str
    """``M8``."""
    pitch: float
    """Millimetres, coarse."""
    area: float
    """Stress area in mm², coarse."""
    hexagons: tuple[tuple[str, Decimal], ...]
    """(standard, millimetres across flats)."""
    keys: tuple[tuple[str, Decimal], ...]
    """(kind of head, millimetres of the hexagon key)."""
    proof: tuple[tuple[str, int], ...]
    """(strength class, proof load in newtons), coarse."""

    @property
    def diameter(self) -> int:
        """Millimetres."""
        return int(self.size[1:])

    @property
    def plain(self) -> tuple[Decimal, ...]:
        """Widths of plain hexagons, each once, the smallest first."""
        return tuple(sorted({width for standard, width in self.hexagons if not standard.startswith("flange")}))

    @property
    def fits(self) -> frozenset[Decimal]:
        """Every spanner and key that a standard gives for this thread."""
        return frozenset(width for _, width in (*self.hexagons, *self.keys))


@dataclass(frozen=True, slots=True)
class InchThread:
    """One inch thread; UNC and UNF have the same heads. All in inches."""

    size: Fraction
    hexagon: Fraction
    key: Fraction | None
    """Hexagon key of a cap screw; None when none is known."""

    @property
    def fits(self) -> frozenset[Fraction]:
        """Spanner and key that the standards give for this thread."""
        return frozenset(filter(None, (self.hexagon, self.key)))


@dataclass(frozen=True, slots=True)
class NamedThread:
    """A metric thread as named in a text."""

    size: str
    pitch: float | None
    """None when none was named: then it is the coarse one."""
    strength: str
    """``8.8``; empty when no class was named."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """What the name of a thing tells of its size."""

    thread: NamedThread | None = None
    inch_thread: Fraction | None = None
    """Inches of a UNC or UNF thread, as in ``5/16-18 UNC``."""
    spanners: tuple[Decimal, ...] = ()
    """Millimetres."""
    inch_spanners: tuple[Fraction, ...] = ()
    scale: tuple[Fraction, Fraction] | None = None
    """N·m at both ends of that of a torque wrench."""


NO_SIZES = Sizes()


def inches(text: str) -> Fraction:
    """``1 1/8`` as a number. ValueError for anything else."""
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def in_inches(number: Fraction) -> str:
    """``1 1/8``"""
    whole, rest = divmod(number, 1)
    return " ".join(filter(None, [str(whole) if whole else "", str(rest) if rest else ""]))


def stress_area(diameter: float, pitch: float) -> float:
    """Stress area in mm²: π/4·(d − 0.9382·P)², the formula of ISO 898-1."""
    return math.pi / 4 * (diameter - 0.9382 * pitch) ** 2


def proof_load(thread: Thread, strength: str, pitch: float | None = None) -> float:
    """Newtons that a bolt of this class bears without lasting stretch; of a fine pitch by its stress area.

    KeyError for a class without a published load.
    """
    coarse = dict(thread.proof)[strength]
    if pitch is None or pitch == thread.pitch:
        return coarse
    return coarse / thread.area * stress_area(thread.diameter, pitch)


def short_form_torque(friction: float, force: float, diameter: float) -> float:
    """T = K·F·d in N·m, for a force in newtons and a diameter in millimetres."""
    return friction * force * diameter / 1000


DRY, OILED = 0.20, 0.13
"""K of a dry thread as suppliers' tables give it, and of an oiled one (VDI 2230 with a friction of 0.10)."""


def is_plausible(torque: float, thread: Thread, named: NamedThread) -> bool:
    """False for more than a dry bolt of its class, else of the strongest, bears, or less than a third of an oiled
    one of its class, else of the weakest, tightened to 75 % of its proof load. ``torque`` in N·m.
    """
    classes = dict(thread.proof)
    strongest = named.strength if named.strength in classes else STRENGTHS[-1]
    weakest = named.strength if named.strength in classes else STRENGTHS[0]
    most = short_form_torque(DRY, proof_load(thread, strongest, named.pitch), thread.diameter)
    least = short_form_torque(OILED, 0.75 * proof_load(thread, weakest, named.pitch), thread.diameter)
    return least / 3 <= torque <= most


POUND_FOOT = 1.3558
"""N·m of one lbf·ft (ISO 80000-4: 1.355 818)."""
_NOMINAL, _NEAR = 0.19, 0.17
"""K of tables for a friction of 0.12 to 0.14 at 75 % of the proof load (VDI 2230), and how far tables lie apart."""


def is_slip(torque: float, thread: Thread, named: NamedThread) -> bool:
    """True when a torque does not fit the named class, and would if N·m and lbf·ft were mixed up.

    Without a class nothing tells. ``torque`` in N·m.
    """
    if named.strength not in dict(thread.proof):
        return False
    load = 0.75 * proof_load(thread, named.strength, named.pitch)
    usual = short_form_torque(_NOMINAL, load, thread.diameter)

    def near(value: float) -> bool:
        return abs(value / usual - 1) <= _NEAR

    return not near(torque) and (near(torque * POUND_FOOT) or near(torque / POUND_FOOT))
