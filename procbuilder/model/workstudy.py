"""Work study: the allowance that makes a standard time of a normal one, in any one unit of time.

Source of the terms: work measurement as taught since the ILO's introduction to work study; "normal" is the
American word for its "basic" time.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum


class Convention(StrEnum):
    """What an allowance is a share of. 15 % of 15.36 min gives 18.07 or 17.66 min, so it is always named."""

    DAY = "working-day"
    """Standard = normal / (1 − share)."""
    JOB = "job-time"
    """Standard = normal × (1 + share)."""


@dataclass(frozen=True, slots=True)
class Allowance:
    """Time for rest, fetching and interruptions, with the convention of its share."""

    share: Decimal
    """0.15 is 15 %."""
    convention: Convention

    def __post_init__(self) -> None:
        if not 0 <= self.share < 1:
            raise ValueError(f"an allowance is a share from 0 to below 1, not {self.share}")

    def standard(self, normal: Decimal) -> Decimal:
        """Standard time of a normal time."""
        if self.convention is Convention.DAY:
            return normal / (1 - self.share)
        return normal * (1 + self.share)
