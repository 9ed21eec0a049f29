"""What a technician states of the whole job or of a step: the total of the time, and how many people it takes."""

import re
from fractions import Fraction

_CLOCK = re.compile(r"(\d+):([0-5]\d)(?:\s*(?:h|hours?))?\Z")
_PARTS = re.compile(r"(?:(\d+(?:\.\d+)?)\s*(?:h|hrs?|hours?))?\s*(?:(\d+(?:\.\d+)?)\s*(?:m|min|mins|minutes?))?\Z")


def stated_minutes(text: str) -> Fraction | None:
    """Minutes of ``1.5 h``, ``90 min``, ``1 h 30 min`` or ``1:30``; None when it says anything else.

    ``about 1.5 h`` stays words: how much about is, nobody said.
    """
    plain = " ".join(text.casefold().replace("and", " ").split()).rstrip(".")
    if clock := _CLOCK.match(plain):
        return Fraction(int(clock[1]) * 60 + int(clock[2]))
    parts = _PARTS.match(plain)
    if not plain or not parts or not any(parts.groups()):
        return None
    return Fraction(parts[1] or 0) * 60 + Fraction(parts[2] or 0)


def read_crew(text: str) -> int:
    """How many people; 1 when it says nothing that is a number."""
    return max(int(text), 1) if text.isdecimal() else 1
