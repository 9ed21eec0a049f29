"""The shots of the refit recording: the hub back on the stub axle, set, secured and closed."""

from motion import Camera, Loop, Shot, follow, held, put, track
from setting import (
    AXLE,
    CLOSE,
    CLOSER,
    HAMMER_HOLD,
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
from shots_bench import BENCH_REFIT
from shots_floor import FLOOR_REFIT

NUT, WASHER, SEAT = put(0, 0, NUT_SEAT), put(0, 0, WASHER_SEAT), put(0, 0, NUT_SEAT + 0.12)
FAR = put(26, -18, 22, 0, 0, -30)
TIGHT = -22.0
"""Where the slots stand after the tightening; at 0 they line up with the hole."""


def _hub_on() -> Shot:
    hub = local(
        (0, put(5, -2, 17, -8, 14)), (1.0, put(5, -2, 17, -8, 14)), (2.1, put(0, 0, 10)), (3.4, put()), (99, put())
    )
    right, left = put(6.4, -0.6, -4.6, 0, 0, -8), put(-6.4, -0.6, -4.6, 0, 0, 8)
    return Shot(
        "hub-on",
        "floor",
        6.5,
        Camera((20, -52, 55), (4, -6, 32), 38),
        with_stub(
            hub=hub,
            new_seal=follow(hub, put(0, 0, -8.8, 180)),
            clamp=track((0, held(hub, right)), (4.0, held(hub, right)), (4.9, on_axle(put(26, -12, 12)))),
            left_clamp=follow(hub, left),
        ),
        (5.8, 0.5),
        rank=1,
    )


def _outer_in() -> Shot:
    bearing = local((0, OUTER @ put(6.2, 0.6, 6.2, 8, 48)), (0.8, OUTER @ put(0.1, 0, 3.6)), (1.7, OUTER), (99, OUTER))
    grip = put(0, 0, -0.25, 0, 0, -8)
    hand = track((0, held(bearing, grip)), (2.0, held(bearing, grip)), (2.8, AXLE @ FAR))
    return Shot("outer-in", "floor", 4.5, CLOSE, with_stub(hub=AXLE, new_bearing=bearing, pinch=hand), (4.2, 0.4))


def _washer_in() -> Shot:
    washer = local((0, WASHER @ put(7.2, 0.4, 6, 0, 42)), (0.8, WASHER @ put(0.2, 0, 3.4)), (1.6, WASHER), (99, WASHER))
    grip = put(0, 0, 0.15, 0, 0, -12, 0.88)
    hand = track((0, held(washer, grip)), (1.9, held(washer, grip)), (2.7, AXLE @ FAR))
    return Shot(
        "washer-in",
        "floor",
        3.6,
        CLOSE,
        with_stub(hub=AXLE, new_bearing=on_axle(OUTER), washer=washer, pinch=hand),
        (3.7,),
    )


def _nut_tight() -> Shot:
    begin = 1.2
    hub = local((0, put()), (begin, put()), (begin + 0.8, put(rz=-90)), (99, put(rz=-90)))
    nut = local(
        (0, NUT @ put(rz=TIGHT)),
        (begin, NUT @ put(rz=TIGHT)),
        (begin + 0.8, NUT @ put(rz=TIGHT - 60)),
        (99, NUT @ put(rz=TIGHT - 60)),
    )
    spanner = local(
        (0, FAR),
        (0.8, SEAT @ put(0, 0, 3, rz=28)),
        (begin, SEAT @ put(rz=28)),
        (begin + 0.8, SEAT @ put(rz=-32)),
        (begin + 1.2, SEAT @ put(0, 0, 1.6, rz=-2)),
        (begin + 1.6, SEAT @ put(rz=28)),
        (begin + 2.4, SEAT @ put(0, 0, 4, rz=28)),
        (begin + 3.0, FAR),
    )
    rim = put(-6.6, -0.4, -4.5, 0, 0, 4)
    turn = local(
        (0, put(-20, -6, 10) @ rim),
        (1.0, put(rz=30) @ rim),
        (begin, put(rz=30) @ rim),
        (begin + 0.8, put(rz=-40) @ rim),
        (begin + 1.2, put(-3, 0, 1) @ rim),
        (begin + 1.6, put(rz=30) @ rim),
        (begin + 2.6, put(-20, -6, 10) @ rim),
    )
    return Shot(
        "nut-tight",
        "floor",
        11.0,
        CLOSE,
        with_stub(
            hub=hub,
            new_bearing=on_axle(OUTER),
            washer=on_axle(WASHER),
            nut=nut,
            spanner=spanner,
            left_clamp=turn,
            fist=follow(spanner, SPANNER_HOLD),
        ),
        (2.0, 10.6),
        loops=(Loop(begin, 1.6, 4),),
        rank=1,
    )


def _nut_back() -> Shot:
    nut = local((0, NUT @ put(rz=TIGHT)), (1.6, NUT @ put(rz=TIGHT)), (2.8, NUT), (99, NUT))
    spanner = local(
        (0, FAR),
        (0.8, SEAT @ put(0, 0, 3, rz=-52)),
        (1.2, SEAT @ put(rz=-52)),
        (1.6, SEAT @ put(rz=-52)),
        (2.8, SEAT @ put(rz=-30)),
        (3.2, SEAT @ put(0, 0, 3, rz=-30)),
        (3.8, FAR),
    )
    return Shot(
        "nut-back",
        "floor",
        10.5,
        CLOSER,
        with_stub(
            hub=AXLE,
            new_bearing=on_axle(OUTER),
            washer=on_axle(WASHER),
            nut=nut,
            spanner=spanner,
            fist=track((0, held(spanner, SPANNER_HOLD)), (3.8, None)),
        ),
        (6.0, 1.4),
        rank=1,
        samples=8,
    )


def _pin_in() -> Shot:
    out = PIN @ put(-5.5, 0, 0.1)
    pin = local((0, put(-4, -3, 5) @ out), (1.0, out), (2.0, PIN), (99, PIN))
    legs = PIN @ put(2.2, 0, 0.1, rz=8)
    push = put(-2.3, 0, 0.1, 0, 0, 180)
    hand = track((0, held(pin, push)), (2.3, held(pin, push)), (3.0, AXLE @ put(-26, -10, 14, 0, 0, 180)))
    pliers = local(
        (0, FAR),
        (3.0, FAR),
        (3.7, put(4, -1, 2) @ legs),
        (4.1, legs),
        (4.6, legs @ put(-0.3, 0.1, 0.6, ry=-25)),
        (5.1, legs @ put(-0.3, 0, 0.2, ry=14)),
        (5.7, put(5, -2, 3) @ legs),
        (6.3, FAR),
    )
    return Shot(
        "pin-in",
        "floor",
        9.0,
        CLOSER,
        with_stub(
            hub=AXLE,
            new_bearing=on_axle(OUTER),
            washer=on_axle(WASHER),
            nut=on_axle(NUT),
            new_pin=track((0, pin.at), (4.7, None)),
            new_bent_pin=track((0, None), (4.7, on_axle(PIN)), (99, on_axle(PIN))),
            pliers=pliers,
            left_fist=track((0, held(hand, put())), (3.0, None)),
            fist=follow(pliers, PLIERS_HOLD @ put(rx=20)),
        ),
        (8.4, 1.6),
        rank=1,
    )


def _cap_on() -> Shot:
    cap = local(
        (0, put(7.5, -1.2, 7, 10, 40)),
        (1.0, put(0, 0, 1.4)),
        (1.4, put(0, 0, 0.6)),
        (2.4, put(0, 0, 0.6)),
        (2.56, put(0, 0, 0.3)),
        (3.2, put(0, 0, 0.3)),
        (3.36, put()),
        (99, put()),
    )
    grip = put(0, 0, 0.5, rz=-10)
    hand = track((0, held(cap, grip)), (1.5, held(cap, grip)), (2.1, AXLE @ FAR), (2.2, None))
    hit, high = put(1.2, 0.3, 2.7, rz=-24), put(1.5, 0, 9, 0, -34, -24)
    hammer = local(
        (0, None),
        (1.6, put(20, -10, 14, rz=-24)),
        (2.1, high),
        (2.48, put(0, 0, 0.6) @ hit),
        (2.86, high),
        (3.28, put(-2, 0.5, 0.3) @ hit),
        (3.7, high),
        (4.4, FAR),
    )
    return Shot(
        "cap-on",
        "floor",
        6.1,
        CLOSE,
        with_stub(
            hub=AXLE,
            new_bearing=on_axle(OUTER),
            washer=on_axle(WASHER),
            nut=on_axle(NUT),
            new_bent_pin=on_axle(PIN),
            cap=cap,
            pinch_wide=hand,
            hammer=hammer,
            fist=track((0, None), (1.6, held(hammer, HAMMER_HOLD)), (99, held(hammer, HAMMER_HOLD))),
        ),
        (6.0, 0.4),
    )


REFIT = (
    *BENCH_REFIT,
    _hub_on(),
    _outer_in(),
    _washer_in(),
    _nut_tight(),
    _nut_back(),
    _pin_in(),
    _cap_on(),
    *FLOOR_REFIT,
)
