"""What a camera writes into a recording of how and when it filmed."""

from collections.abc import Mapping
from datetime import datetime, timedelta
from fractions import Fraction

_FILMED_RATE = "com.android.capture.fps"
_SAME_SPEED = Fraction(1, 10)
"""By how much of itself a frame rate may stray when the light changes."""
_CLOCK_SET = 2000
"""A file dated earlier comes from a camera whose clock was never set."""


def speed(tags: Mapping[str, str], rate: Fraction | None) -> Fraction | None:
    """How many times faster than it happened a recording is shown; None when no tag of the camera tells it.

    Cameras that slow down or speed up write at how many pictures a second they filmed. Without that tag a sped-up
    recording cannot be told from a plain one, above all when it has no sound.

    Args:
        tags: Of the file and of its track of pictures.
        rate: Pictures a second at which it is shown.
    """
    try:
        filmed = Fraction(tags.get(_FILMED_RATE, ""))
    except (ValueError, ZeroDivisionError):
        return None
    if not rate or filmed <= 0:
        return None
    times = rate / filmed
    return Fraction(1) if abs(times - 1) <= _SAME_SPEED else times


def begun(tags: Mapping[str, str], duration: Fraction) -> str:
    """When filming began by the clock of the camera, in ISO 8601; empty when the file does not say.

    Phones with Android stamp a file when they close it (from memory), others when they open it.
    """
    try:
        stamp = datetime.fromisoformat(tags.get("creation_time", ""))
    except ValueError:
        return ""
    if stamp.year < _CLOCK_SET:
        return ""
    if any(name.startswith("com.android.") for name in tags):
        stamp -= timedelta(seconds=float(duration))
    return stamp.replace(microsecond=0).isoformat()
