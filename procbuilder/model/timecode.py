"""Times within a recording: exact seconds, and the way a technician writes them."""

import re
from dataclasses import dataclass
from fractions import Fraction

_TIME = re.compile(r"(?:(?P<h>\d{1,4}):(?=\d+:))?(?P<m>\d{1,5}):(?P<s>\d{2})(?:\.(?P<ms>\d{1,3}))?\Z")


def parse_time(text: str) -> Fraction | None:
    """Seconds of ``1:15``, ``1:02:15`` or ``1:15.250``; None when it is not such a time.

    Seconds stay below 60, and so do minutes behind hours; no film runs for 10 000 hours.
    """
    match = _TIME.match(text.strip())
    if not match:
        return None
    hours, minutes, seconds = (int(match[part] or 0) for part in ("h", "m", "s"))
    if seconds > 59 or (match["h"] and minutes > 59):
        return None
    thousandths = int((match["ms"] or "0").ljust(3, "0"))
    return Fraction(hours * 3600 + minutes * 60 + seconds) + Fraction(thousandths, 1000)


def format_time(seconds: Fraction) -> str:
    """``1:15``, ``1:02:15`` or, when there are thousandths, ``1:15.250``."""
    thousandths = round(seconds * 1000)
    whole, rest = divmod(thousandths, 1000)
    minutes, second = divmod(whole, 60)
    hours, minute = divmod(minutes, 60)
    text = f"{hours}:{minute:02}:{second:02}" if hours else f"{minute}:{second:02}"
    return f"{text}.{rest:03}" if rest else text


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of one recording, in seconds from its first picture."""

    recording: str
    start: Fraction
    end: Fraction

    @property
    def seconds(self) -> Fraction:
        """Length; never negative."""
        return max(self.end - self.start, Fraction(0))

    def overlap(self, other: "Span") -> Fraction:
        """Seconds that both share; zero for different recordings."""
        if self.recording != other.recording:
            return Fraction(0)
        return max(min(self.end, other.end) - max(self.start, other.start), Fraction(0))

    def __str__(self) -> str:
        return f"{self.recording} {format_time(self.start)}-{format_time(self.end)}".strip()
