"""How much is read: what no camera makes is refused with a reason before it costs memory or hours."""

from procbuilder.model.facts import Phrase, facts
from procbuilder.model.fault import Cause

OBLONG = 8
"""Pixels and pictures are at most this many times as long as they are wide."""
MOST_PIXELS = 2**26
"""Of one picture: twice as many as the largest film cameras have, and more than nearly all phones."""
USUAL_PIXELS = 36_000_000
"""Of one picture of a recording, unless every picture is asked for: the largest cameras film in 8192 x 4320."""
USUAL_PICTURES = 500_000
"""In one recording, unless every picture is asked for: over two hours at 60 a second."""
MOST_BYTES = 2**28
"""Of a picture file."""

_MILLION = 1_000_000


def plausible(width: int, height: int) -> bool:
    """Whether a camera may have taken it; damage can make a picture a thousand times as high as wide."""
    return too_large(width, height) is None


def too_large(width: int, height: int) -> Phrase | None:
    """Why a picture of this size is not read."""
    short, long = sorted((width, height))
    if long > OBLONG * short:
        return Phrase(Cause.OBLONG, facts(width=width, height=height, most=OBLONG))
    if short * long > MOST_PIXELS:
        return Phrase(Cause.LARGE, facts(width=width, height=height, most=MOST_PIXELS // _MILLION))
    return None


def beyond_usual(width: int, height: int) -> Phrase | None:
    """Why a recording with pictures of this size is read only when every picture is asked for."""
    if width * height <= USUAL_PIXELS:
        return None
    return Phrase(Cause.LARGE_FILM, facts(width=width, height=height, most=USUAL_PIXELS // _MILLION))


TOO_MANY = Phrase(Cause.LONG_FILM, facts(most=USUAL_PICTURES))
"""Why a recording with more pictures is read only when every picture is asked for."""
TOO_HEAVY = Phrase(Cause.HEAVY, facts(most=MOST_BYTES // _MILLION))
"""Why a picture file that takes more is not read."""
