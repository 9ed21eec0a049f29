"""The key frame of a step: footage looked through, measured and chosen from, coarse to fine."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

from procbuilder.media.choose import choose
from procbuilder.media.look import Look, look
from procbuilder.media.measure import measured
from procbuilder.media.sample import sampled
from procbuilder.media.stretches import kept, tail
from procbuilder.model.footage import Choice
from procbuilder.model.timecode import Span

CLOSE = Fraction(4)
"""Seconds of footage, counted from the end of a step, whose pictures are all looked at."""
WINDOW = Fraction(5)
"""The same, when none of those is good."""


def finished(path: Path, span: Span, *, skips: Iterable[Span] = ()) -> Choice:
    """The moment that shows the finished state of a step best.

    All pictures of the last seconds are looked at, of the rest the key frames. When none of the last is good, all of
    the last five seconds are. No picture is decoded twice.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    stretches = kept(span, skips)
    end = [(part, _around(stretches, part)) for part in tail(stretches, CLOSE)]
    near = [look(*each) for part, around in end for each in sampled(path, part, part.start, around.start)]
    begin = near[0].time if near else span.end
    before = [replace(part, end=min(part.end, begin)) for part in stretches if part.start < begin]
    good = near and not choose(measured(near), span).weak
    close = begin if good else next(iter(tail(stretches, WINDOW))).start
    return choose(measured([*_looks(path, before, close), *near]), span)


def as_found(path: Path, span: Span) -> Choice:
    """The first calm moment of a span with nothing in front: the same choice, with time running backwards.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    backwards = [replace(each, time=-each.time) for each in reversed(_looks(path, [span], span.start))]
    measures = [replace(each, time=-each.time) for each in reversed(measured(backwards))]
    return choose(measures, span, first=True)


def _looks(path: Path, stretches: Sequence[Span], close: Fraction) -> list[Look]:
    return [look(*each) for part in stretches for each in sampled(path, part, close)]


def _around(stretches: Sequence[Span], part: Span) -> Span:
    return next(stretch for stretch in stretches if stretch.start <= part.start < stretch.end)
