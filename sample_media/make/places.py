"""The two places where the job is filmed: the workshop floor beside the trailer, and the bench."""

import math
import random
from itertools import pairwise

import bpy
from mathutils import Matrix, Vector
from shapes import Object, box, cloth, join, lathe, link, polygon, prism, rod
from tools import make_loose_castle_nut

Materials = dict[str, bpy.types.Material]

SEED = 7


def make_floor(m: Materials) -> list[Object]:
    """The hall round the trailer: floor, two walls, a door, shelves, things left lying about."""
    parts = [box("floor", (0, 0, -2), (3000, 3000, 4), m["floor"])]
    parts += [
        box("wall", (0, 520, 200), (3000, 8, 500), m["wall"]),
        box("wall", (0, -700, 200), (3000, 8, 500), m["wall"]),
    ]
    parts.append(box("skirting", (0, 514, 40), (3000, 6, 90), m["green paint"]))
    parts += [box("door rib", (-330 + 50 * i, 512, 170), (44, 6, 300), m["panel"], 2) for i in range(5)]
    parts.append(box("cupboard", (130, 480, 80), (120, 60, 160), m["blue paint"], 2))
    parts += [
        box("bin", (260 + 42 * i, 480, 70 + 8 * (i % 2)), (34, 40, 30), m[c], 2)
        for i, c in enumerate(("red paint", "yellow", "tray"))
    ]
    parts.append(box("rack", (300, 480, 50), (180, 50, 6), m["wood"]))
    parts.append(lathe("drum", [(1e-4, 0), (29, 0), (29, 86), (1e-4, 86)], m["blue paint"], 40))
    parts[-1].location = (-190, 430, 0)
    return [*parts, *_floor_litter(m)]


def _floor_litter(m: Materials) -> list[Object]:
    """What lies about near the wheel: hose, cans, a line on the floor, oil stains."""
    parts = [box("line", (0, 330, 0.05), (3000, 8, 0.1), m["yellow"])]
    hose = [(-60 + 34 * math.cos(i * 0.5) + i * 1.1, 230 + 22 * math.sin(i * 0.5), 1.3) for i in range(34)]
    parts += [rod("hose", a, b, 1.3, m["red paint"]) for a, b in pairwise(hose)]
    parts += [_stain(m, x, y, wide) for x, y, wide in ((-30, -14, 9), (26, 70, 16), (-70, 120, 22), (60, -30, 6))]
    for x, y, colour in ((96, 260, "green paint"), (122, 268, "red paint"), (-120, 300, "yellow")):
        can = lathe("can", [(1e-4, 0), (11, 0), (11, 30), (3, 34), (1e-4, 34)], m[colour], 32)
        can.location = (x, y, 0)
        parts.append(can)
    parts.append(rod("broom", (-90, 505, 0), (-70, 511, 150), 1.6, m["block"]))
    return parts


def make_bench(m: Materials) -> list[Object]:
    """A bench that is in use: stained, littered, with a wall of tools and a poster behind it."""
    parts = [box("top", (0, 12, -2), (260, 90, 4), m["wood"], 0.3), box("wall", (0, 75, 60), (700, 4, 300), m["wall"])]
    parts += _wall_tools(m)
    parts += [
        box("shelf", (45, 62, 14), (80, 18, 1.6), m["wood"]),
        box("bin", (36, 62, 20), (13, 11, 10), m["red paint"], 0.5),
    ]
    parts += [box("bin", (54, 62, 19.5), (13, 11, 9), m["yellow"], 0.5), *_vice(m), *_poster(m), *_litter(m)]
    return parts


def _wall_tools(m: Materials) -> list[Object]:
    chance, made = random.Random(SEED), []
    colours = ("steel", "red paint", "black", "yellow", "tray")
    for i in range(13):
        x = -95 + 14 * i + chance.uniform(-3, 3)
        height = chance.uniform(10, 26)
        if -42 < x < -2:
            continue
        made.append(rod("hung tool", (x, 71, 46), (x, 71, 46 - height), chance.uniform(0.7, 1.3), m[colours[i % 5]]))
        made.append(box("hung head", (x, 71, 47), (chance.uniform(3, 6), 2, 3), m["steel"], 0.5))
    return made


def _vice(m: Materials) -> list[Object]:
    parts = [
        box("vice", (-52, 20, 5), (14, 20, 10), m["blue paint"], 1.2),
        box("jaw", (-52, 8, 12), (16, 5, 6), m["blue paint"], 0.6),
    ]
    return [
        *parts,
        box("jaw", (-52, 15, 12), (16, 5, 6), m["blue paint"], 0.6),
        rod("screw", (-52, 6, 8), (-52, -6, 8), 1.6, m["steel"]),
    ]


def _poster(m: Materials) -> list[Object]:
    """A drawn face, so that there is something to hide before publishing."""
    place = Matrix.Translation((-22, 72.6, 33)) @ Matrix.Rotation(math.pi / 2, 4, "X")
    parts = [box("paper", (0, 0, 0), (27, 36, 0.2), m["white"])]
    shapes = (
        ("hair", 0, 3.5, 9.2, 11, 0.2),
        ("skin", 0, 1, 7.6, 10, 0.3),
        ("skin", -7.6, 0.5, 1.5, 2.4, 0.3),
        ("skin", 7.6, 0.5, 1.5, 2.4, 0.3),
        ("white", -3, 2.8, 1.7, 1.1, 0.4),
        ("white", 3, 2.8, 1.7, 1.1, 0.4),
        ("black", -3, 2.8, 0.8, 0.8, 0.5),
        ("black", 3, 2.8, 0.8, 0.8, 0.5),
        ("hair", -3, 5, 2.1, 0.4, 0.4),
        ("hair", 3, 5, 2.1, 0.4, 0.4),
        ("lamp", 0, -4.6, 2.8, 0.8, 0.4),
        ("hair", 0, 9.5, 7, 3, 0.4),
    )
    for colour, x, y, wide, high, level in shapes:
        outline = [(x + wide * a, y + high * b) for a, b in polygon(1, 28)]
        parts.append(prism("shape", outline, level, level + 0.06, m[colour]))
    parts.append(prism("nose", [(-0.9, -1.4), (0.9, -1.4), (0, 2)], 0.4, 0.46, m["hair"]))
    made = join("poster", parts)
    made.matrix_world = place
    return [made]


def _litter(m: Materials) -> list[Object]:
    chance, made = random.Random(SEED + 1), []
    for i in range(26):
        x, y = chance.uniform(-45, 50), chance.uniform(14, 46)
        turn, kind = chance.uniform(0, 180), i % 4
        if kind == 0:
            made.append(lathe("ring", [(0.5, 0), (1.1, 0), (1.1, 0.2), (0.5, 0.2)], m["washer"], 24))
        elif kind == 1:
            made.append(rod("bolt", (0, 0, 0.5), (3.4, 0, 0.5), 0.4, m["steel"]))
        elif kind == 2:
            made.append(lathe("socket", [(0.7, 0), (1.2, 0), (1.2, 2.6), (0.7, 2.6)], m["bright"], 24))
        else:
            made.append(box("paper", (0, 0, 0), (7, 9, 0.03), m["paper"]))
        made[-1].matrix_world = Matrix.Translation((x, y, 0.03 + 0.004 * i)) @ Matrix.Rotation(
            math.radians(turn), 4, "Z"
        )
    return [*made, *_big_litter(m)]


def _big_litter(m: Materials) -> list[Object]:
    tin = lathe("grease tin", [(0.01, 0), (4.6, 0), (4.6, 7), (4.4, 7), (4.4, 6.0), (0.01, 6.4)], m["yellow"], 48)
    fill = lathe("filling", [(0.01, 6.5), (2, 6.6), (4.3, 6.1), (4.3, 5.5), (0.01, 5.5)], m["grease"], 40)
    mug = lathe("mug", [(0.01, 0), (3.8, 0), (4, 9), (3.7, 9), (3.6, 1), (0.01, 1)], m["white"], 40)
    for part in (tin, fill):
        part.location = (-24, 22, 0)
    mug.location = (34, 30, 0)
    old = cloth("old rag", 8, 2.6, m["rag"], 9)
    old.location = (-38, -2, 0)
    nut = make_loose_castle_nut(m)
    nut.location = (27, 18, 0)
    return [tin, fill, mug, old, nut, _stain(m, 16, 6, 4), _stain(m, -12, -9, 3)]


def _stain(m: Materials, x: float, y: float, wide: float) -> Object:
    """A blot of oil."""
    rim = [2 * math.pi * i / 48 for i in range(48)]
    reach = [wide * (1 + 0.14 * math.sin(3 * a + x) + 0.09 * math.sin(5 * a + y)) for a in rim]
    stain = prism(
        "stain",
        [(r * math.cos(a), 0.7 * r * math.sin(a)) for r, a in zip(reach, rim, strict=True)],
        0.01,
        0.03,
        m["oil"],
    )
    stain.location = (x, y, 0)
    return stain


def make_tray(m: Materials) -> Object:
    """The tin tray for parts."""
    parts = [box("tray", (0, 0, 0.25), (22, 15, 0.3), m["tray"], 0.1)]
    parts += [box("edge", (side * 11, 0, 0.9), (0.35, 15, 1.6), m["tray"], 0.1) for side in (-1, 1)]
    parts += [box("edge", (0, side * 7.5, 0.9), (22.3, 0.35, 1.6), m["tray"], 0.1) for side in (-1, 1)]
    return join("tray", parts)


def make_lights(scale: float, middle: tuple[float, float, float], strength: float = 1.0) -> list[Object]:
    """Two tubes, a window and a lamp for the back, arranged round a middle point."""
    rig = (
        ((-25, -28, 62), (90, 6), 60000, (0.93, 0.98, 1)),
        ((40, 5, 75), (90, 6), 42000, (0.95, 0.98, 1)),
        ((-85, -50, 30), (50, 60), 70000, (1, 0.93, 0.82)),
        ((30, 32, 90), (120, 8), 30000, (0.95, 0.98, 1)),
    )
    return [
        _area(Vector(place) * scale + Vector(middle), Vector(middle), size, power * strength, colour, scale)
        for place, size, power, colour in rig
    ]


def make_hall_light() -> Object:
    """The light over the far side of the hall, behind the trailer."""
    return _area(Vector((0, 300, 300)), Vector((0, 460, 40)), (600, 60), 2_500_000, (1, 0.97, 0.92), 1.0)


def _area(
    place: Vector,
    target: Vector,
    size: tuple[float, float],
    power: float,
    colour: tuple[float, float, float],
    scale: float,
) -> Object:
    lamp = bpy.data.lights.new("lamp", "AREA")
    lamp.shape, lamp.size, lamp.size_y = "RECTANGLE", size[0] * scale, size[1] * scale
    lamp.energy, lamp.color = power * scale * scale, colour
    made = link("lamp", lamp)
    made.location = place
    made.rotation_euler = (target - place).to_track_quat("-Z", "Y").to_euler()
    return made
