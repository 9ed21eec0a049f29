"""Safety signs by their ISO 7010 number."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sign:
    """A sign; its drawing is the file of its number in ``templates/signs``."""

    number: str
    """``W019``: W may hurt, M must, P must not, E help, F fire."""
    meaning: str
    """In our own words: the standard prevails."""
