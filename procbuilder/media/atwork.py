"""What was at work in a step, a hand or a tool: where it was, how it looked, and whether it is still there."""

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np

from procbuilder.media.compare import Mask, against, central, in_front
from procbuilder.media.look import Floats, Grey, Look
from procbuilder.media.palette import likeness, palette

_LEAST = 0.015
"""Share of the picture below which nothing is at work."""
_NEARER = 0.6
"""Distance in colour from what was at work, as a share of that from the ground, up to which it is still there."""
_CENTRAL = 0.018
"""Share of the picture, counted most in its middle, that it must cover."""
_TOGETHER = 0.9
"""What place, colour and outline must add up to, of 1 each."""


@dataclass(frozen=True, slots=True)
class AtWork:
    """What reached into the pictures of the work that went before."""

    ground: Look
    """The place without it; the others are turned and lit like it."""
    pictures: tuple[tuple[Grey, Mask], ...]
    """Colours of each picture of the work, and where something reaches in."""

    @property
    def often(self) -> Floats:
        """For each place the share of the pictures in which something is there."""
        return np.asarray(np.mean([there for _, there in self.pictures], axis=0), dtype=np.float64)

    def share(self, there: Mask) -> float:
        """How much of the working place a mask covers, each part counted by how often something was there."""
        often = self.often
        return float(often[there].sum() / often.sum())

    @property
    def usually(self) -> float:
        """The share that is covered in the pictures of the work, on average."""
        often = self.often
        return float((often**2).sum() / often.sum())

    @property
    def place(self) -> Mask:
        """The working place: where something was half of the time."""
        return np.asarray(self.often >= 0.5)


@dataclass(frozen=True, slots=True)
class Sight:
    """How a picture looks at the place of the work."""

    covered: float
    """Share of the working place, each part counted by how often something was there."""
    central: float
    """Share of the picture covered there; its middle counts more than its sides."""
    colour: float
    """By how much the colours are liker to those of what was at work than the ground was."""
    outline: float
    """Votes of the outline: 1 something stands there before the ground, -1 the other way round."""

    @property
    def taken(self) -> bool:
        """Whether what was at work is there, too: weak in one way, it may be strong in the others."""
        return self.central >= _CENTRAL and self.covered + self.colour + self.outline >= _TOGETHER


def at_work(ground: Look, looks: Sequence[Look]) -> AtWork | None:
    """What reached into these pictures; None when that was hardly anything, or only once."""
    pictures = tuple(each for each in (against(ground, look) for look in looks) if each[1].mean() >= _LEAST)
    return AtWork(ground, pictures) if len(pictures) > 1 else None


def sight(work: AtWork, look: Look) -> Sight:
    """A picture compared with the work at its place: by place, by colour and by outline."""
    colour, came = against(work.ground, look)
    covered = came & _nearer(colour, _usual(work), work.ground.colour.astype(np.float32))
    where = came & work.place
    outline = float(in_front(look, work.ground)[where].mean()) if where.any() else 0.0
    return Sight(work.share(covered), central(covered & where), _liker(work, colour, where), outline)


def _usual(work: AtWork) -> Grey:
    """The mean colours of what was at work in each place; black where nothing was."""
    there = np.array([mask for _, mask in work.pictures], dtype=np.float32)[..., None]
    colours = np.array([colour for colour, _ in work.pictures])
    return np.asarray((colours * there).sum(axis=0) / np.maximum(there.sum(axis=0), 1), dtype=np.float32)


def _nearer(colour: Grey, one: Grey, two: Grey) -> Mask:
    """Where the colours are nearer to one picture than to the other."""
    soft, first, second = (cv2.GaussianBlur(each, (0, 0), 1.0) for each in (colour, one, two))
    return np.asarray(np.abs(soft - first).max(axis=2) < _NEARER * np.abs(soft - second).max(axis=2))


def _liker(work: AtWork, colour: Grey, where: Mask) -> float:
    """By how much the colours here are liker to what was at work than those of the ground are, usually."""
    place, now, ground = work.place, palette(colour, where), palette(work.ground.colour, where)
    hands = [palette(each, there & place) for each, there in work.pictures]
    by = np.median([(likeness(now, hand), likeness(ground, hand)) for hand in hands], axis=0)
    return float(by[0] - by[1])
