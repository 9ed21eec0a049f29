"""Where things are at which moment: poses, tracks of poses, and shots made of tracks."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from mathutils import Euler, Matrix

DRAWN_RATE = 6.25
"""Drawn frames per second where things move; the pictures between them are made from their neighbours."""

Key = Matrix | Callable[[float], Matrix | None] | None


def put(
    x: float = 0, y: float = 0, z: float = 0, rx: float = 0, ry: float = 0, rz: float = 0, size: float = 1
) -> Matrix:
    """A pose from a place, angles in degrees and a scale."""
    turn = Euler((math.radians(rx), math.radians(ry), math.radians(rz))).to_matrix().to_4x4()
    return Matrix.Translation((x, y, z)) @ turn @ Matrix.Scale(size, 4)


def blend(first: Matrix, last: Matrix, share: float) -> Matrix:
    """The pose between two poses."""
    place_a, turn_a, size_a = first.decompose()
    place_b, turn_b, size_b = last.decompose()
    return Matrix.LocRotScale(place_a.lerp(place_b, share), turn_a.slerp(turn_b, share), size_a.lerp(size_b, share))


@dataclass(frozen=True)
class Track:
    """Poses of one thing in time; it eases from each to the next, and is unseen while the pose is None."""

    keys: tuple[tuple[float, Key], ...]

    def at(self, moment: float) -> Matrix | None:
        """The pose at a moment of the shot."""
        before, after = self.keys[0], self.keys[-1]
        for key in self.keys:
            if key[0] <= moment:
                before = key
        for key in reversed(self.keys):
            if key[0] >= moment:
                after = key
        first, last = _value(before[1], moment), _value(after[1], moment)
        if first is None or last is None or after[0] <= before[0] or first == last:
            return first
        share = (moment - before[0]) / (after[0] - before[0])
        return blend(first, last, share * share * (3 - 2 * share))


def _value(key: Key, moment: float) -> Matrix | None:
    return key(moment) if callable(key) else key


def track(*keys: tuple[float, Key]) -> Track:
    """A track from (moment, pose) pairs."""
    return Track(keys)


def held(carrier: Track, hold: Matrix) -> Callable[[float], Matrix | None]:
    """A pose that goes along with another thing."""

    def place(moment: float) -> Matrix | None:
        pose = carrier.at(moment)
        return None if pose is None else pose @ hold

    return place


def follow(carrier: Track, hold: Matrix | None = None) -> Track:
    """A track that goes along with another thing from first to last."""
    return track((0, held(carrier, hold or Matrix.Identity(4))))


@dataclass(frozen=True)
class Camera:
    """A camera that stands still during its shot."""

    place: tuple[float, float, float]
    target: tuple[float, float, float]
    lens: float = 40.0
    blur: float = 0.075
    """The lens opening: smaller numbers blur the distance more."""


@dataclass(frozen=True)
class Loop:
    """A stretch of the shot that is shown several times in a row."""

    start: float
    period: float
    times: int


@dataclass(frozen=True)
class Shot:
    """One take without a cut."""

    name: str
    place: str
    """`floor` or `bench`."""
    seconds: float
    camera: Camera
    poses: Mapping[str, Matrix | Track]
    keys: tuple[float, ...]
    """Moments that show a finished state: drawn first."""
    loops: tuple[Loop, ...] = ()
    rank: int = 2
    """1 is drawn before 2, and so on."""
    samples: int = 4
    rate: float = DRAWN_RATE

    def moment(self, film: float) -> float:
        """The moment of the action for a moment of the film, with the loops folded."""
        for loop in self.loops:
            if film > loop.start + loop.period * loop.times:
                film -= loop.period * (loop.times - 1)
            elif film >= loop.start:
                return loop.start + (film - loop.start) % loop.period
        return film

    def pose_at(self, film: float) -> dict[str, Matrix | None]:
        """All poses at a moment of the film."""
        moment = self.moment(min(max(film, 0.0), self.seconds))
        return {name: way.at(moment) if isinstance(way, Track) else way for name, way in self.poses.items()}
