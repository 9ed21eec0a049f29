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
