"""The signal words: their ranks, and the fields in which they are typed."""

from collections.abc import Mapping
from enum import StrEnum


class Signal(StrEnum):
    """Signal words with the meaning of ANSI Z535.6; the worst first."""

    DANGER = "DANGER"
    """Will kill or seriously injure if not avoided."""
    WARNING = "WARNING"
    """Could kill or seriously injure."""
    CAUTION = "CAUTION"
    """Could cause minor or moderate injury."""
    NOTICE = "NOTICE"
    """Damage to things only."""

    @property
    def field(self) -> str:
        """Name of the field in which it is typed: ``Danger``."""
        return self.value.capitalize()

    @property
    def rank(self) -> int:
        """0 for the worst."""
        return list(Signal).index(self)

    @property
    def is_grave(self) -> bool:
        """True where somebody could be killed or badly hurt."""
        return self in (Signal.DANGER, Signal.WARNING)


SIGNALS: Mapping[str, Signal] = {signal.field: signal for signal in Signal}
"""Names of the fields with their signal words, the worst first."""
