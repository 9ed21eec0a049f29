"""Which calm moments have a hand or a tool in front of the part."""

import math
from collections.abc import Sequence
from fractions import Fraction

import numpy as np

from procbuilder.media.atwork import at_work, sight
from procbuilder.media.compare import against, brighter
from procbuilder.media.look import Look
from procbuilder.media.stillness import PAUSE

_ALIKE = 0.25
"""Difference in log brightness up to which two pictures can be compared."""
_EVERY = Fraction(2, 5)
"""Seconds between the pictures of the work that a calm moment is compared with."""
_BEGINNING = Fraction(1)
"""Seconds at the beginning of the footage, when the hand is not there yet."""
_FIRST_VIEW = Fraction(3)
"""Seconds at the beginning in which a picture of the same place in the same light is looked for."""
_ALL = 0.55
"""Share of the picture in which something is different from which on the view has changed."""
_SHOWN = PAUSE
"""Seconds of calm from which on a hand may hold something to be seen: a shorter pause belongs to the work."""
_MUCH = 0.75
"""How much it must cover, as a share of what it usually did at work, when it only rests there."""


def covered(looks: Sequence[Look], calm: Sequence[range]) -> list[bool]:
    """For each calm stretch, in order of time, whether something stands in front.

    Each is compared with the work before it, seen against the first view and against the last calm moment with nothing
    in front, which shows what has been fitted or taken off since. A moment before which nothing was at work is not the
    end of a step in which something is in front later on.
    """
    stayed: list[bool | None] = []
    free: Look | None = None
    for stretch in calm:
        grounds = (_first_view(looks, stretch), free)
        found = [_has_stayed(looks, stretch, ground) for ground in grounds if ground is not None]
        known = [each for each in found if each is not None]
        stayed.append(any(known) if known else None)
        free = clearest(looks, stretch) if stayed[-1] is False else free
    return [any(stayed[number:]) if each is None else each for number, each in enumerate(stayed)]


def clearest(looks: Sequence[Look], stretch: range) -> Look:
    """The picture that stands for a calm stretch: of usual light, from its middle."""
    light = float(np.median([np.log(look.brightness + 1) for look in looks]))
    middle = (stretch.start + stretch.stop - 1) / 2
    return looks[min(stretch, key=lambda i: (abs(np.log(looks[i].brightness + 1) - light) > _ALIKE, abs(i - middle)))]


def _has_stayed(looks: Sequence[Look], stretch: range, ground: Look) -> bool | None:
    """Whether what was at work still covers the working place, and does not hold up what is shown; None: no work."""
    one = clearest(looks, stretch)
    work = at_work(ground, _during_work(looks, stretch, ground)) if _comparable(one, ground) else None
    if work is None:
        return None
    seconds = looks[stretch.stop - 1].time - looks[stretch.start].time
    seen = sight(work, one)
    return seen.taken and not (seconds >= _SHOWN and seen.covered < _MUCH * work.usually)


def _first_view(looks: Sequence[Look], stretch: range) -> Look | None:
    """The first picture that shows the same place in the same light."""
    one = clearest(looks, stretch)
    early = (look for look in looks[: stretch.start] if look.time < looks[0].time + _FIRST_VIEW)
    return next((look for look in early if _comparable(one, look) and _same_place(one, look)), None)


def _during_work(looks: Sequence[Look], stretch: range, ground: Look) -> list[Look]:
    """Pictures between the beginning and a calm stretch, in the same light, not closer than need be."""
    work, due = [], looks[0].time + _BEGINNING
    for look in looks[: max(stretch.start - 1, 0)]:
        if look.time >= due and _comparable(look, ground):
            work.append(look)
            due = look.time + _EVERY
    return work


def _comparable(one: Look, two: Look) -> bool:
    return abs(math.log(brighter(one.small, two.small))) < _ALIKE


def _same_place(one: Look, two: Look) -> bool:
    return bool(against(one, two)[1].mean() <= _ALL)
