"""Every picture of the footage of a step, decoded once: for its cuts, its real ends and its key frame."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from procbuilder.media.choose import choose
from procbuilder.media.cuts import NEAR, find, small
from procbuilder.media.difference import Grey
from procbuilder.media.look import Look, look
from procbuilder.media.measure import measured
from procbuilder.media.sample import SPACING, decoded, sparse
from procbuilder.media.snap import REACH, may_end_later, snapped_by
from procbuilder.media.stretches import kept
from procbuilder.media.views import Remembered
from procbuilder.model.footage import Choice, Cut, PacketFacts, Snapped
from procbuilder.model.timecode import Span

_ENDING = Fraction(10)
"""Seconds at the end of a step whose pictures are all measured."""
_BEGINNING = Fraction(2)
"""Seconds from the typed time in which its real beginning may lie."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What all pictures of a span tell."""

    cuts: tuple[tuple[Span, tuple[Cut, ...]], ...]
    """Of each stretch that is not skipped."""
    snapped: Snapped
    choice: Choice
    """The moment that shows the finished state of the snapped span best."""


def look_through(path: Path, film: PacketFacts, span: Span, room: Span, skips: Sequence[Span]) -> Seen:
    """Look at every picture of a span, and of what lies around it as long as its ends may be moved there.

    All are judged for cuts. Around the ends, and in the last seconds, sixteen a second are judged for motion and as key
    frames too, elsewhere one a second or less, so that a long step takes little more memory than a short one.

    Args:
        path: The recording.
        film: What its packets tell.
        span: As typed.
        room: What no other step and no skip lays claim to, around the span.
        skips: Stretches that are passed over.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    looks: list[Look] = []
    found = tuple((part, _cuts(path, part, span, room, film, looks)) for part in kept(span, skips))
    moved = snapped_by(Remembered(path, looks), span, room, [cut for _, cuts in found for cut in cuts])
    shown = kept(moved.span, skips)
    inside = [each for each in looks if any(part.start <= each.time < part.end for part in shown)]
    return Seen(found, moved, choose(measured(inside), moved.span))


def _cuts(path: Path, part: Span, span: Span, room: Span, film: PacketFacts, looks: list[Look]) -> tuple[Cut, ...]:
    """The cuts of a stretch; looks at its pictures are added."""
    around = (NEAR + 1) * film.spacing
    start, end = max(part.start - around, Fraction(0)), part.end + around
    furthest = max(end, min(room.end, span.end + REACH)) if part.end == span.end else end
    earliest = span.start - REACH if part.start == span.start else part.start

    def pictures() -> Iterator[tuple[Fraction, Grey]]:
        until, due = end, max(earliest, looks[-1].time + SPACING) if looks else earliest
        for time, frame in decoded(path, replace(part, start=start, end=furthest), start):
            if time >= until:
                if until == furthest or not may_end_later(looks, span.end, time):
                    return
                until = furthest
            if frame.is_corrupt:
                continue
            if time >= due:
                looks.append(look(time, frame))
                near = time < span.start + _BEGINNING or time >= span.end - _ENDING
                due = time + (SPACING if near else sparse(span))
            yield time, small(frame)

    return tuple(cut for cut in find(pictures()) if part.start <= cut.time < part.end)
