"""Pictures asked for in a procedure, what is drawn on them, and what is hidden."""

from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from procbuilder.model.origin import Place


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle in fractions of the picture, 0 to 1 from the top left corner."""

    left: float
    top: float
    right: float
    bottom: float


class MarkShape(StrEnum):
    """What can be drawn on a picture."""

    ARROW = "arrow"
    """From the first point to the second."""
    RING = "ring"
    """Round the box of its two points; round one point, a ring of fixed size."""
    BOX = "box"
    LINE = "line"


@dataclass(frozen=True, slots=True)
class Mark:
    """One sign on a picture; its label is written beside it."""

    shape: MarkShape
    points: tuple[float, ...]
    """x, y or x, y, x2, y2 in fractions of the picture."""
    label: str
    place: Place

    def within(self, crop: Box) -> "Mark | None":
        """The mark in fractions of a part of the picture; None when no point of it lies in there."""
        sides = ((crop.left, crop.right - crop.left), (crop.top, crop.bottom - crop.top))
        points = tuple((value - sides[i % 2][0]) / sides[i % 2][1] for i, value in enumerate(self.points))
        across, down = points[0::2], points[1::2]
        if max(across) < 0 or min(across) > 1 or max(down) < 0 or min(down) > 1:
            return None
        return replace(self, points=points)


class PictureState(StrEnum):
    """What a picture shows of its step."""

    FOUND = "found"
    """How it was before the step."""
    DONE = "done"
    DETAIL = "detail"


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture that the technician chose: a moment of a recording, or a file of the folder."""

    place: Place
    recording: str
    time: Fraction | None
    file: str
    shows: str
    state: PictureState
    marks: tuple[Mark, ...] = ()
    hidden: tuple[Box, ...] = ()
    crop: Box | None = None

    @property
    def seen_marks(self) -> tuple[Mark, ...]:
        """The marks in fractions of what is kept of the picture; those outside the crop are left out."""
        if self.crop is None:
            return self.marks
        return tuple(filter(None, (mark.within(self.crop) for mark in self.marks)))


_REST_OF_SECOND = Fraction(1)
"""A player shows 0:50 until 0:51 begins: a thing that was last seen at 0:50 may be there all that time."""


@dataclass(frozen=True, slots=True)
class HiddenPath:
    """A region of a recording made unreadable: one box, or boxes at times, moving straight in between."""

    place: Place
    recording: str
    boxes: tuple[tuple[Fraction, Box], ...]

    @property
    def lasts(self) -> tuple[Fraction, Fraction] | None:
        """The first and the last typed time; None for a single box, which holds throughout."""
        return (self.boxes[0][0], self.boxes[-1][0]) if len(self.boxes) > 1 else None

    def at(self, since: Fraction, until: Fraction | None = None) -> Box | None:
        """The box for a picture on show from one time to another; None when nothing is hidden in it."""
        if self.lasts:
            first, last = self.lasts
            if (until if until is not None else since) < first or since >= last + _REST_OF_SECOND:
                return None
        earlier = [pair for pair in self.boxes if pair[0] <= since] or [self.boxes[0]]
        later = [pair for pair in self.boxes if pair[0] > since] or [self.boxes[-1]]
        (t0, a), (t1, b) = earlier[-1], later[0]
        share = float((since - t0) / (t1 - t0)) if t1 > t0 else 0.0
        share = min(max(share, 0.0), 1.0)
        sides = ((getattr(a, s), getattr(b, s)) for s in ("left", "top", "right", "bottom"))
        return Box(*(one + (two - one) * share for one, two in sides))
