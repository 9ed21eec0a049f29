"""A canvas for things made of flat slices, seen from above at 45 degrees.

Whatever hides a point lies above it, so a scene painted slice by slice from the bottom up hides itself rightly.
Lengths are millimetres: x to the right, y towards the viewer, z up. Colours are blue, green, red.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field

import cv2
import numpy as np
from numpy.typing import NDArray

Image = NDArray[np.uint8]
Points = NDArray[np.float64]
Colour = tuple[int, int, int]

TILT = 0.7071
"""How much of a length along y, and of a height, is left in the picture."""
FINE = 4
"""The canvas is so many times as large as the picture that comes out of it."""
INK: Colour = (46, 40, 36)


@dataclass(frozen=True)
class View:
    """What part of the scene fills the picture: its middle on the screen and its width."""

    across: float = 100.0
    down: float = -42.0
    width: float = 530.0


@dataclass(frozen=True)
class Solid:
    """Something between two heights; ``paint`` puts its slice at one height onto the canvas."""

    low: float
    high: float
    paint: Callable[["Canvas", float], None]


@dataclass
class Canvas:
    """A picture under way, and how millimetres become its pixels."""

    size: tuple[int, int]
    view: View = field(default_factory=View)

    def __post_init__(self) -> None:
        width, height = self.size[0] * FINE, self.size[1] * FINE
        self.scale = width / self.view.width
        self.step = 3 / (self.scale * TILT)
        rise = np.linspace(236, 204, height)[:, None, None]
        ground = np.broadcast_to(rise + np.array([2, 1, -2]), (height, width, 3))
        self.image: Image = np.ascontiguousarray(ground, np.uint8)

    def place(self, points: Points, z: float | Points = 0.0) -> NDArray[np.int32]:
        """Pixels of points in the plane at a height."""
        height, width = self.image.shape[:2]
        across = (points[:, 0] - self.view.across) * self.scale + width / 2
        down = (points[:, 1] * TILT - z * TILT - self.view.down) * self.scale + height / 2
        return np.stack([across, down], axis=1).round().astype(np.int32)

    def thick(self, length: float) -> int:
        """Width of a line in pixels."""
        return max(round(length * self.scale), 1)

    def fill(self, contours: Sequence[Points], z: float, colour: Colour) -> None:
        """An area; a contour within another one is a hole."""
        cv2.fillPoly(self.image, [self.place(contour, z) for contour in contours], colour)

    def outline(self, points: Points, z: float, width: float = 0.7, colour: Colour = INK, closed: bool = True) -> None:
        """A line along points."""
        cv2.polylines(self.image, [self.place(points, z)], closed, colour, self.thick(width), cv2.LINE_AA)

    def shadow(self, contours: Sequence[Points], z: float, within: Points, *, soft: float, depth: float) -> None:
        """A soft shadow of areas, seen only within another area."""
        height, width = self.image.shape[0] // FINE, self.image.shape[1] // FINE
        masks = np.zeros((2, height, width), np.uint8)
        cv2.fillPoly(masks[1], [self.place(within, z) // FINE], 255)
        for contour in contours:
            cv2.fillPoly(masks[0], [self.place(contour, z) // FINE], 255)
        blurred = cv2.GaussianBlur(masks[0], (0, 0), soft * self.scale / FINE)
        kept = np.where(masks[1] > 0, blurred, 0)
        left, top, wide, high = cv2.boundingRect(kept)
        part = cv2.resize(kept[top : top + high, left : left + wide], (wide * FINE, high * FINE))
        area = self.image[top * FINE : (top + high) * FINE, left * FINE : (left + wide) * FINE]
        area[:] = (area * (1 - part[..., None] / 255 * depth)).astype(np.uint8)

    def paint(self, solids: Iterable[Solid]) -> None:
        """Paint a scene from the bottom up."""
        waiting = sorted(solids, key=lambda solid: solid.low)
        z = min(solid.low for solid in waiting)
        top = max(solid.high for solid in waiting)
        while z <= top + self.step:
            for solid in waiting:
                if solid.low <= z < max(solid.high, solid.low + self.step):
                    solid.paint(self, z)
            z += self.step

    def finished(self) -> Image:
        """The picture at its final size."""
        small = cv2.resize(self.image, self.size, interpolation=cv2.INTER_AREA)
        return small.astype(np.uint8, copy=False)


def shaded(colour: Colour, light: float) -> Colour:
    """A colour in more or less light; 1 leaves it as it is."""
    blue, green, red = (min(round(value * light), 255) for value in colour)
    return blue, green, red
