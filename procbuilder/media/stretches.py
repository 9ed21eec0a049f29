"""Which stretches of a span are used when parts of it are skipped."""

from collections.abc import Iterable
from fractions import Fraction

from procbuilder.model.timecode import Span


def kept(span: Span, skips: Iterable[Span]) -> tuple[Span, ...]:
    """What is left of a span, in order; skips of other recordings do not count."""
    left = []
    start = span.start
    inside = (skip for skip in skips if span.overlap(skip) > 0)
    for skip in sorted(inside, key=lambda skip: skip.start):
        if skip.start > start:
            left.append(Span(span.recording, start, skip.start))
        start = max(start, skip.end)
    if span.end > start:
        left.append(Span(span.recording, start, span.end))
    return tuple(left)


def room(span: Span, duration: Fraction, others: Iterable[Span]) -> Span:
    """How far a span may grow within a recording of this length until it meets one of the others."""
    there = [other for other in others if other.recording == span.recording]
    before = (min(other.end, span.start) for other in there if other.start < span.start)
    after = (max(other.start, span.end) for other in there if other.end > span.end)
    return Span(span.recording, max(before, default=Fraction(0)), min(after, default=duration))


def tail(stretches: Iterable[Span], seconds: Fraction) -> tuple[Span, ...]:
    """The last seconds of footage in these stretches, in order."""
    last: list[Span] = []
    for stretch in reversed(tuple(stretches)):
        if seconds <= 0:
            break
        start = max(stretch.start, stretch.end - seconds)
        last.insert(0, Span(stretch.recording, start, stretch.end))
        seconds -= stretch.end - start
    return tuple(last)
