"""Shots at the bench: the hub taken apart, inspected, and put together with new parts."""

from motion import Camera, Loop, Shot, follow, held, put, track
from setting import BENCH_BACK_UP, BENCH_NOSE_UP, FLAT_BAR_HOLD, HAMMER_HOLD, INNER, OUTER, SEAL

OVER = Camera((11, -38, 34), (1, 1, 7.5), 44, 0.12)
LOW = Camera((9, -50, 27), (1, 0, 12.5), 37, 0.12)
NEAR = Camera((5, -30, 25), (1, 0, 10), 52, 0.14)
ACROSS = Camera((9, -80, 46), (-5, 15, 13), 31, 0.14)
TRAY = put(4, -8, 0, rz=6)
FAR = put(32, -22, 34)
ON_BLOCKS = put(0, 0, 4.05) @ BENCH_BACK_UP
SEATED = BENCH_BACK_UP @ INNER


def _phone() -> Shot:
    lying = {
        "cap": TRAY @ put(-7, 2, 3.1, 180),
        "washer": TRAY @ put(-1.5, -3.4, 0.45),
        "nut": TRAY @ put(1.5, 3, 0.42, rz=20),
        "splayed pin": TRAY @ put(5.5, -3.5, 0.55, rz=25),
        "old bearing": TRAY @ put(6.5, 2.6, 2.0),
    }
    nuts = {f"wheel nut {i}": TRAY @ put(-8 + 2.6 * i, -5.4 + 0.5 * (i % 2), 0.4, rz=31 * i) for i in (1, 2, 3, 4)}
    return Shot("phone", "bench", 7.0, ACROSS, {"tray": TRAY, **lying, **nuts, "rag": put(-22, -4, 0)}, (1.0,))


def _seal_out() -> Shot:
    hub, seal = BENCH_BACK_UP, BENCH_BACK_UP @ SEAL
    grip, raised = put(1.75, 0, 8.55, 0, -36), put(1.8, 0, 8.95, 0, -16)
    bar = track(
        (0, FAR),
        (0.8, put(6, -2, 3) @ grip),
        (1.3, grip),
        (1.9, grip),
        (2.5, raised),
        (2.9, grip),
        (3.5, put(0.1, 0, 0.35) @ raised),
        (4.2, put(0.1, 0, 0.35) @ raised),
        (4.8, put(9, -3, 5) @ grip),
        (5.4, FAR),
    )
    ring = track(
        (0, seal),
        (1.9, seal),
        (2.5, seal @ put(0, 0, 0.15, 0, -5)),
        (2.9, seal @ put(0, 0, 0.15, 0, -4)),
        (3.5, seal @ put(0, 0, 0.6, 0, -13)),
        (6.5, seal @ put(0, 0, 0.6, 0, -13)),
        (7.2, put(1, -1, 6) @ seal @ put(ry=-13)),
        (8.0, put(8.5, -5, 5) @ seal @ put(rx=52, ry=-10)),
    )
    hand = track(
        (0, None),
        (5.5, FAR),
        (6.3, held(ring, put(0.3, 0, 0.2, 0, 0, -10))),
        (99, held(ring, put(0.3, 0, 0.2, 0, 0, -10))),
    )
    fist = follow(bar, FLAT_BAR_HOLD)
    return Shot(
        "seal-out",
        "bench",
        9.5,
        OVER,
        {
            "hub": hub,
            "seal": ring,
            "old inner bearing": SEATED,
            "inner cup": SEATED,
            "flat bar": bar,
            "fist": fist,
            "pinch wide": hand,
        },
        (9.0, 3.8),
        rank=1,
    )


def _inner_out() -> Shot:
    bearing = track(
        (0, SEATED), (1.4, SEATED), (2.1, put(0, 0, 5) @ SEATED), (3.0, put(8, -6, 4) @ SEATED @ put(rx=30, ry=20))
    )
    hand = track(
        (0, FAR),
        (1.0, held(bearing, put(0, 0, -0.3, rz=-14, size=0.77))),
        (99, held(bearing, put(0, 0, -0.3, rz=-14, size=0.77))),
    )
    return Shot(
        "inner-out",
        "bench",
        5.5,
        OVER,
        {"hub": BENCH_BACK_UP, "inner cup": SEATED, "old inner bearing": bearing, "pinch wide": hand},
        (5.0, 0.0),
    )


def _cups_out() -> Shot:
    start, low = ON_BLOCKS @ OUTER, ON_BLOCKS @ OUTER @ put(0, 0, 2.3)
    floor = put(0.6, 0, 1.7)
    cup = track(
        (0, start),
        (3.2, start),
        (3.36, ON_BLOCKS @ OUTER @ put(0, 0, 0.8)),
        (4.0, ON_BLOCKS @ OUTER @ put(0, 0, 0.8)),
        (4.16, low),
        (4.48, floor @ put(rx=180)),
        (99, floor @ put(rx=180)),
    )
    drift_up = put(1.9, 0, 7.5, ry=-3)
    drift = track(
        (0, FAR),
        (1.0, drift_up),
        (3.2, drift_up),
        (3.36, put(0, 0, -0.8) @ drift_up),
        (4.0, put(0, 0, -0.8) @ drift_up),
        (4.16, put(0, 0, -2.3) @ drift_up),
        (5.0, put(0, 0, -2.3) @ drift_up),
    )
    hit, high = put(0, 0, 13.1, rz=-14), put(-1.5, 0, 17.2, 0, -38, -14)
    hammer = track(
        (0, FAR),
        (1.3, drift_up @ high),
        (1.6, drift_up @ hit),
        (1.94, drift_up @ high),
        (3.04, drift_up @ high),
        (3.28, drift_up @ hit),
        (3.7, drift_up @ high),
        (4.0, put(0, 0, -0.8) @ drift_up @ hit),
        (4.6, drift_up @ high),
        (5.2, drift_up @ high),
    )
    grip = put(0, 0, 8.4, ry=-90)
    return Shot(
        "cups-out",
        "bench",
        9.0,
        LOW,
        {
            "hub": ON_BLOCKS,
            "support left": put(-7.6, 0, 0),
            "support right": put(7.6, 0, 0),
            "cup": cup,
            "drift": drift,
            "hammer": hammer,
            "fist": follow(hammer, HAMMER_HOLD),
            "left fist": follow(drift, grip),
        },
        (8.4, 1.6),
        loops=(Loop(1.3, 0.64, 4),),
        rank=1,
    )


def _blue_race() -> Shot:
    shown, turned = put(1.5, -4, 12.2, 58, 12), put(1.2, -4, 12.4, 48, -14)
    cup = track(
        (0, put(14, -14, 16, 50, 20)),
        (1.0, shown),
        (2.4, shown),
        (3.4, turned),
        (4.6, turned),
        (5.6, shown),
        (99, shown),
    )
    hand = held(cup, put(0, 0, -1.0, 0, 0, -18, 0.93))
    return Shot(
        "blue-race",
        "bench",
        10.5,
        NEAR,
        {
            "cup": cup,
            "pinch wide": track((0, hand)),
            "hub": put(-7, 9, 0) @ BENCH_NOSE_UP,
            "clean rag": put(4, -2, 0),
            "old bearing": put(10, 1, 2.2, 180),
        },
        (9.5, 4.0),
        samples=8,
        rank=1,
    )


def _kit() -> Shot:
    return Shot(
        "kit",
        "bench",
        6.0,
        Camera((4, -40, 40), (0.5, 0, 1), 44, 0.14),
        {
            "clean rag": put(0, 2, 0),
            "bearing": put(-9, 4, 2.3),
            "new cup": put(-3, 4.5, 2.4),
            "inner bearing": put(4, 5, 2.8, size=1.31),
            "new inner cup": put(10.5, 5, 3.1, size=1.31),
            "new seal": put(-7, -4.5, 1.3),
            "new pin": put(1, -4.2, 0.95, rz=12),
            "cap": put(8, -4.5, 1.2),
        },
        (1.0,),
    )


def _cups_in() -> Shot:
    hub = BENCH_NOSE_UP
    proud, half = hub @ OUTER @ put(0, 0, 1.1), hub @ OUTER @ put(0, 0, 0.5)
    seat = hub @ OUTER
    cup = track(
        (0, put(0, 0, 6) @ proud), (0.9, proud), (2.5, proud), (2.66, half), (3.46, half), (3.62, seat), (99, seat)
    )
    drift = track(
        (0, FAR),
        (1.6, proud @ put(2.2, 0, -0.2)),
        (2.5, proud @ put(2.2, 0, -0.2)),
        (2.66, half @ put(2.2, 0, -0.2)),
        (3.0, half @ put(-1.5, 1.6, -0.2, ry=6)),
        (3.46, half @ put(-1.5, 1.6, -0.2, ry=6)),
        (3.62, seat @ put(-1.5, 1.6, -0.2, ry=6)),
        (4.6, seat @ put(-1.5, 1.6, -0.2, ry=6)),
        (5.2, FAR),
        (5.3, None),
    )
    hit, high = put(0, 0, 13.1, rz=-14), put(-1.5, 0, 17.2, 0, -38, -14)
    hammer = track(
        (0, FAR),
        (1.6, held(drift, high)),
        (2.0, held(drift, hit)),
        (2.24, held(drift, high)),
        (2.58, held(drift, hit)),
        (3.1, held(drift, high)),
        (3.54, held(drift, hit)),
        (3.9, held(drift, high)),
        (5.0, FAR),
        (5.3, None),
    )
    grip = put(0, 0, 8.4, ry=-90)
    return Shot(
        "cups-in",
        "bench",
        8.5,
        Camera((10, -46, 37), (1, 0, 13), 39, 0.12),
        {
            "hub": hub,
            "new cup": cup,
            "drift": drift,
            "hammer": hammer,
            "fist": follow(hammer, HAMMER_HOLD),
            "left fist": follow(drift, grip),
        },
        (8.0, 1.9),
        loops=(Loop(1.6, 0.64, 3),),
    )


def _grease() -> Shot:
    palm = put(-3, 1, 8, 180, 0, 0) @ put(rz=10)
    touch, lifted = put(-1.2, -0.4, 11.0, 18, 20), put(2.0, -1.5, 13.2, 10, 12)
    bearing = track(
        (0, put(16, -12, 18)),
        (1.0, lifted),
        (1.32, touch),
        (1.64, touch @ put(-1.2, 0, -0.2)),
        (1.96, lifted),
        (2.6, put(4, -5, 13.5, 48, 14)),
        (99, put(4, -5, 13.5, 48, 14)),
    )
    hand = held(bearing, put(0, 0, -0.2, 0, 0, -8))
    return Shot(
        "grease",
        "bench",
        9.0,
        NEAR,
        {
            "left flat hand": palm,
            "grease dab": put(-2.2, 0.4, 9.1),
            "bearing": track((0, bearing.at), (1.4, None)),
            "new bearing": track((0, None), (1.4, bearing.at), (99, bearing.at)),
            "pinch": track((0, hand)),
        },
        (8.5, 1.5),
        loops=(Loop(1.0, 0.96, 4),),
        rank=1,
    )


def _inner_in() -> Shot:
    bearing = track((0, put(10, -8, 9) @ SEATED), (1.0, put(0, 0, 5) @ SEATED), (1.8, SEATED), (99, SEATED))
    grip = put(0, 0, -0.3, rz=-14, size=0.77)
    hand = track((0, held(bearing, grip)), (2.1, held(bearing, grip)), (2.9, FAR))
    return Shot(
        "inner-in",
        "bench",
        5.0,
        OVER,
        {"hub": BENCH_BACK_UP, "new inner cup": SEATED, "new inner bearing": bearing, "pinch wide": hand},
        (4.6, 0.5),
    )


def _seal_in() -> Shot:
    home = BENCH_BACK_UP @ SEAL
    proud = put(0, 0, 0.5) @ home
    seal = track(
        (0, put(0, 0, 5) @ proud),
        (0.9, proud),
        (3.0, proud),
        (3.16, put(0, 0, 0.2) @ home),
        (3.64, put(0, 0, 0.2) @ home),
        (3.8, home),
        (99, home),
    )
    block = track(
        (0, FAR),
        (1.0, put(14, -8, 16)),
        (1.6, put(0, 0, 9.32)),
        (3.0, put(0, 0, 9.32)),
        (3.16, put(0, 0, 9.02)),
        (3.64, put(0, 0, 9.02)),
        (3.8, put(0, 0, 8.82)),
        (5.0, put(0, 0, 8.82)),
        (5.8, put(-24, -6, 16)),
        (6.0, None),
    )
    hit, high = put(0, 0, 4.1, rz=-14), put(-1.5, 0, 9, 0, -38, -14)
    hammer = track(
        (0, FAR),
        (1.9, held(block, high)),
        (2.3, held(block, hit)),
        (2.54, held(block, high)),
        (3.08, held(block, hit)),
        (3.4, held(block, high)),
        (3.72, held(block, hit)),
        (4.2, held(block, high)),
        (5.2, FAR),
        (5.4, None),
    )
    grip = put(-4.6, 0, 2)
    fist, steady = held(hammer, HAMMER_HOLD), held(block, grip)
    return Shot(
        "seal-in",
        "bench",
        8.5,
        OVER,
        {
            "hub": BENCH_BACK_UP,
            "new inner bearing": SEATED,
            "new inner cup": SEATED,
            "new seal": seal,
            "block": block,
            "hammer": hammer,
            "fist": track((0, fist)),
            "left clamp": track((0, steady), (6.0, None)),
        },
        (8.0, 2.2),
        loops=(Loop(1.9, 0.64, 3),),
    )


BENCH_STRIP = (_phone(), _seal_out(), _inner_out(), _cups_out(), _blue_race())
BENCH_REFIT = (_kit(), _cups_in(), _grease(), _inner_in(), _seal_in())
