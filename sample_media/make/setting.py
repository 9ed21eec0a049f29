"""Places and grips that many shots share."""

from hub_parts import INNER_SCALE, PIN_ANGLE, PIN_HEIGHT, STUD_ANGLES, stud_place
from mathutils import Matrix
from motion import Camera, Key, Track, put
from trailer import TYRE_RADIUS

RAISED = 6.0
"""How far the jack lifts the trailer."""

NUT_SEAT, WASHER_SEAT, BEARING_SEAT, WHEEL_NUT_SEAT = -0.44, -0.70, -0.72, -3.5


def axle(raised: float = RAISED) -> Matrix:
    """The axle's frame in the hall: Z points out of the hub, towards the camera."""
    return put(0, 0, TYRE_RADIUS + raised, 90)


AXLE = axle()
TRAILER_UP = put(0, 0, TYRE_RADIUS + RAISED)
TRAILER_DOWN = put(0, 0, TYRE_RADIUS)

INNER = put(0, 0, -8.2, 180, size=INNER_SCALE)
"""The inner bearing and its cup, in the hub's frame."""
OUTER = put(0, 0, BEARING_SEAT)
SEAL = put(0, 0, -8.8, 180)
PIN = put(0, 0, PIN_HEIGHT, rz=PIN_ANGLE)

BENCH_BACK_UP = put(0, 0, 0, 180)
"""The hub on the bench, standing on its nose."""
BENCH_NOSE_UP = put(0, 0, 8.8)

SPANNER_HOLD = put(13.4, 0, 3.15, 0, -13)
BAR_HOLD = put(31, 0, 6.6)
FLAT_BAR_HOLD = put(17, 0, 0.4)
PLIERS_HOLD = put(13.5, 0, 0)
HAMMER_HOLD = put(21, 0, 3.7)

CLOSE = Camera((9.5, -33, TYRE_RADIUS + RAISED + 11.5), (3.0, -3, TYRE_RADIUS + RAISED - 0.8), 43, 0.11)
"""Over the right shoulder, the hub fills the picture."""
CLOSER = Camera((6.0, -24, TYRE_RADIUS + RAISED + 9.5), (0.8, -2, TYRE_RADIUS + RAISED + 0.1), 52, 0.13)


def on_axle(*places: Matrix) -> Matrix:
    """A pose in the axle's frame, as seen in the hall with the trailer raised."""
    pose = AXLE
    for place in places:
        pose = pose @ place
    return pose


def wheel_nut(number: int, out: float = 0.0, turn: float = 0.0) -> Matrix:
    """Wheel nut 1 to 4 in the axle's frame, unscrewed by so many centimetres."""
    return stud_place(STUD_ANGLES[number - 1]) @ put(0, 0, WHEEL_NUT_SEAT + out, rz=turn)


def local(*keys: tuple[float, Key]) -> Track:
    """A track whose poses are given in the axle's frame; poses that follow another thing stay as they are."""
    return Track(tuple((moment, AXLE @ key if isinstance(key, Matrix) else key) for moment, key in keys))


def turning(start: float, step: float, count: int, stroke: float, place: Matrix) -> list[tuple[float, Matrix]]:
    """Keys for a thing that turns by a step and rests, several times over, while it stands in place."""
    keys = []
    for i in range(count):
        keys.append((start + stroke * i, place @ put(rz=step * i)))
        keys.append((start + stroke * (i + 0.8), place @ put(rz=step * (i + 1))))
    return keys


def with_stub(**poses: Matrix | Track) -> dict[str, Matrix | Track]:
    """Poses of a shot at the raised trailer: trailer, stub axle and stand are always there.

    An underscore in a name stands for a blank.
    """
    always = {"trailer": TRAILER_UP, "tow car": put(), "stub": AXLE, "stand": put(0, 42, 0, size=1.13)}
    return always | {name.replace("_", " "): pose for name, pose in poses.items()}
