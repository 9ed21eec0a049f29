"""The hub and all that is threaded on the stub axle.

Every part stands in the axle's frame: Z runs outwards along the axle, 0 is the face of the hub.
Bearings, washer and nut have their seating face at 0 of their own frame.
"""

import math

import bpy
from mathutils import Matrix, Vector, noise
from shapes import Object, bake, body, box, combine, join, lathe, link, points, polygon, prism, resharpen, rod, twin

Materials = dict[str, bpy.types.Material]

NUT_SIZE = 2.4
STUD_CIRCLE = 5.0
PIN_ANGLE = 30.0
PIN_HEIGHT = 1.12
INNER_SCALE = 1.31
STUD_ANGLES = (45.0, 135.0, 225.0, 315.0)
ROLLERS = 17
HUB = (
    "2.98,0 3.1,-0.12 3.1,-2.9 3.25,-3.3 3.8,-3.75 4.1,-3.9 6.65,-3.95 6.8,-4.1 6.8,-4.75 6.7,-4.9 4.4,-5 4.1,-5.3 "
    "4,-8.7 3.9,-8.8 3,-8.8 2.97,-8.7 2.97,-5.9 2.2,-5.8 2,-5.6 2,-2.45 2.29,-2.45 2.29,-0.1 2.4,0"
)
"""Outline of the hub: radius and height, from its face round the outside and back through the bore."""


def make_hub_parts(m: Materials) -> dict[str, Object]:
    """All parts by name."""
    parts = {"hub": _hub(m), "stub": _stub(m), "washer": _washer(m), "nut": castle_nut(m)}
    parts |= {"cap": _cap(m), "seal": _seal(m, "seal", "seal"), "new seal": _seal(m, "new seal", "black")}
    parts |= _bearings(m) | _cups(m) | _pins(m)
    parts["hub grease"] = _bore_grease(m)
    return parts


def thread(name: str, radius: float, start: float, end: float, m: Materials) -> Object:
    """A screw thread, simplified to grooves with dark roots, so that it still reads in a small picture."""
    depth, crest, root = 0.1, 0.15, 0.11
    profile, z = [(1e-4, start)], start
    while z + crest + root < end - 0.3:
        profile += [
            (radius, z),
            (radius, z + crest),
            (radius - depth, z + crest + 0.02),
            (radius - depth, z + crest + root),
        ]
        z += crest + root + 0.02
    profile += [(radius, z), (radius, end - 0.14), (radius - 0.14, end), (1e-4, end)]
    made = lathe(name, profile, m["steel"], 40)
    made.data.materials.append(m["shadow"])
    for face in made.data.polygons:
        bare = math.hypot(face.center.x, face.center.y) < radius - 0.6 * depth
        face.material_index = int(bare and start < face.center.z < z)
    return made


def _hub(m: Materials) -> Object:
    parts = [lathe("hub", points(HUB), m["cast"], 96)]
    lip = [(2.42, 0.012), (2.96, 0.012), (3.08, -0.11), (3.08, -0.45), (2.3, -0.45), (2.3, -0.1)]
    parts.append(lathe("lip", lip, m["steel"], 96))
    rim = [(3.0, -8.812), (3.88, -8.812), (4.012, -8.7), (4.012, -8.3), (2.98, -8.3), (2.96, -8.7)]
    parts.append(lathe("rim", rim, m["steel"], 96))
    for angle in STUD_ANGLES:
        place = stud_place(angle)
        stud = thread("stud", 0.6, -3.9, -0.5, m)
        pad = lathe("pad", [(0.62, -3.95), (1.05, -3.95), (1.05, -3.86), (0.62, -3.86)], m["steel"], 32)
        for part in (stud, pad):
            part.data.transform(place)
            parts.append(part)
    return join("hub", parts)


def stud_place(angle: float) -> Matrix:
    """Where a stud stands on the flange."""
    a = math.radians(angle)
    return Matrix.Translation((STUD_CIRCLE * math.cos(a), STUD_CIRCLE * math.sin(a), 0))


def _stub(m: Materials) -> Object:
    screw = thread("stub", 0.8, -0.8, 2.0, m)
    hole = rod("hole", (-2, 0, PIN_HEIGHT), (2, 0, PIN_HEIGHT), 0.23, m["shadow"])
    hole.data.transform(Matrix.Rotation(math.radians(PIN_ANGLE), 4, "Z"))
    combine(screw, hole, "DIFFERENCE")
    resharpen(screw, 50)
    outer = lathe(
        "outer seat",
        points("0.0001,-0.78 0.8,-0.78 0.945,-0.86 0.945,-2.6 1,-2.7 1.25,-5.6 1.25,-8.3 1.9,-8.5 2,-9 0.0001,-9"),
        m["bright"],
        48,
    )
    shoulder = lathe(
        "shoulder", [(1e-4, -8.95), (2.3, -8.95), (2.5, -9.2), (2.5, -13), (1e-4, -13)], m["galvanised"], 48
    )
    plate = box("plate", (0, 0, -13.4), (9, 9, 1.0), m["galvanised"], 0.3)
    beam = box("beam", (0, 0, -33), (5.5, 5.5, 40), m["galvanised"], 0.4)
    return join("stub", [screw, outer, shoulder, plate, beam])


def _washer(m: Materials) -> Object:
    return lathe(
        "washer", [(0.86, 0), (1.62, 0), (1.66, 0.04), (1.66, 0.2), (1.62, 0.24), (0.86, 0.24)], m["washer"], 64
    )


def castle_nut(m: Materials) -> Object:
    """A hexagon nut with a slotted crown; its seat is at 0."""
    corner = NUT_SIZE / 2 / math.cos(math.pi / 6)
    nut = prism("nut", polygon(corner, 6), 0, 1.22, m["zinc"])
    flat = NUT_SIZE / 2
    chamfer = lathe(
        "chamfer",
        [(1e-4, 0), (flat * 0.98, 0), (corner * 1.01, 0.2), (corner * 1.01, 1.0), (flat * 0.96, 1.22), (1e-4, 1.22)],
        m["zinc"],
    )
    combine(nut, chamfer, "INTERSECT")
    crown = lathe("crown", [(1e-4, 1.1), (1.1, 1.1), (1.1, 1.74), (1.02, 1.82), (1e-4, 1.82)], m["zinc"])
    for i in range(3):
        combine(crown, box("slot", (0, 0, 1.66), (4, 0.5, 0.62), m["shadow"], turn=(0, 0, 30 + 60 * i)), "DIFFERENCE")
    combine(nut, crown, "UNION")
    combine(nut, lathe("bore", [(1e-4, -2), (0.815, -2), (0.815, 4), (1e-4, 4)], m["zinc"], 48), "DIFFERENCE")
    resharpen(nut, 28)
    edge = nut.modifiers.new("edge", "BEVEL")
    edge.width, edge.segments, edge.limit_method = 0.03, 2, "ANGLE"
    bake(nut)
    resharpen(nut, 30)
    return nut


def _cap(m: Materials) -> Object:
    dome = [(2.27 * math.sin(a) ** 0.7, 1.7 + 1.05 * math.cos(a)) for a in (math.radians(6 * i) for i in range(1, 16))]
    profile = [
        (0.01, 2.75),
        *dome,
        (2.27, 0.35),
        (2.62, 0.27),
        (2.62, 0.05),
        (2.28, 0.04),
        (2.26, -0.6),
        (2.18, -0.6),
        (2.15, 1.6),
        (1.2, 2.5),
        (0.01, 2.6),
    ]
    return lathe("cap", profile, m["cap"], 72)


def _seal(m: Materials, name: str, colour: str) -> Object:
    """The grease seal; its outer face is at 0 and looks along +Z of its own frame."""
    case = lathe(name, [(2.95, -0.5), (2.95, -0.04), (2.9, 0), (2.55, 0), (2.5, -0.1), (2.55, -0.5)], m["steel"], 72)
    lip = lathe(
        "lip",
        [(2.56, -0.02), (2.3, 0.05), (1.75, -0.05), (1.62, -0.12), (1.62, -0.2), (1.8, -0.3), (2.56, -0.4)],
        m[colour],
        72,
    )
    spring = lathe("spring", [(1.86, 0.03), (1.93, 0.08), (2.0, 0.03), (1.93, -0.02)], m["steel"], 48)
    return join(name, [case, lip, spring])


def _bearings(m: Materials) -> dict[str, Object]:
    bearing = _bearing(m)
    made = {"bearing": bearing, "inner bearing": twin("inner bearing", bearing)}
    greased = join("new bearing", [twin("copy", bearing), _roller_grease(m, "grease")])
    dirty = join("old bearing", [twin("copy", bearing), _roller_grease(m, "old grease")])
    made |= {"new bearing": greased, "new inner bearing": twin("new inner bearing", greased)}
    made |= {"old bearing": dirty, "old inner bearing": twin("old inner bearing", dirty)}
    return made


def _bearing(m: Materials) -> Object:
    parts = [
        lathe(
            "bearing",
            points("0.955,0 1.32,0 1.32,-0.14 1.27,-0.16 1.12,-1.43 1.17,-1.45 1.17,-1.6 0.955,-1.6"),
            m["bright"],
        )
    ]
    for i in range(ROLLERS):
        roller = lathe(
            "roller",
            [(1e-4, 0.66), (0.19, 0.66), (0.22, 0.6), (0.185, -0.6), (0.16, -0.66), (1e-4, -0.66)],
            m["bright"],
            18,
        )
        roller.data.transform(_round(i, 1.60, -0.8, 9.5))
        bar = box("bar", (0, 0, 0), (0.06, 0.13, 1.4), m["cage"])
        bar.data.transform(_round(i + 0.5, 1.72, -0.8, 11))
        parts += [roller, bar]
    parts.append(
        lathe("large end", [(1.78, -0.02), (1.93, -0.08), (1.95, -0.18), (1.88, -0.24), (1.78, -0.2)], m["cage"])
    )
    parts.append(lathe("small end", [(1.30, -1.46), (1.62, -1.46), (1.60, -1.58), (1.30, -1.58)], m["cage"]))
    return join("bearing", parts)


def _round(index: float, radius: float, height: float, tilt: float) -> Matrix:
    turn = Matrix.Rotation(2 * math.pi * index / ROLLERS, 4, "Z")
    return turn @ Matrix.Translation((radius, 0, height)) @ Matrix.Rotation(math.radians(tilt), 4, "Y")


def _roller_grease(m: Materials, kind: str) -> Object:
    limbs = []
    for i in range(44):
        angle, height = i * 2.4, -0.2 - 1.1 * ((i * 0.618) % 1)
        radius = 1.88 - 0.17 * abs(height)
        ends = [(radius * math.cos(angle + s), radius * math.sin(angle + s), height + s * 0.3) for s in (0, 0.3)]
        limbs.append((*ends, 0.17, 0.1))
    for i in range(15):
        angle, radius = i * 1.13, 1.5 + 0.25 * ((i * 0.618) % 1)
        limbs.append(
            (
                (radius * math.cos(angle), radius * math.sin(angle), 0.0),
                (radius * math.cos(angle + 0.3), radius * math.sin(angle + 0.3), -0.1),
                0.19,
                0.12,
            )
        )
    return body("roller grease", limbs, m[kind], 0.07, 3)


def _cups(m: Materials) -> dict[str, Object]:
    outline = [(2.28, -0.22), (2.12, -0.22), (2.08, -0.26), (1.86, -1.6), (1.9, -1.68), (2.28, -1.68)]
    made = {}
    for name in ("cup", "inner cup", "new cup", "new inner cup"):
        made[name] = lathe(name, outline, m["bright"], 72)
    blue = made["cup"]
    blue.data.materials.append(m["blue race"])
    for face in blue.data.polygons:
        track = -1.35 < face.center.z < -0.4 and math.hypot(face.center.x, face.center.y) < 2.12
        face.material_index = int(track)
    return made


def _pins(m: Materials) -> dict[str, Object]:
    eye = "-1.3,0.11,0 -1.55,0.3,0 -1.85,0.27,0 -2,0,0 -1.85,-0.27,0 -1.55,-0.3,0 -1.3,-0.11,0"
    ends = "1.1,-0.11,0 1.42,-0.13,-0.2 1.5,-0.2,-0.7 1.48,-0.2,-1.1"
    bent = f"0.9,0.25,0.95 1.3,0.2,0.75 1.45,0.13,0.2 1.1,0.11,0 {eye} {ends}"
    splayed = f"2.7,0.5,0.12 2,0.2,0.1 1.1,0.11,0 {eye} 1.1,-0.11,0 1.8,-0.2,-0.05 2.3,-0.5,-0.15"
    straight = f"2.5,0.1,0 1.1,0.1,0 {eye} 1.1,-0.1,0 2.3,-0.1,0"
    return {
        "bent pin": _wire("bent pin", points(bent), m["steel"]),
        "splayed pin": _wire("splayed pin", points(splayed), m["steel"]),
        "new pin": _wire("new pin", points(straight), m["bright"]),
        "new bent pin": _wire("new bent pin", points(bent), m["bright"]),
    }


def _wire(name: str, way: list[tuple[float, ...]], material: bpy.types.Material) -> Object:
    curve = bpy.data.curves.new(name, "CURVE")
    curve.dimensions, curve.bevel_depth, curve.bevel_resolution = "3D", 0.125, 3
    line = curve.splines.new("BEZIER")
    line.bezier_points.add(len(way) - 1)
    for bend, point in zip(line.bezier_points, way, strict=True):
        bend.co, bend.handle_left_type, bend.handle_right_type = point, "AUTO", "AUTO"
    curve.materials.append(material)
    return link(name, curve)


def _bore_grease(m: Materials) -> Object:
    def warp(r: float, z: float, angle: float) -> tuple[float, float]:
        return r, z + 0.2 * noise.noise(Vector((3 * math.cos(angle), 3 * math.sin(angle), r * 1.5)))

    return lathe("hub grease", [(1.35, -3.0), (2.02, -2.7), (2.02, -5.4), (1.35, -5.2)], m["old grease"], 64, warp=warp)
