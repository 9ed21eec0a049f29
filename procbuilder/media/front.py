"""Which calm moments have a hand or a tool in front of the part."""

from collections.abc import Sequence
from fractions import Fraction

import numpy as np

from procbuilder.media.compare import entered, standing
from procbuilder.media.look import Look
from procbuilder.media.palette import likeness, palette
from procbuilder.media.stillness import PAUSE

ALIKE = 0.25
"""Difference in log brightness up to which two pictures can be compared."""
_AROUND_PART = 0.45
"""How far from the middle of the picture something in front counts."""
_EVERY = Fraction(2, 5)
"""Seconds between the pictures of the whole footage that a calm moment is compared with."""
_BEGINNING = Fraction(1)
"""Seconds at the beginning of the footage, when the hand is not there yet."""
_SAME = 0.03
"""Share of the picture up to which nothing has come in since the beginning."""
_SHOWN = PAUSE
"""Seconds of calm from which on what is in front is held there to be seen: a shorter pause belongs to the work."""
_FIRST_VIEW = Fraction(3)
"""Seconds at the beginning in which a picture of the same place in the same light is looked for."""
_COVERED = 0.07, 0.55
"""Share of the picture in which something has come in since the beginning; beyond, all has changed."""
_OUTLINED = 0.01
"""Share of the picture in front of which it must stand by its outline."""
_LIKE_WORK = 0.15
"""By how much its colours are liker to what was at work than to the ground that was seen there at the beginning."""
_SAME_PLACE = 0.33
"""Share of its place that what was at work usually took, too."""
_AT_WORK = 12
"""Pictures of the work that it is compared with."""
_BACK_WITHIN = Fraction(17, 10)
"""Seconds before the end within which a hand that comes back begins to rest."""
_BACK = 0.09
"""Evidence from which on the last calm moment is taken for a hand that has come back."""
_GONE = -0.02
"""Evidence below which the hand has gone between the two."""
_HAND = 0.3
"""Share of the picture beyond which a change is no hand, but a large part or the light."""
_LONGER = 0.04
"""Weight of how much longer the one calm moment lasts than the other: the finished state is held on purpose."""


def covered(looks: Sequence[Look], calm: Sequence[range]) -> list[bool]:
    """For each calm stretch, in order of time, whether something stands in front."""
    clear = _before_it_came_back(looks, calm)
    if calm and _has_stayed(looks, calm[clear]):
        return [True] * len(calm)
    return [number > clear or _has_stayed(looks, stretch) for number, stretch in enumerate(calm)]


def clearest(looks: Sequence[Look], stretch: range) -> Look:
    """The picture that stands for a calm stretch: of usual light, from its middle."""
    light = float(np.median([np.log(look.brightness + 1) for look in looks]))
    middle = (stretch.start + stretch.stop - 1) / 2
    return looks[min(stretch, key=lambda i: (abs(np.log(looks[i].brightness + 1) - light) > ALIKE, abs(i - middle)))]


def _has_stayed(looks: Sequence[Look], stretch: range) -> bool:
    """Whether something has come in since the beginning with the colours, and to the place, of what was at work."""
    one = clearest(looks, stretch)
    first = _same_view(looks, stretch)
    if first is None or looks[stretch.stop - 1].time - looks[stretch.start].time >= _SHOWN:
        return False
    came = entered(one, first)
    if came.mean() < _COVERED[0] or standing(one, first, _AROUND_PART) < _OUTLINED:
        return False
    now, ground = palette(one, came), palette(first, came)
    liker, place = [], []
    for look in _at_work(looks, stretch, first):
        there = entered(look, first)
        hand = palette(look, there)
        liker.append((likeness(now, hand), likeness(ground, hand)))
        place.append(float((came & there).sum() / came.sum()))
    if not liker:
        return False
    to_work, to_ground = np.median(liker, axis=0)
    return bool(to_work - to_ground >= _LIKE_WORK and np.median(place) >= _SAME_PLACE)


def _same_view(looks: Sequence[Look], stretch: range) -> Look | None:
    """The first picture that shows the same place in the same light."""
    one = clearest(looks, stretch)
    early = (look for look in looks[: stretch.start] if look.time < looks[0].time + _FIRST_VIEW)
    return next((look for look in early if _comparable(one, look) and entered(one, look).mean() <= _COVERED[1]), None)


def _at_work(looks: Sequence[Look], stretch: range, first: Look) -> list[Look]:
    """Pictures between the beginning and a calm stretch."""
    before = looks[: max(stretch.start - 1, 0)]
    work = [look for look in before if look.time >= looks[0].time + _BEGINNING and _comparable(look, first)]
    return work[:: max(len(work) // _AT_WORK, 1)]


def _before_it_came_back(looks: Sequence[Look], calm: Sequence[range]) -> int:
    """Number of the last calm stretch, or of the one after which a hand has come back for the rest of the footage."""
    last = len(calm) - 1
    if calm and _as_at_first(looks, calm[last]):
        return last
    for number in range(last - 1, -1, -1):
        if looks[calm[number + 1].start].time < looks[-1].time - _BACK_WITHIN:
            break
        evidence = _evidence(looks, calm[number], calm[last])
        if evidence > _BACK or (evidence > 0 and _as_at_first(looks, calm[number])):
            return number
        if evidence < _GONE:
            break
    return last


def _as_at_first(looks: Sequence[Look], stretch: range) -> bool:
    """Whether nothing stands in the picture that has come in, or is missing that has left, since the beginning."""
    one = clearest(looks, stretch)
    return any(entered(one, look).mean() < _SAME for look in _beginning(looks, stretch) if _comparable(one, look))


def _beginning(looks: Sequence[Look], stretch: range) -> list[Look]:
    return [look for look in looks[: stretch.start] if look.time < looks[0].time + _BEGINNING]


def _evidence(looks: Sequence[Look], before: range, last: range) -> float:
    """How much speaks for a hand in the last stretch that is not in the one before."""
    one, two = clearest(looks, before), clearest(looks, last)
    if not _comparable(one, two):
        return 0.0
    share = (standing(two, one, _AROUND_PART) - standing(one, two, _AROUND_PART)) / 2
    if share > _HAND:
        return 0.0
    usual = (_usually(looks, last) - _usually(looks, before)) / 2
    return share + usual + _LONGER * float(np.log(_seconds(looks, before) / _seconds(looks, last)))


def _usually(looks: Sequence[Look], stretch: range) -> float:
    """Mean share that stands in front in this stretch against the rest of the footage, at most a tenth."""
    one, others, due = clearest(looks, stretch), [], looks[0].time
    for index, look in enumerate(looks):
        if look.time >= due and not stretch.start - 1 <= index <= stretch.stop:
            others.append(look)
            due = look.time + _EVERY
    against = [standing(one, other, _AROUND_PART) for other in others if _comparable(one, other)]
    return float(np.clip(np.mean(against), -0.1, 0.1)) if against else 0.0


def _comparable(one: Look, two: Look) -> bool:
    return bool(abs(np.log((one.brightness + 1) / (two.brightness + 1))) < ALIKE)


def _seconds(looks: Sequence[Look], stretch: range) -> float:
    return float(looks[stretch.stop - 1].time - looks[stretch.start].time) + 0.1
