"""Shots on the hall floor: the whole trailer, the chocks, the wheel and the jack."""

from hub_parts import STUD_ANGLES, stud_place
from mathutils import Matrix
from motion import Camera, Loop, Shot, Track, follow, held, put, track
from setting import BAR_HOLD, RAISED, TRAILER_DOWN, TRAILER_UP, axle, wheel_nut
from trailer import TYRE_RADIUS

CHOCK_FRONT, CHOCK_BEHIND = put(9, 147, 0), put(-9, 147, 0, rz=180)
STAND_PLACE = put(0, 42, 0, size=1.13)
JACK_PLACE = put(-62, 30, 0)
JACK_POINT = put(-62, 30, 11.5)
HANDLE_HINGE = put(-62, -9, 11)
WIDE = Camera((-330, -250, 150), (15, 60, 32), 30, 0.3)
FROM_FRONT = Camera((250, -310, 120), (20, 40, 30), 31, 0.3)
FAR_WHEEL = Camera((-50, 290, 62), (0, 154, 20), 35, 0.2)
WHEEL_DOWN = Camera((15, -95, 50), (3, 0, 26), 48, 0.12)
WHEEL_UP = Camera((15, -95, 56), (3, 0, 32), 48, 0.12)
WHEEL_WHOLE = Camera((22, -125, 72), (2, -8, 31), 42, 0.12)
JACK_SIDE = Camera((-150, -185, 78), (-30, 5, 26), 35, 0.2)
BEAM_SIDE = Camera((-98, -58, 42), (-8, 34, 22), 38, 0.12)
RIGHT_PALM, LEFT_PALM = put(28, 0, -6, ry=90) @ put(rz=180), put(-28, 0, -6, ry=-90) @ put(rz=180)
TOP_PALM, LOW_PALM = put(4, 22, 1.1), put(-4, -22, 1.1, rz=32)

Poses = dict[str, Matrix | Track]


def trailer_poses(trailer: Track, nuts: tuple[int, ...] = (1, 2, 3, 4), stand: bool = False) -> Poses:
    """The whole trailer with its near wheel; whatever it carries follows it."""

    def on(place: Matrix) -> Track:
        return follow(trailer, put(rx=90) @ place)

    poses: Poses = {
        "trailer": trailer,
        "tow car": put(),
        "stub": on(put()),
        "hub": on(put()),
        "cap": on(put()),
        "wheel": on(put()),
    }
    poses |= {f"wheel nut {number}": on(wheel_nut(number)) for number in nuts}
    poses |= {"chock front": CHOCK_FRONT, "chock behind": CHOCK_BEHIND}
    return poses | ({"stand": STAND_PLACE} if stand else {})


def at_height(rise: float) -> Track:
    """The trailer standing still."""
    return track((0, put(0, 0, TYRE_RADIUS + rise)))


def _still(name: str, seconds: float, camera: Camera) -> Shot:
    poses = trailer_poses(at_height(0))
    unchocked = {what: pose for what, pose in poses.items() if not what.startswith("chock")}
    return Shot(name, "floor", seconds, camera, unchocked, (1.0,))


def _chocks(name: str, seconds: float, out: bool) -> Shot:
    away = put(-26, 6, 0) @ CHOCK_BEHIND
    ways = (
        ((0, CHOCK_BEHIND), (1.6, CHOCK_BEHIND), (2.8, away), (9, away))
        if out
        else ((0, away), (1.4, away), (2.8, CHOCK_BEHIND), (9, CHOCK_BEHIND))
    )
    chock = track(*ways)
    grip, far = put(17.5, 0, 8, 0, -25), put(-75, 175, 40, 0, 0, 180)
    arrive, leave = (0, 1.2) if not out else (0.2, 1.4), (3.0, 4.0)
    hand = track(
        (arrive[0], far),
        (arrive[1], held(chock, grip)),
        (leave[0], held(chock, grip)),
        (leave[1], far if not out else held(chock, grip)),
    )
    poses = trailer_poses(at_height(0)) | {"chock behind": chock, "clamp": hand}
    if out:
        del poses["chock front"]
    return Shot(name, "floor", seconds, FAR_WHEEL, poses, (seconds - 0.4,))


def _nuts_slack() -> Shot:
    bar_left = BAR_HOLD @ put(rz=180)
    keys, at = [(0.0, axle(0) @ put(-20, -10, 34))], 0.9
    for angle in (STUD_ANGLES[0], STUD_ANGLES[2]):
        seat = axle(0) @ stud_place(angle) @ put(0, 0, -3.2)
        keys += [
            (at, seat @ put(0, 0, 5, rz=160)),
            (at + 0.4, seat @ put(rz=160)),
            (at + 0.9, seat @ put(rz=160)),
            (at + 1.9, seat @ put(rz=212)),
            (at + 2.4, seat @ put(rz=212)),
            (at + 2.8, seat @ put(0, 0, 6, rz=212)),
        ]
        at += 3.4
    bar = track(*keys)
    fist = follow(bar, bar_left)
    return Shot(
        "nuts-slack",
        "floor",
        9.5,
        WHEEL_DOWN,
        trailer_poses(at_height(0)) | {"brace": bar, "fist": fist},
        (9.0, 1.6),
        rank=1,
    )


def _jack_up() -> Shot:
    keys: list[tuple[float, Matrix]] = [(0.0, TRAILER_DOWN), (1.6, TRAILER_DOWN)]
    pump: list[tuple[float, Matrix]] = [(0.0, HANDLE_HINGE @ put(rx=-18)), (1.2, HANDLE_HINGE @ put(rx=-18))]
    for i in range(4):
        begin, step = 1.2 + 0.96 * i, RAISED / 4
        keys += [
            (begin + 0.4, put(0, 0, TYRE_RADIUS + step * i)),
            (begin + 0.96, put(0, 0, TYRE_RADIUS + step * (i + 1))),
        ]
        pump += [(begin + 0.4, HANDLE_HINGE @ put(rx=-48)), (begin + 0.96, HANDLE_HINGE @ put(rx=-18))]
    trailer, handle = track(*keys), track(*pump)
    hold = put(1, -62, 0, rx=60)
    poses = trailer_poses(trailer) | _jack(trailer, handle)
    return Shot(
        "jack-up",
        "floor",
        9.0,
        JACK_SIDE,
        poses | {"fist": follow(handle, hold)},
        (9.0, 1.0),
    )


def _jack(trailer: Track, handle: Track | Matrix) -> Poses:
    arm = held(trailer, JACK_POINT)
    return {"jack": JACK_PLACE, "jack arm": track((0, arm)), "jack handle": handle}


def _stand_in() -> Shot:
    out = put(-40, -4, 0) @ STAND_PLACE
    stand = track((0, out), (1.0, out), (2.4, STAND_PLACE), (9, STAND_PLACE))
    grip = put(-6, -3, 14, 0, -12, 180)
    hand = track((0, held(stand, grip)), (2.9, held(stand, grip)), (3.8, put(-80, 0, 40, 0, -12, 180)))
    poses = trailer_poses(at_height(RAISED)) | _jack(at_height(RAISED), HANDLE_HINGE @ put(rx=-18))
    return Shot("stand-in", "floor", 8.0, BEAM_SIDE, poses | {"stand": stand, "clamp": hand}, (6.0, 1.0))


def _wheel_nut_off() -> Shot:
    up = axle()
    spin = [
        (0.8, up @ wheel_nut(1)),
        (1.12, up @ wheel_nut(1, 0.15, 60)),
        (1.44, up @ wheel_nut(1, 0.15, 60)),
        (2.2, up @ wheel_nut(1, 2.6, 120)),
        (2.9, up @ wheel_nut(1, 11, 120) @ put(6, -4, 6)),
    ]
    nut = track((0, up @ wheel_nut(1)), *spin)
    grip = put(0, 0, 1.0)
    hand = track(
        (0, up @ put(30, -20, 30)),
        (0.8, held(nut, grip @ put(rz=-60))),
        (1.12, held(nut, grip @ put(rz=-60))),
        (1.44, held(nut, grip @ put(rz=-120))),
        (2.2, held(nut, grip @ put(rz=-120))),
        (4, held(nut, grip @ put(rz=-120))),
    )
    poses = trailer_poses(at_height(RAISED), (2, 3, 4), True) | {"wheel nut 1": nut, "pinch small": hand}
    return Shot("wheel-nut-off", "floor", 5.0, WHEEL_UP, poses, (4.5, 1.0), loops=(Loop(0.8, 0.64, 3),))


def _wheel_way(wheel: Track) -> Poses:
    right, left = held(wheel, RIGHT_PALM), held(wheel, LEFT_PALM)
    poses = trailer_poses(at_height(RAISED), (), True)
    return poses | {
        "wheel": wheel,
        "flat hand": track((0, right)),
        "left flat hand": track((0, left)),
    }


def _wheel_off() -> Shot:
    up = axle()
    wheel = track(
        (0, up),
        (0.8, up),
        (1.7, up @ put(0, -0.5, 13, -3)),
        (2.8, up @ put(14, -6, 34, -8, 18)),
        (3.6, up @ put(75, -16, 42, -8, 30)),
        (3.8, None),
    )
    poses = _wheel_way(wheel)
    for name in ("flat hand", "left flat hand"):
        poses[name] = track((0, poses[name].keys[0][1]), (3.8, None))
    return Shot("wheel-off", "floor", 6.0, WHEEL_WHOLE, poses, (5.5, 2.0), rank=1)


def _wheel_on() -> Shot:
    up = axle()
    wheel = track((0, up @ put(14, -6, 34, -8, 18)), (1.2, up @ put(0, -0.5, 13, -3)), (2.1, up), (99, up))
    poses = _wheel_way(wheel)
    return Shot("wheel-on", "floor", 4.0, WHEEL_WHOLE, poses, (3.5, 0.6))


def _nuts_by_hand() -> Shot:
    up = axle()
    turns = [
        (0.4, up @ wheel_nut(1, 1.6, 150)),
        (0.72, up @ wheel_nut(1, 1.45, 90)),
        (1.04, up @ wheel_nut(1, 1.45, 90)),
        (1.8, up @ wheel_nut(1, 0, 0)),
        (2.2, up @ wheel_nut(1)),
    ]
    nut = track((0, up @ wheel_nut(1, 5, 150)), *turns)
    grip = put(0, 0, 1.0)
    hand = track(
        (0, held(nut, grip @ put(rz=-120))),
        (0.4, held(nut, grip @ put(rz=-120))),
        (0.72, held(nut, grip @ put(rz=-120))),
        (1.04, held(nut, grip @ put(rz=-60))),
        (1.8, held(nut, grip @ put(rz=-60))),
        (2.2, held(nut, grip @ put(rz=-60))),
        (3.0, up @ put(30, -20, 30)),
    )
    poses = trailer_poses(at_height(RAISED), (2, 3, 4), True) | {"wheel nut 1": nut, "pinch small": hand}
    return Shot("nuts-by-hand", "floor", 5.0, WHEEL_UP, poses, (4.8, 0.8), loops=(Loop(0.4, 0.64, 2),))


def _turning_wheel(wheel: Track) -> Poses:
    """The wheel with its hub and nuts, turning or rocking together."""
    poses = trailer_poses(at_height(RAISED), (), True)
    poses |= {name: follow(wheel, put()) for name in ("hub", "cap", "wheel")}
    return poses | {f"wheel nut {i}": follow(wheel, wheel_nut(i)) for i in (1, 2, 3, 4)}


def _spin() -> Shot:
    way = Track(tuple((0.08 * i, axle() @ put(rz=-18 * i)) for i in range(21)))
    return Shot("spin", "floor", 4.4, WHEEL_WHOLE, _turning_wheel(way), (0.0,), loops=(Loop(0, 0.8, 8),), rate=12.5)


def _rock() -> Shot:
    wheel = track(
        (0, axle() @ put(rx=0.9)), (0.4, axle() @ put(rx=-0.9)), (0.8, axle() @ put(rx=0.9)), (9, axle() @ put(rx=0.9))
    )
    top, low = held(wheel, TOP_PALM), held(wheel, LOW_PALM)
    hands = {"flat hand": track((0, top)), "left flat hand": track((0, low))}
    return Shot("rock", "floor", 5.4, WHEEL_WHOLE, _turning_wheel(wheel) | hands, (0.0,), loops=(Loop(0, 0.8, 8),))


def _lower() -> Shot:
    trailer = track((0, TRAILER_UP), (3.2, TRAILER_UP), (5.6, TRAILER_DOWN), (99, TRAILER_DOWN))
    out = put(-60, -10, 0) @ STAND_PLACE
    stand = track((0, STAND_PLACE), (0.8, STAND_PLACE), (2.2, out), (99, out))
    hand = track(
        (0, held(stand, put(-6, -3, 14, 0, -12, 180))), (2.4, held(stand, put(-6, -3, 14, 0, -12, 180))), (2.9, None)
    )
    poses = trailer_poses(trailer) | _jack(trailer, HANDLE_HINGE @ put(rx=-30)) | {"stand": stand, "clamp": hand}
    return Shot("lower", "floor", 7.0, JACK_SIDE, poses, (6.6, 0.5))


def _torque() -> Shot:
    keys, at = [(0.0, axle(0) @ put(26, -8, 30, rz=20))], 0.6
    for number in (1, 3, 2, 4):
        seat = axle(0) @ stud_place(STUD_ANGLES[number - 1]) @ put(0, 0, -3.2)
        keys += [
            (at, seat @ put(0, 0, 4, rz=14)),
            (at + 0.3, seat @ put(rz=14)),
            (at + 1.1, seat @ put(rz=-18)),
            (at + 1.6, seat @ put(rz=-18)),
            (at + 1.9, seat @ put(0, 0, 5, rz=-18)),
        ]
        at += 2.5
    bar = track(*keys)
    fist = follow(bar, BAR_HOLD)
    return Shot(
        "torque",
        "floor",
        11.5,
        WHEEL_DOWN,
        trailer_poses(at_height(0)) | {"torque wrench": bar, "fist": fist},
        (11.0, 2.0),
        rank=1,
    )


FLOOR_STRIP = (
    _still("arrival", 9, WIDE),
    _chocks("chocks-in", 6.5, False),
    _nuts_slack(),
    _jack_up(),
    _stand_in(),
    _wheel_nut_off(),
    _wheel_off(),
)
FLOOR_REFIT = (
    _wheel_on(),
    _nuts_by_hand(),
    _spin(),
    _rock(),
    _lower(),
    _torque(),
    _chocks("chocks-out", 4.5, True),
    _still("departure", 9.2, FROM_FRONT),
)
