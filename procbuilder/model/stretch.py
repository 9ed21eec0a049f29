"""Stretches of one recording, and what several lists of them have in common."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Stretch:
    """From ``start`` to before ``end``, in seconds from 0:00 of a recording that need not be named."""

    start: Fraction
    end: Fraction

    @property
    def seconds(self) -> Fraction:
        """Length; never negative."""
        return max(self.end - self.start, Fraction(0))


Stretches = tuple[Stretch, ...]
"""In order of time, none touching the next."""


def joined(stretches: Iterable[Stretch], gap: Fraction = Fraction(0)) -> Stretches:
    """The same footage in order; those that overlap, touch or lie no more than ``gap`` apart become one."""
    whole: list[Stretch] = []
    for each in sorted((one for one in stretches if one.seconds), key=lambda one: one.start):
        if whole and each.start - whole[-1].end <= gap:
            whole[-1] = Stretch(whole[-1].start, max(whole[-1].end, each.end))
        else:
            whole.append(each)
    return tuple(whole)


def shared(some: Iterable[Stretch], others: Iterable[Stretch]) -> Stretches:
    """What lies in both."""
    ours, theirs = joined(some), joined(others)
    found, at = [], 0
    for one in ours:
        while at < len(theirs) and theirs[at].end <= one.start:
            at += 1
        for other in theirs[at:]:
            if other.start >= one.end:
                break
            found.append(Stretch(max(one.start, other.start), min(one.end, other.end)))
    return tuple(found)


def without(some: Iterable[Stretch], others: Iterable[Stretch]) -> Stretches:
    """What lies in the first list alone."""
    left = []
    for one in joined(some):
        start = one.start
        for hole in shared([one], others):
            left.append(Stretch(start, hole.start))
            start = hole.end
        left.append(Stretch(start, one.end))
    return joined(left)


def seconds(stretches: Iterable[Stretch]) -> Fraction:
    """Length of all together; what two share counts once."""
    return sum((one.seconds for one in joined(stretches)), Fraction(0))
