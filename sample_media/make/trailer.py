"""The trailer, its wheels and the tow car. The near hub's face is the plane y = 0."""

import math

import bpy
from mathutils import Matrix
from shapes import Object, box, join, lathe, link, points, prism, rod

Materials = dict[str, bpy.types.Material]

TYRE_RADIUS = 27.0
TYRE = "16.4,-1.6 18,-0.6 22,-0.2 25.2,-0.9 26.6,-2.2 27,-3.6 27,-10.4 26.6,-11.8 25.2,-13.1 22,-13.8 16.4,-12.4"
RIM = "16.5,-1.2 17.1,-1.3 17,-2 15.6,-2.4 15,-4 14.8,-10 16.5,-12.4 16,-12.4 14.3,-10 14.4,-3.6 15.6,-1.5"
DISC = "3.35,-3.93 7,-3.93 9.5,-2.6 12.2,-2.8 14.6,-5.2 14.6,-5.6 12,-3.2 9.5,-3 7,-3.5 3.35,-3.5"


def make_wheel(m: Materials, name: str = "wheel") -> Object:
    """Wheel in the axle's frame: its disc seats at z = -3.93."""
    parts = [lathe(name, points(TYRE), m["rubber"], 96, warp=_tread)]
    parts += [lathe("rim", points(RIM), m["wheel paint"], 96), lathe("disc", points(DISC), m["wheel paint"], 72)]
    for i in range(8):
        a = 2 * math.pi * (i + 0.5) / 8
        x, y = 11 * math.cos(a), 11 * math.sin(a)
        parts.append(rod("hole", (x, y, -2.66), (x, y, -2.5), 1.25, m["black"]))
    parts.append(rod("valve", (13.2, 3, -3.4), (12.6, 2.8, -0.8), 0.35, m["black"]))
    return join(name, parts)


def _tread(r: float, z: float, angle: float) -> tuple[float, float]:
    groove = r > 26.4 and (abs(z + 7) < 0.1 or math.sin(angle * 48) > 0.75)
    return r - (0.5 if groove else 0), z


def make_trailer(m: Materials) -> Object:
    """Everything that rises with the trailer, except the parts of the near hub."""
    trailer = link("trailer", None)
    parts = [*_bed(m), *_running_gear(m), *_rear(m)]
    for part in parts:
        part.parent = trailer
    return trailer


def _bed(m: Materials) -> list[Object]:
    parts = [
        box("side", (-8, 17, 35), (190, 1.5, 34), m["panel"], 0.4),
        box("far side", (-8, 137, 35), (190, 1.5, 34), m["panel"], 0.4),
    ]
    parts += [box("end", (x, 77, 35), (1.5, 120, 34), m["panel"], 0.4) for x in (-103, 87)]
    parts.append(box("floor", (-8, 77, 18), (190, 120, 1.5), m["wood"]))
    parts += [box("rib", (x, 15.8, 35), (3, 1.2, 34), m["galvanised"], 0.3) for x in (-101, -55, -10, 36, 85)]
    parts += [box("rail", (-8, 15.8, z), (190, 1.4, 2.2), m["galvanised"], 0.4) for z in (51, 19)]
    parts += [box("frame", (-8, y, 14.5), (190, 4, 6), m["galvanised"], 0.4) for y in (30, 124)]
    for y in (40, 114):
        parts.append(rod("drawbar", (80, y, 14), (172, 77, 14), 3, m["galvanised"]))
    parts.append(rod("coupling", (168, 77, 15), (190, 77, 16), 3.4, m["black"]))
    parts.append(rod("jockey", (140, 70, 2), (140, 70, 40), 2.2, m["galvanised"]))
    return parts


def _running_gear(m: Materials) -> list[Object]:
    guard = [(31 * math.cos(a), 31 * math.sin(a)) for a in (math.radians(d) for d in range(12, 169, 6))]
    inner = [(30.3 * x / 31, 30.3 * z / 31) for x, z in reversed(guard)]
    parts = []
    for y in (16, 154):
        arch = prism("mudguard", guard + inner, -16, 0, m["black"])
        arch.matrix_world = (
            Matrix.Translation((0, y, 0)) @ Matrix.Rotation(math.pi / 2, 4, "X") @ Matrix.Translation((0, 0, 16))
        )
        parts.append(arch)
    parts.append(rod("axle", (0, 20, 0), (0, 134, 0), 2.9, m["galvanised"]))
    parts += [box("spring", (0, y, 6), (60, 5, 1.6), m["black"], 0.3) for y in (30, 124)]
    far = make_wheel(m, "far wheel")
    far.matrix_world = Matrix.Translation((0, 154, 0)) @ Matrix.Rotation(-math.pi / 2, 4, "X")
    return [*parts, far]


def _rear(m: Materials) -> list[Object]:
    parts = [box("tail board", (-105, 77, 14), (2, 118, 11), m["white"], 0.4)]
    parts += [box("lamp", (-106.4, y, 14), (1.5, 17, 8), m["lamp"], 0.6) for y in (32, 122)]
    return [*parts, number_plate(m, Matrix.Translation((-106.6, 62, 14)))]


def number_plate(m: Materials, place: Matrix) -> Object:
    """An invented plate: six corners, violet on pale yellow, in use nowhere."""
    outline = [(-20, 0), (-16, -5.2), (16, -5.2), (20, 0), (16, 5.2), (-16, 5.2)]
    border = prism("plate", outline, 0, 0.4, m["violet"])
    field = prism("field", [(x * 0.93, y * 0.88) for x, y in outline], 0.4, 0.55, m["white"])
    curve = bpy.data.curves.new("letters", "FONT")
    curve.body, curve.size, curve.extrude = "ZU-DEMO-00", 5.2, 0.05
    curve.align_x = curve.align_y = "CENTER"
    curve.materials.append(m["violet"])
    letters = link("letters", curve)
    letters.location = (0, -0.2, 0.58)
    bpy.context.view_layer.update()
    made = join("plate", [border, field, letters])
    made.matrix_world = place @ Matrix.Rotation(-math.pi / 2, 4, "Z") @ Matrix.Rotation(math.pi / 2, 4, "X")
    return made


def make_car(m: Materials) -> Object:
    """The back of the tow car, seen from afar; stands on the ground at z = 0."""
    side = [(195, 30), (200, 22), (420, 22), (420, 80), (330, 88), (290, 138), (205, 136), (194, 92)]
    shell = prism("tow car", side, -165, 0, m["car paint"])
    shell.data.transform(Matrix.Rotation(math.pi / 2, 4, "X"))
    window = prism("window", [(206, 92), (318, 90), (284, 130), (210, 128)], -166, 1, m["glass"])
    window.data.transform(Matrix.Rotation(math.pi / 2, 4, "X"))
    parts = [shell, window, box("rear window", (199.5, 82, 110), (4, 130, 30), m["glass"], 1, (0, -14, 0))]
    parts += [box("lamp", (194, y, 76), (3, 16, 22), m["lamp"], 1) for y in (12, 152)]
    parts.append(box("bumper", (193, 82, 42), (8, 168, 16), m["black"], 2))
    for x in (245, 385):
        parts.append(rod("wheel", (x, -1.5, 31), (x, 20, 31), 31, m["rubber"]))
        parts.append(rod("trim", (x, -2.2, 31), (x, 2, 31), 19, m["wheel paint"]))
    made = join("tow car", parts)
    made.location = (0, 0, 0)
    return made
