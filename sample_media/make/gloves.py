"""Two working hands in knitted gloves with a dark coating, in the few poses that the job needs."""

from collections.abc import Sequence

import bmesh
import bpy
from mathutils import Matrix, Vector
from shapes import Object, body, join, lathe, link

Materials = dict[str, bpy.types.Material]
Point = Sequence[float]

FINGER = (1.06, 0.98, 0.9, 0.82)
"""Radius of a gloved finger at knuckle, first and second joint, and tip."""


def make_gloves(m: Materials) -> dict[str, Object]:
    """All hands by name; a left hand is the mirror of a right one."""
    made = {"fist": _fist(m), "clamp": _clamp(m), "flat hand": _flat(m)}
    for name, radius in (("pinch small", 1.15), ("pinch", 1.9), ("pinch wide", 2.6)):
        made[name] = _pinch(m, name, radius)
    for name in ("fist", "clamp", "pinch", "pinch wide", "flat hand"):
        made["left " + name] = _mirror("left " + name, made[name])
    return made


def _finger(knuckle: Point, first: Point, second: Point, tip: Point, thick: float = 1.0) -> list[tuple]:
    joints = [Vector(p) for p in (knuckle, first, second, tip)]
    radii = [r * thick for r in FINGER]
    return [(joints[i], joints[i + 1], radii[i], radii[i + 1]) for i in range(3)]


def _glove(name: str, limbs: list[tuple], wrist: Point, elbow: Point, back: Point, m: Materials) -> Object:
    """Skin of the hand, hem at the wrist, sleeve to the elbow; knitted where it faces `back`."""
    hand = body(name, limbs, m["coating"], 0.17, 4)
    hand.data.materials.append(m["knit"])
    way, knuckles = Vector(back).normalized(), Vector(wrist)
    for face in hand.data.polygons:
        near_wrist = (face.center - knuckles).length < 8.4
        face.material_index = int(face.normal.dot(way) > 0.3 and near_wrist)
    a, b = Vector(wrist), Vector(elbow)
    along = (b - a).normalized()
    turn = Matrix.Translation(a) @ along.to_track_quat("Z", "Y").to_matrix().to_4x4()
    hem = lathe("hem", [(1.9, -0.2), (2.4, 0.1), (2.55, 0.5), (2.55, 1.3), (2.4, 1.5), (1.9, 1.6)], m["hem"], 32)
    hem.data.transform(turn)
    sleeve = body("sleeve", [(a + along * 2.0, b, 2.75, 4.3), (b, a + (b - a) * 3.6, 4.3, 6.2)], m["sleeve"], 0.6, 3)
    return join(name, [hand, hem, sleeve])


def _fist(m: Materials) -> Object:
    """A fist round a bar of about 1.5 cm that lies along X; the arm leaves towards +Z and -Y."""
    limbs: list[tuple] = []
    for x, reach in ((-2.75, 0.96), (-0.92, 1.04), (0.92, 1.0), (2.7, 0.88)):
        limbs += _finger(
            (x, 1.0, 2.3), (x, 2.05 * reach, 0.1), (x, 0.6, -1.6), (x, -0.95, -1.05), 0.98 if x < 2 else 0.88
        )
        limbs.append(((x * 0.75 + 0.2, -1.5, 6.0), (x, 1.0, 2.3), 1.35, 1.05))
    limbs += [
        ((-1.2, -2.0, 5.4), (-3.3, -1.5, 3.2), 1.4, 1.15),
        ((-3.3, -1.5, 3.2), (-3.6, -1.5, 1.2), 1.05, 0.92),
        ((-3.6, -1.5, 1.2), (-2.6, -1.7, -0.3), 0.92, 0.82),
    ]
    limbs += [((-0.8, -1.9, 6.6), (1.3, -1.9, 6.6), 1.5, 1.5), ((0.3, -2.0, 7.0), (0.9, -3.2, 9.4), 1.95, 2.0)]
    return _glove("fist", limbs, (0.9, -3.2, 9.3), (5.5, -12, 27), (0, 0.8, 0.5), m)


def _pinch(m: Materials, name: str, r: float) -> Object:
    """Thumb below, two fingers above a ring of radius r round Z; the arm leaves to +X, -Y and +Z."""
    tip, thumb = r + 0.62, -r - 0.66
    limbs = _finger((6.2, 2.2 + r * 0.3, 5.4), (4.1, 4.2 + r * 0.4, 4.4), (1.7, r + 2.3, 2.2), (0.0, tip, 0.1))
    limbs += _finger((6.9, 1.0 + r * 0.3, 6.4), (5.1, 3.2 + r * 0.4, 6.1), (2.9, r + 1.9, 3.7), (1.5, tip - 0.35, 1.2))
    limbs += _finger((7.5, -0.3, 7.3), (6.3, 2.0, 7.6), (4.6, 1.9, 6.0), (4.2, 0.2, 5.0), 0.95)
    limbs += _finger((7.9, -1.5, 7.8), (7.0, 0.4, 8.6), (5.6, 0.2, 7.3), (5.4, -1.1, 6.4), 0.86)
    limbs += [
        ((8.0, -3.0, 6.3), (4.9, -3.0 - r * 0.6, 3.7), 1.5, 1.1),
        ((4.9, -3.0 - r * 0.6, 3.7), (2.3, -r - 1.5, 1.6), 1.06, 0.95),
        ((2.3, -r - 1.5, 1.6), (0.2, thumb, 0.2), 0.95, 0.84),
    ]
    wrist = Vector((10.9, -4.4, 9.3))
    limbs += [(wrist, k, 1.6, 1.12) for k in ((6.2, 2.2, 5.4), (6.9, 1.0, 6.4), (7.5, -0.3, 7.3), (7.9, -1.5, 7.8))]
    limbs += [((8.0, -3.0, 6.3), (10.6, -4.5, 8.8), 1.55, 1.65), (wrist, wrist + Vector((2.2, -1.3, 1.8)), 2.0, 2.1)]
    return _glove(name, limbs, wrist + Vector((2.0, -1.2, 1.7)), wrist + Vector((17, -11, 13)), (-0.2, 0.6, 0.8), m)


def _clamp(m: Materials) -> Object:
    """Four fingers behind (-Z) and the thumb before an edge that runs along Y at x = 0; arm to +X."""
    limbs: list[tuple] = []
    for y, reach in ((2.9, 0.95), (1.0, 1.05), (-0.9, 1.0), (-2.7, 0.85)):
        limbs += _finger(
            (4.2, y, 1.2), (2.6, y, -0.9), (0.6, y, -1.5), (-1.6 * reach, y, -1.35), 1.0 if y > -2 else 0.88
        )
        limbs.append(((7.6, y * 0.6, 1.7), (4.2, y, 1.2), 1.4, 1.12))
    limbs += [
        ((7.2, 1.5, 2.0), (4.2, 3.2, 2.8), 1.5, 1.15),
        ((4.2, 3.2, 2.8), (1.6, 3.3, 2.3), 1.05, 0.95),
        ((1.6, 3.3, 2.3), (-0.5, 3.1, 1.5), 0.95, 0.84),
    ]
    limbs += [((7.8, -1.2, 1.7), (7.8, 1.2, 1.9), 1.55, 1.55), ((7.8, 0, 1.8), (10.6, 0, 2.8), 1.9, 2.0)]
    return _glove("clamp", limbs, (10.4, 0, 2.7), (27, -2, 10), (-0.1, 0, 1), m)


def _flat(m: Materials) -> Object:
    """An open hand, palm towards -Z, fingers along -X, the palm's middle at 0; the arm leaves to +X."""
    limbs: list[tuple] = []
    for y, reach in ((-2.7, 0.93), (-0.95, 1.05), (0.85, 1.0), (2.6, 0.8)):
        limbs += _finger(
            (-0.5, y, 0.2),
            (-3.0 * reach, y * 1.08, 0.25),
            (-4.9 * reach, y * 1.1, 0.0),
            (-6.6 * reach, y * 1.1, -0.5),
            1.0 if y < 2 else 0.86,
        )
        limbs.append(((4.6, y * 0.6, 0.4), (-0.5, y, 0.2), 1.5, 1.12))
    limbs += [
        ((3.4, -1.8, 0.2), (1.6, -4.2, -0.4), 1.5, 1.15),
        ((1.6, -4.2, -0.4), (-0.6, -5.3, -0.9), 1.08, 0.96),
        ((-0.6, -5.3, -0.9), (-2.4, -5.7, -1.3), 0.95, 0.84),
    ]
    limbs += [((2.2, -1.4, 0.3), (2.2, 1.2, 0.3), 1.5, 1.5), ((4.4, 0, 0.4), (7.2, 0, 1.0), 1.9, 2.0)]
    return _glove("flat hand", limbs, (7.0, 0, 0.9), (24, -1, 6), (0, 0, 1), m)


def _mirror(name: str, right: Object) -> Object:
    data = right.data.copy()
    data.transform(Matrix.Scale(-1, 4, (1, 0, 0)))
    mesh = bmesh.new()
    mesh.from_mesh(data)
    bmesh.ops.reverse_faces(mesh, faces=mesh.faces)
    mesh.to_mesh(data)
    mesh.free()
    return link(name, data)
