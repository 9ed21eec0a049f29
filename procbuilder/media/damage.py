"""Where a recording is damaged, told in stretches."""

from collections.abc import Iterable
from fractions import Fraction

from procbuilder.model.footage import Damage
from procbuilder.model.timecode import Span

_APART = Fraction(2)
"""Seconds after which another damaged picture belongs to another stretch."""


def stretches(moments: Iterable[tuple[str, Fraction]]) -> tuple[Damage, ...]:
    """Damaged pictures, given by recording and time, gathered in order where they follow closely."""
    found: list[Damage] = []
    for recording, time in sorted(set(moments)):
        near = found and found[-1].span.recording == recording and time - found[-1].span.end <= _APART
        start, count = (found[-1].span.start, found.pop().pictures) if near else (time, 0)
        found.append(Damage(Span(recording, start, time), count + 1))
    return tuple(found)
