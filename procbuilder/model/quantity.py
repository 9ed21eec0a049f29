"""Things with a number: two axle stands, 60 g of grease."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import Decimal

from procbuilder.model.fastener import NO_SIZES, Sizes
from procbuilder.model.origin import TYPED, Origin, Place


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit; a count has the unit ``x``."""

    number: Decimal
    unit: str = "x"

    def __str__(self) -> str:
        return f"{self.number:f} {self.unit}"


@dataclass(frozen=True, slots=True)
class Item:
    """A tool, part, supply or other thing, as named in the procedure."""

    name: str
    place: Place
    quantity: Quantity | None = None
    new: bool = False
    """Must be a new one: the old one is not used again."""
    scrap: bool = False
    """Thrown away when it comes off."""
    origin: Origin = TYPED
    sizes: Sizes = NO_SIZES
    """What its name tells of its size."""

    def __str__(self) -> str:
        return self.words

    @property
    def count(self) -> Decimal | None:
        """How many; None where no number was typed, and for an amount."""
        return self.quantity.number if self.quantity and self.quantity.unit == "x" else None

    @property
    def head(self) -> str:
        """The name without what stands behind a comma: ``M8 bolt`` of ``M8 bolt, 13 mm``."""
        return self.name.partition(",")[0].strip() or self.name

    @property
    def words(self) -> str:
        """Quantity first for counts, last for amounts, as in the procedure text."""
        name = self.name + (", new" if self.new else "") + (", scrap" if self.scrap else "")
        if self.quantity is None:
            return name
        return f"{self.quantity} {name}" if self.quantity.unit == "x" else f"{name}, {self.quantity}"


def totals(items: Iterable[Item]) -> tuple[Item, ...]:
    """One line a name and unit, in order of first mention, amounts added up.

    A mention without a quantity adds nothing to one that has a quantity.
    """
    groups: dict[tuple[str, bool], list[Item]] = {}
    for item in items:
        groups.setdefault((item.name, item.new), []).append(item)
    return tuple(line for group in groups.values() for line in _sums(group))


def _sums(group: list[Item]) -> Iterable[Item]:
    sums: dict[str, Quantity] = {}
    for quantity in (item.quantity for item in group if item.quantity):
        before = sums.get(quantity.unit, Quantity(Decimal(0), quantity.unit))
        sums[quantity.unit] = Quantity(before.number + quantity.number, quantity.unit)
    if not sums:
        return [group[0]]
    return [replace(group[0], quantity=quantity) for quantity in sums.values()]


def most(items: Iterable[Item]) -> tuple[Item, ...]:
    """One line a name, in order of first mention, with the largest count of any mention.

    For tools: a stand used in two steps is still one stand.
    """
    lines: dict[str, Item] = {}
    for item in items:
        known = lines.setdefault(item.name, item)
        if item.quantity and (known.quantity is None or item.quantity.number > known.quantity.number):
            lines[item.name] = replace(known, quantity=item.quantity)
    return tuple(lines.values())
