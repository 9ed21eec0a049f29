"""Typed times moved to where the action really begins or ends, for pictures and clips alone; the text keeps its own.

Nothing moves without clear evidence. Inwards there must be a cut to another place, a little after the beginning or
before the end: what lies beyond it belongs to another step. Outwards something must move at the typed time, and come
to rest soon, seen from the step: the action was cut off.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import numpy as np

from procbuilder.media.calm import APART, paces
from procbuilder.media.cuts import alike
from procbuilder.media.look import Look
from procbuilder.media.sample import SPACING
from procbuilder.media.views import Decoded, Views
from procbuilder.model.footage import Bound, Cut, Snapped
from procbuilder.model.timecode import Span

REACH = Fraction(3, 2)
"""Seconds by which a typed time may be off."""
_SHARE = Fraction(1, 4)
"""Share of the span that a cut may take away at either end."""
_LEAST = Fraction(1, 30)
"""Seconds of another shot that nobody sees."""
_RIM, _CHANGED, _ALL_ROUND = 8, 10.0, 0.25
"""Pixels of 160 from each side of the picture, grey levels, and the share of each side that must change by them where
the place changes: a hand that comes within one picture reaches in from one side or two."""
_INSIDE = Fraction(3, 10)
"""Seconds within the step in which something must move all the time for its end to be looked for outside."""
_STILL = Fraction(1, 2)
"""Seconds of stillness that show where the action ends; they are taken with it."""
_PLAIN = APART + SPACING
"""Seconds by which pictures must reach beyond one of which is to be known whether it is calm."""
_REACHES = (Fraction(0), REACH - _STILL + _PLAIN, REACH)
"""Seconds beyond the typed time after which it may be known that nothing moves there, or that nothing comes to rest."""

Pace = tuple[Fraction, bool]
"""Seconds beyond the typed time, below 0 inside the step, and whether all stands still there."""


def snapped(path: Path, span: Span, room: Span, cuts: Iterable[Cut]) -> Snapped:
    """The span of a step with its real ends; only pictures around ends that have room are decoded.

    Args:
        path: The recording.
        span: As typed.
        room: What no other step and no skip lays claim to, around the span.
        cuts: Found in the recording.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    return snapped_by(Decoded(path), span, room, cuts)


def snapped_by(views: Views, span: Span, room: Span, cuts: Iterable[Cut]) -> Snapped:
    """The same by looks that may be at hand already."""
    near = [cut for cut in cuts if min(cut.time - span.start, span.end - cut.time) <= REACH and not cut.jump]
    moved = at_cuts(span, [cut for cut in near if _changes_all_round(views, span.recording, cut.time)])
    start = None if moved.begins else _outwards(views, room, span.start, forwards=False)
    end = None if moved.ends else _outwards(views, room, span.end, forwards=True)
    if start is not None:
        moved = replace(moved, span=replace(moved.span, start=start), begins=Bound.ACTION)
    if end is not None:
        moved = replace(moved, span=replace(moved.span, end=end), ends=Bound.ACTION)
    return moved


def at_cuts(span: Span, cuts: Iterable[Cut]) -> Snapped:
    """The span without what another shot shows at its ends; two cuts at one end tell nothing."""
    reach = min(REACH, span.seconds * _SHARE)
    times = [cut.time for cut in cuts if not cut.jump]
    first = [time for time in times if _LEAST < time - span.start <= reach]
    last = [time for time in times if _LEAST < span.end - time <= reach]
    start, end = (near[0] if len(near) == 1 else None for near in (first, last))
    begins, ends = (Bound.SHOT if moved else None for moved in (start, end))
    return Snapped(span, replace(span, start=start or span.start, end=end or span.end), begins, ends)


def settles(paces: Sequence[Pace]) -> Fraction | None:
    """How many seconds beyond the typed time the action has ended; None when nothing plain is seen.

    Args:
        paces: In order, from inside the step outwards.
    """
    inside = [calm for beyond, calm in paces if -_INSIDE <= beyond < 0]
    outside = [(beyond, calm) for beyond, calm in paces if beyond >= 0]
    rest = next((beyond for beyond, calm in outside if calm), None)
    if len(inside) < 2 or any(inside) or rest is None:
        return None
    seen = [(beyond, calm) for beyond, calm in outside if rest <= beyond <= rest + _STILL]
    whole = outside[-1][0] >= rest + _STILL and rest + _STILL <= REACH
    return rest + _STILL if whole and all(calm for _, calm in seen) else None


def may_settle(paces: Sequence[Pace], reached: Fraction) -> bool:
    """Whether pictures further out can tell where the action ends.

    Args:
        paces: As for ``settles``.
        reached: Seconds beyond the typed time that are known.
    """
    inside = [calm for beyond, calm in paces if -_INSIDE <= beyond < 0]
    rests = any(calm for beyond, calm in paces if beyond >= 0)
    return len(inside) >= 2 and not any(inside) and (rests or reached < REACH - _STILL + _PLAIN)


def _outwards(views: Views, room: Span, typed: Fraction, *, forwards: bool) -> Fraction | None:
    """Where the action at a typed time ends, or began; None when it stays."""
    start = typed - _INSIDE * 2 if forwards else max(room.start, typed - REACH)
    end = min(room.end, typed + REACH) if forwards else typed + _INSIDE * 2
    start = max(start, Fraction(0))
    if (end - typed if forwards else typed - start) < _STILL:
        return None
    sign, around = (1 if forwards else -1), Span(room.recording, start, end)
    looks: list[Look] = []
    for reached, looks in views.outwards(around, typed, _REACHES, forwards=forwards):
        if not may_settle(_seen_from(typed, looks, sign), reached):
            return None
    beyond = settles(_seen_from(typed, looks, sign))
    if beyond is None:
        return None
    there = typed + sign * beyond
    return there if _same_place(looks, typed, there) else None


def may_end_later(looks: Sequence[Look], typed: Fraction, reached: Fraction) -> bool:
    """Whether pictures further out than ``reached`` can tell where the action that goes on at a typed time ends."""
    near = [each for each in looks if each.time >= typed - _INSIDE * 2]
    return may_settle(_seen_from(typed, near, 1), reached - typed)


def _seen_from(typed: Fraction, looks: Sequence[Look], sign: int) -> list[Pace]:
    """How looks follow each other from inside the step outwards, which is on in time or back."""
    calm = [pace.calm for pace in paces(looks)]
    return [(sign * (each.time - typed), still) for each, still in zip(looks, calm, strict=True)][::sign]


def _changes_all_round(views: Views, recording: str, cut: Fraction) -> bool:
    """Whether all four sides of the picture show another thing after a cut than before it."""
    looks = views.within(Span(recording, max(cut - _INSIDE, Fraction(0)), cut + _INSIDE))
    before, after = [each for each in looks if each.time < cut], [each for each in looks if each.time >= cut]
    if not before or not after:
        return False
    changed = np.abs(after[0].small - before[-1].small) > _CHANGED
    sides = (changed[:_RIM], changed[-_RIM:], changed[:, :_RIM], changed[:, -_RIM:])
    return bool(min(side.mean() for side in sides) >= _ALL_ROUND)


def _same_place(looks: Sequence[Look], one: Fraction, other: Fraction) -> bool:
    """Whether no cut and no swing of the camera lies between two moments."""
    pair = (min(looks, key=lambda each: abs(each.time - time)).small.astype(np.uint8) for time in (one, other))
    return alike(*pair)
