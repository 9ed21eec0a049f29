"""Hand tools and supports, each in a frame that makes it easy to place: the working end is at 0."""

import math
from itertools import pairwise

import bpy
from hub_parts import NUT_SIZE, castle_nut
from mathutils import Matrix
from shapes import Object, body, box, cloth, combine, join, lathe, link, points, polygon, prism, resharpen, rod

Materials = dict[str, bpy.types.Material]


def make_tools(m: Materials) -> dict[str, Object]:
    """All tools by name."""
    made = {"spanner": _spanner(m), "flat bar": _flat_bar(m), "pliers": _pliers(m), "hammer": _hammer(m)}
    made |= {"drift": _drift(m), "brace": _bar(m, "brace", False), "torque wrench": _bar(m, "torque wrench", True)}
    made |= {"jack": _jack(m), "jack arm": _jack_arm(m), "jack handle": _jack_handle(m), "stand": _stand(m)}
    made |= {"chock front": _chock(m, "chock front"), "chock behind": _chock(m, "chock behind")}
    made |= {"rag": cloth("rag", 7, 2.4, m["rag"], 3), "clean rag": cloth("clean rag", 17, 0.5, m["clean rag"], 5)}
    made |= {"wad": _wad(m), "grease dab": _dab(m), "block": box("block", (0, 0, 2), (9, 9, 4), m["block"], 0.15)}
    made |= {"support left": box("support left", (0, 0, 4), (6, 18, 8), m["block"], 0.2)}
    made |= {"support right": box("support right", (0, 0, 4), (6, 18, 8), m["block"], 0.2)}
    return made


def _text(words: str, size: float, material: bpy.types.Material, place: Matrix) -> Object:
    curve = bpy.data.curves.new(words, "FONT")
    curve.body, curve.size, curve.extrude = words, size, 0.02
    curve.align_x = curve.align_y = "CENTER"
    curve.materials.append(material)
    made = link(words, curve)
    made.matrix_world = place
    return made


def _spanner(m: Materials) -> Object:
    """Ring spanner: the ring round Z at 0, the shank rising along +X."""
    ring = prism("spanner", polygon(2.02, 40), -0.1, 0.85, m["bright"])
    corner = NUT_SIZE / 2 / math.cos(math.pi / 6) + 0.05
    for turn in (0, math.pi / 6):
        combine(ring, prism("hole", polygon(corner, 6, turn), -2, 3, m["bright"]), "DIFFERENCE")
    resharpen(ring, 30)
    rise = Matrix.Translation((1.5, 0, 0.45)) @ Matrix.Rotation(math.radians(-13), 4, "Y")
    shank = box("shank", (8.3, 0, 0), (17.5, 1.45, 0.62), m["bright"], 0.22)
    hollow = box("hollow", (8.3, 0, 0), (10.5, 0.8, 0.65), m["steel"], 0.1)
    for part in (shank, hollow):
        part.matrix_world = rise @ Matrix.Translation((8.3, 0, 0))
    size = _text("24", 1.15, m["black"], rise @ Matrix.Translation((4.4, 0, 0.335)))
    bpy.context.view_layer.update()
    return join("spanner", [ring, shank, hollow, size])


def _flat_bar(m: Materials) -> Object:
    """Flat bar: the blade's edge at 0, the bar along +X."""
    blade = prism("flat bar", [(0, -0.04), (2.4, -0.28), (3.0, 0.28), (0, 0.04)], -1.0, 1.0, m["bright"])
    blade.data.transform(Matrix.Rotation(math.radians(90), 4, "X"))
    stem = box("stem", (13, 0, 0.4), (21, 1.5, 0.62), m["blue paint"], 0.15)
    stem.rotation_euler = (0, math.radians(-2), 0)
    return join("flat bar", [blade, stem])


def _pliers(m: Materials) -> Object:
    """Pliers: the tips at 0, the handles along +X."""
    parts = [lathe("pliers", [(1e-4, -0.45), (0.8, -0.45), (0.8, 0.45), (1e-4, 0.45)], m["steel"], 32)]
    parts[0].data.transform(Matrix.Translation((5, 0, 0)))
    for side in (-1, 1):
        jaw = prism(
            "jaw",
            [(0, side * 0.06), (0.3, side * 0.3), (4.6, side * 0.95), (5.3, side * 0.5), (5, 0)],
            -0.35,
            0.35,
            m["steel"],
        )
        parts.append(jaw)
        parts.append(rod("handle", (5, -side * 0.3, 0), (9, side * 1.3, 0), 0.42, m["steel"], 0.55))
        parts.append(rod("sleeve", (8.4, side * 1.1, 0), (18, side * 1.15, 0), 0.62, m["red paint"], 0.55))
    return join("pliers", parts)


def _hammer(m: Materials) -> Object:
    """Hammer: the face at 0 looks along -Z, the handle along +X."""
    head = lathe(
        "hammer",
        points("0.0001,0 1.25,0 1.4,0.15 1.4,1.6 1.05,2.2 1.05,5.2 1.4,5.8 1.4,7.6 1.25,7.8 0.0001,7.8"),
        m["steel"],
        40,
    )
    handle = rod("handle", (-1.4, 0, 3.7), (29, 0, 3.7), 0.75, m["block"], 1.0)
    return join("hammer", [head, handle])


def _drift(m: Materials) -> Object:
    return lathe(
        "drift", [(1e-4, 0), (0.55, 0), (0.6, 0.1), (0.6, 12.5), (0.75, 12.7), (0.7, 13), (1e-4, 13)], m["brass"], 32
    )


def _bar(m: Materials, name: str, measuring: bool) -> Object:
    """Socket on a long bar: the socket's mouth at 0 looks along -Z, the bar along +X."""
    socket = lathe(
        name,
        [(1.0, 0), (1.45, 0), (1.45, 4.2), (1.1, 4.6), (1.1, 5.8), (1e-4, 5.8), (1e-4, 1.5), (1.0, 1.5)],
        m["bright"],
        40,
    )
    head = box("head", (0, 0, 6.6), (3.6, 3.0, 1.9), m["bright"], 0.5)
    shaft = rod("shaft", (1, 0, 6.6), (24, 0, 6.6), 0.72, m["bright"])
    parts = [socket, head, shaft, rod("grip", (24, 0, 6.6), (38, 0, 6.6), 1.15, m["black"])]
    if measuring:
        parts.append(rod("scale", (17, 0, 6.6), (24.2, 0, 6.6), 1.15, m["brass"]))
        parts.append(rod("mark", (20.2, 0, 6.6), (20.6, 0, 6.6), 1.2, m["black"]))
        parts.append(rod("ring", (36, 0, 6.6), (38.2, 0, 6.6), 1.3, m["red paint"]))
    return join(name, parts)


def _jack(m: Materials) -> Object:
    """Trolley jack on the ground, its lifting saddle above 0, its tail towards -Y."""
    parts = [box("jack", (side * 5.5, -18, 8), (1, 46, 10), m["red paint"], 0.4) for side in (-1, 1)]
    parts.append(box("tank", (0, -30, 7), (9, 16, 6), m["red paint"], 0.6))
    for y in (2, -37):
        for side in (-1, 1):
            wheel = rod("wheel", (side * 6.2, y, 3), (side * 8, y, 3), 3, m["black"])
            parts.append(wheel)
    return join("jack", parts)


def _jack_arm(m: Materials) -> Object:
    """The jack's arm and saddle; the saddle's top at 0, the hinge towards -Y and down."""
    arm = [rod("jack arm", (side * 2.6, 0, -2.5), (side * 2.6, -34, -29), 1.3, m["red paint"]) for side in (-1, 1)]
    saddle = lathe(
        "saddle",
        [(1e-4, -2.4), (2.0, -2.4), (2.2, -1), (4, -0.8), (4, 0), (3.2, 0), (3.0, -0.3), (1e-4, -0.3)],
        m["steel"],
        40,
    )
    return join("jack arm", [*arm, saddle])


def _jack_handle(m: Materials) -> Object:
    """Pump handle; hinged at 0, reaching towards -Y, with a cross grip."""
    return join(
        "jack handle",
        [
            rod("jack handle", (0, 0, 0), (0, -62, 0), 1.1, m["galvanised"]),
            rod("grip", (-8, -62, 0), (8, -62, 0), 1.0, m["black"]),
        ],
    )


def _stand(m: Materials) -> Object:
    """Axle stand on the ground under 0; its saddle is 26 cm high."""
    parts = [rod("stand", (0, 0, 8), (0, 0, 24.5), 1.6, m["galvanised"])]
    parts.append(rod("tube", (0, 0, 5), (0, 0, 17), 2.4, m["yellow"]))
    for x, y in ((1, 1), (1, -1), (-1, 1), (-1, -1)):
        parts.append(rod("leg", (x * 1.2, y * 1.2, 16), (x * 9, y * 9, 0.4), 0.9, m["yellow"]))
    for start, end in (((-9, -9), (9, -9)), ((9, -9), (9, 9)), ((9, 9), (-9, 9)), ((-9, 9), (-9, -9))):
        parts.append(rod("brace", (*start, 0.6), (*end, 0.6), 0.55, m["yellow"]))
    parts.append(box("saddle", (0, 0, 25), (8, 4, 1.2), m["galvanised"], 0.3))
    parts += [box("horn", (side * 3.8, 0, 26), (0.9, 4, 2.4), m["galvanised"], 0.2) for side in (-1, 1)]
    return join("stand", parts)


def _chock(m: Materials, name: str) -> Object:
    """Wheel chock: its slope rises along +X."""
    wedge = prism(name, [(0, 0), (17, 0), (17, 11), (14, 12), (9, 6.5), (4, 2.2)], -6, 6, m["yellow"])
    wedge.data.transform(Matrix.Rotation(math.radians(90), 4, "X"))
    stripes = [box("stripe", (8 + 4 * i, 0, 4.5), (1.4, 12.1, 7 if i else 4), m["black"]) for i in range(2)]
    return join(name, [wedge, *stripes])


def _wad(m: Materials) -> Object:
    """A rag bunched up in the hand."""
    points = [(math.cos(i * 2.2) * 2.2, math.sin(i * 1.7) * 2.0, 0.8 * math.sin(i * 3.1)) for i in range(9)]
    limbs = [(a, b, 1.0, 0.7) for a, b in pairwise(points)]
    return body("wad", limbs, m["rag"], 0.25, 2)


def _dab(m: Materials) -> Object:
    """Grease heaped in the palm."""
    points = [
        (math.cos(i * 2.4) * 0.4 * i**0.5, math.sin(i * 2.4) * 0.4 * i**0.5, 0.1 * math.sin(i)) for i in range(14)
    ]
    limbs = [(a, (a[0] + 0.3, a[1], a[2] + 0.4), 0.55, 0.3) for a in points]
    return body("grease dab", limbs, m["grease"], 0.12, 2)


def make_wheel_nuts(m: Materials) -> dict[str, Object]:
    """Four wheel nuts; the cone's tip is at 0."""
    made = {}
    for i in range(4):
        cone = lathe("cone", [(0.62, 0), (0.75, 0), (1.05, 0.5), (0.62, 0.5)], m["zinc"], 32)
        head = prism("head", polygon(1.1, 6), 0.5, 1.9, m["zinc"])
        dome = lathe("dome", [(1e-4, 1.85), (0.98, 1.85), (0.75, 2.1), (1e-4, 2.15)], m["zinc"], 32)
        made[f"wheel nut {i + 1}"] = join(f"wheel nut {i + 1}", [cone, head, dome])
    return made


def make_loose_castle_nut(m: Materials) -> Object:
    """A spare castle nut for the untidy bench."""
    made = castle_nut(m)
    made.name = "loose nut"
    return made
