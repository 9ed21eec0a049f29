"""One thing in the running book: how many of it were opened, and how many have come back."""

from dataclasses import dataclass, field
from decimal import Decimal

from procbuilder.model.ledger import Moment, Opening, Spoilt
from procbuilder.model.quantity import Item, Quantity


@dataclass(slots=True)
class Account:
    """One thing that was opened, with what has come back so far."""

    name: str
    opening: Opening
    out: Decimal
    back: Decimal = Decimal(0)
    counted: bool = True
    """False for ``bolts`` without a number: any closing closes them all."""
    opened: list[Moment] = field(default_factory=list)
    closed: list[Moment] = field(default_factory=list)
    fasteners: tuple[Item, ...] = ()
    tray: str = ""
    scrapped: bool = False
    spoilt: Spoilt | None = None
    renewed: bool = False
    nipped: bool = False
    of: str = ""
    assumed: Moment | None = None
    """The step that tells to put back in reverse what was then open; a later opening takes it away."""
    protects: str = ""
    """The state for which it was fitted, as typed after ``while:``."""
    brought: list[Decimal] = field(default_factory=list)
    """How many each opening said, endless for a plural without a number; what is nipped up was open before."""
    tightened: list[Decimal | None] = field(default_factory=list)
    """How many each final tightening said."""
    told_back: bool = False
    """A closing said how many."""
    lumped: bool = False
    """A closing did not say which of several openings it was for."""

    @property
    def rest(self) -> Decimal:
        """How many are still open; never negative."""
        return max(self.out - self.back, Decimal(0))

    @property
    def uncounted(self) -> bool:
        """Nobody said how many were opened, and it matters: what is slackened is mostly tightened all together."""
        return bool(self.opened) and not self.counted and (self.opening is not Opening.SLACKENED or self.told_back)

    @property
    def doubtful(self) -> bool:
        """It was opened more than once, and nobody said that one closing was for all of it."""
        if self.lumped or self.opening is not Opening.SLACKENED:
            return self.lumped
        counted = sum((count for count in self.tightened if count is not None), Decimal(0))
        one_each = self.tightened.count(None) >= len(self.brought)
        return bool(self.tightened) and len(self.brought) > 1 and counted < sum(self.brought) and not one_each

    def item(self, count: Decimal) -> Item:
        """So many of it."""
        return Item(self.name, self.opened[0].place, Quantity(count) if count > 1 else None)
