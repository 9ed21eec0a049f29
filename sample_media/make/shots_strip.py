"""The shots of the strip recording, part one: at the trailer, down to the bare stub axle."""

from motion import Camera, Loop, Shot, follow, held, put, track
from setting import (
    AXLE,
    CLOSE,
    CLOSER,
    FLAT_BAR_HOLD,
    NUT_SEAT,
    OUTER,
    PIN,
    PLIERS_HOLD,
    SPANNER_HOLD,
    WASHER_SEAT,
    local,
    on_axle,
    with_stub,
)
from shots_bench import BENCH_STRIP
from shots_floor import FLOOR_STRIP

HUB = AXLE
NUT = put(0, 0, NUT_SEAT)
WASHER = put(0, 0, WASHER_SEAT)
FAR = put(26, -18, 22, 0, 0, -30)
FAR_LEFT = put(-30, -10, 22)


def _cap_off() -> Shot:
    edge = put(2.5, 0.3, 0.12, 0, -38, 0)
    bar = local(
        (0, FAR),
        (0.8, put(6, 0.3, 3) @ edge),
        (1.3, edge),
        (1.9, edge @ put(ry=-10)),
        (2.1, put(1.6, 2.5, 2.2) @ edge @ put(ry=20)),
        (2.9, put(5, 2, 4) @ edge),
        (4.4, put(5, 2, 4) @ edge),
        (4.9, edge),
        (5.5, edge @ put(ry=-14)),
        (5.9, edge),
        (6.4, edge @ put(ry=-16)),
        (6.8, edge @ put(0.1, 0, 0.3)),
        (7.3, edge @ put(0.1, 0, 0.5, ry=-18)),
        (8.0, put(8, 0, 6) @ edge),
        (8.5, FAR),
    )
    cap = local(
        (0, put()),
        (4.9, put()),
        (5.5, put(0, 0, 0.22, 0, 3)),
        (6.4, put(0, 0, 0.45, 0, -2)),
        (7.3, put(0, 0, 0.75, 0, 4)),
        (9.2, put(0, 0, 0.75, 0, 4)),
        (9.9, put(0, 0, 4.5, 0, 8)),
        (10.6, put(7.5, -1.2, 7, 10, 40)),
    )
    hand = track(
        (0, None), (8.3, AXLE @ FAR), (9.1, held(cap, put(0, 0, 0.5, rz=-10))), (11, held(cap, put(0, 0, 0.5, rz=-10)))
    )
    return Shot(
        "cap-off",
        "floor",
        12.5,
        CLOSE,
        with_stub(
            hub=local((0, put()), (3.3, put()), (3.9, put(rz=-32)), (11, put(rz=-32))),
            bearing=on_axle(OUTER),
            washer=on_axle(WASHER),
            nut=on_axle(NUT),
            bent_pin=on_axle(PIN),
            cap=cap,
            flat_bar=bar,
            fist=follow(bar, FLAT_BAR_HOLD),
            pinch_wide=hand,
        ),
        (12.0, 6.4),
        rank=1,
    )


def _pin_out() -> Shot:
    legs = PIN @ put(1.9, 0, -0.2, rz=8)
    eye = PIN @ put(-1.7, 0, 0.1, 0, 0, 168)
    pliers = local(
        (0, FAR),
        (2.6, FAR),
        (3.3, put(4, -1, 2) @ legs),
        (3.7, legs),
        (4.3, legs @ put(rz=14)),
        (4.8, legs @ put(-0.2, 0, 0.5, rz=-10)),
        (5.4, legs),
        (6.0, put(5, -2, 3) @ legs),
        (6.4, None),
        (6.5, FAR_LEFT),
        (7.2, put(-4, -2, 1) @ eye),
        (7.6, eye),
        (8.2, eye),
        (9.2, put(-3.0, -1.73, 0) @ eye),
        (10, put(-8, -3, 5) @ eye),
    )
    pin = track(
        (0, on_axle(PIN)),
        (8.2, on_axle(PIN)),
        (8.21, held(pliers, eye.inverted() @ PIN)),
        (12, held(pliers, eye.inverted() @ PIN)),
    )
    return Shot(
        "pin-out",
        "floor",
        11.5,
        CLOSER,
        with_stub(
            hub=HUB,
            bearing=on_axle(OUTER),
            washer=on_axle(WASHER),
            nut=on_axle(NUT),
            bent_pin=track((0, on_axle(PIN)), (4.6, None)),
            splayed_pin=track((0, None), (4.6, pin.at), (12, pin.at)),
            pliers=pliers,
            fist=track((0, held(pliers, PLIERS_HOLD @ put(rx=20))), (6.4, None)),
            left_fist=track(
                (0, None), (6.5, held(pliers, PLIERS_HOLD @ put(rx=200))), (13, held(pliers, PLIERS_HOLD @ put(rx=200)))
            ),
        ),
        (11.2, 1.5),
        rank=1,
    )


def _nut_slack() -> Shot:
    seat = put(0, 0, NUT_SEAT + 0.12)
    spanner = local(
        (0, FAR),
        (1.0, seat @ put(0, 0, 4, rz=-38)),
        (1.5, seat @ put(rz=-38)),
        (2.4, seat @ put(rz=-38)),
        (3.6, seat @ put(rz=24)),
        (5.0, seat @ put(rz=24)),
        (5.4, seat @ put(0, 0, 4, rz=24)),
        (6.0, FAR),
    )
    nut = local((0, NUT), (2.4, NUT), (3.6, NUT @ put(0, 0, 0.05, rz=62)), (9, NUT @ put(0, 0, 0.05, rz=62)))
    return Shot(
        "nut-slack",
        "floor",
        7.5,
        CLOSE,
        with_stub(
            hub=HUB,
            bearing=on_axle(OUTER),
            washer=on_axle(WASHER),
            nut=nut,
            spanner=spanner,
            fist=follow(spanner, SPANNER_HOLD),
        ),
        (7.0, 2.0),
        rank=1,
    )


def _nut_off() -> Shot:
    loose = NUT @ put(0, 0, 0.05, rz=62)
    turns = [
        (1.2, loose),
        (1.6, loose @ put(0, 0, 0.1, rz=55)),
        (1.84, loose @ put(0, 0, 0.1, rz=55)),
        (2.24, loose @ put(0, 0, 0.2, rz=110)),
        (3.4, loose @ put(0, 0, 0.4, rz=165)),
        (3.9, put(0, 0, 3.4) @ loose @ put(rz=165)),
        (4.5, put(9, -4, 7, 15, 20) @ loose @ put(rz=165)),
    ]
    nut = local((0, loose), *turns)
    grip = put(0, 0, 0.75, rz=-12)
    wrist = [
        (0.4, FAR),
        (1.0, loose @ grip @ put(rz=-62)),
        (1.2, loose @ grip @ put(rz=-62)),
        (1.6, loose @ grip @ put(0, 0, 0.1, rz=-7)),
        (1.84, loose @ grip @ put(0, 0, 0.1, rz=-62)),
        (2.24, loose @ grip @ put(0, 0, 0.2, rz=-7)),
        (2.6, loose @ grip @ put(0, 0, 0.3, rz=-62)),
        (3.4, loose @ grip @ put(0, 0, 0.4, rz=-7)),
        (3.9, put(0, 0, 3.4) @ loose @ grip @ put(rz=-7)),
        (4.5, put(9, -4, 7, 15, 20) @ loose @ grip @ put(rz=-7)),
    ]
    return Shot(
        "nut-off",
        "floor",
        7.0,
        CLOSE,
        with_stub(hub=HUB, bearing=on_axle(OUTER), washer=on_axle(WASHER), nut=nut, pinch_small=local(*wrist)),
        (6.0, 1.4),
        loops=(Loop(1.2, 0.64, 3),),
    )


def _washer_off() -> Shot:
    grip = put(0, 0, 0.15, 0, 0, -12, 0.88)
    washer = local((0, WASHER), (1.4, WASHER), (2.1, WASHER @ put(0.2, 0, 3.4)), (2.9, put(7.2, 0.4, 6, 0, 42)))
    hand = track((0, AXLE @ FAR), (1.1, held(washer, grip)), (9, held(washer, grip)))
    return Shot(
        "washer-off",
        "floor",
        5.0,
        CLOSE,
        with_stub(hub=HUB, bearing=on_axle(OUTER), washer=washer, pinch=hand),
        (4.5, 0.0),
    )


def _bearing_off() -> Shot:
    grip = put(0, 0, -0.25, 0, 0, -8)
    bearing = local((0, OUTER), (1.3, OUTER), (2.0, OUTER @ put(0.1, 0, 3.6)), (3.0, OUTER @ put(6.2, 0.6, 6.2, 8, 48)))
    hand = track((0, AXLE @ FAR), (0.9, held(bearing, grip)), (9, held(bearing, grip)))
    return Shot(
        "bearing-off",
        "floor",
        7.0,
        CLOSE,
        with_stub(hub=HUB, hub_grease=HUB, bearing=bearing, pinch=hand),
        (5.5, 0.0),
        rank=1,
    )


def _hub_off() -> Shot:
    hub = local(
        (0, put()), (1.2, put()), (2.3, put(0, 0, 10)), (3.2, put(5, -2, 17, -8, 14)), (8, put(5, -2, 17, -8, 14))
    )
    right, left = put(6.4, -0.6, -4.6, 0, 0, -8), put(-6.4, -0.6, -4.6, 0, 0, 8)
    far_right, far_left = on_axle(put(26, -12, 12)), on_axle(put(-26, -12, 12))
    return Shot(
        "hub-off",
        "floor",
        6.5,
        Camera((20, -52, 55), (4, -6, 32), 38),
        with_stub(
            hub=hub,
            hub_grease=follow(hub),
            clamp=track((0, far_right), (0.9, held(hub, right)), (9, held(hub, right))),
            left_clamp=track((0, far_left), (0.9, held(hub, left)), (9, held(hub, left))),
        ),
        (5.0, 1.0),
        rank=1,
    )


def _stub_clean() -> Shot:
    wipe = [
        (0, put(9, -4, 9)),
        (0.8, put(0.3, 0.2, -1.5)),
        (1.2, put(0.5, 0.4, -6)),
        (1.6, put(0.3, 0.2, -1.5)),
        (2.2, put(0.3, 0.2, -1.5)),
        (2.9, put(14, -6, 12)),
        (3.3, None),
    ]
    wad = local(*wipe)
    return Shot(
        "stub-clean",
        "floor",
        7.6,
        Camera((14, -34, 47), (1.5, 0, 32), 45),
        with_stub(wad=wad, pinch=follow(wad, put(0, 0, 0.3, 0, 0, -8))),
        (6.5, 0.0),
        loops=(Loop(0.8, 0.8, 3),),
    )


STRIP = (
    *FLOOR_STRIP,
    _cap_off(),
    _pin_out(),
    _nut_slack(),
    _nut_off(),
    _washer_off(),
    _bearing_off(),
    _hub_off(),
    *BENCH_STRIP,
    _stub_clean(),
)
