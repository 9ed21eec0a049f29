"""Mesh helpers: turned parts, prisms, boxes, blended bodies. One unit is one centimetre."""

import math
from collections.abc import Callable, Sequence
from itertools import pairwise

import bmesh
import bpy
from mathutils import Matrix, Vector, noise

Object = bpy.types.Object
Material = bpy.types.Material
Profile = Sequence[tuple[float, float]]
Warp = Callable[[float, float, float], tuple[float, float]]


def points(row: str) -> list[tuple[float, ...]]:
    """Points from a compact row such as `1,0 1,2.5 0.8,3`."""
    return [tuple(float(value) for value in point.split(",")) for point in row.split()]


def link(name: str, data: bpy.types.ID | None) -> Object:
    """Put a new object with this data into the scene."""
    made = bpy.data.objects.new(name, data)
    bpy.context.scene.collection.objects.link(made)
    return made


def mark_sharp(mesh: bmesh.types.BMesh, degrees: float) -> None:
    """Shade smoothly, but keep edges sharper than the angle hard."""
    for edge in mesh.edges:
        flat = len(edge.link_faces) == 2 and edge.calc_face_angle(0) <= math.radians(degrees)
        edge.smooth = flat
    for face in mesh.faces:
        face.smooth = True


def solid(name: str, mesh: bmesh.types.BMesh, material: Material, degrees: float = 35) -> Object:
    """Turn a finished mesh into an object."""
    bmesh.ops.recalc_face_normals(mesh, faces=mesh.faces)
    mark_sharp(mesh, degrees)
    data = bpy.data.meshes.new(name)
    mesh.to_mesh(data)
    mesh.free()
    data.materials.append(material)
    return link(name, data)


def lathe(
    name: str, profile: Profile, material: Material, segments: int = 64, closed: bool = True, warp: Warp | None = None
) -> Object:
    """Turn a profile of (radius, height) points round the Z axis."""
    mesh = bmesh.new()
    rings = [_ring(mesh, radius, height, segments, warp) for radius, height in profile]
    pairs = list(pairwise([*rings, rings[0]] if closed else rings))
    for lower, upper in pairs:
        for i in range(segments):
            j = (i + 1) % segments
            mesh.faces.new((lower[i], lower[j], upper[j], upper[i]))
    if not closed:
        mesh.faces.new(rings[0])
        mesh.faces.new(rings[-1])
    bmesh.ops.remove_doubles(mesh, verts=mesh.verts, dist=1e-4)
    return solid(name, mesh, material)


def _ring(
    mesh: bmesh.types.BMesh, radius: float, height: float, segments: int, warp: Warp | None
) -> list[bmesh.types.BMVert]:
    ring = []
    for i in range(segments):
        angle = 2 * math.pi * i / segments
        r, z = warp(radius, height, angle) if warp else (radius, height)
        ring.append(mesh.verts.new((r * math.cos(angle), r * math.sin(angle), z)))
    return ring


def polygon(radius: float, corners: int, turn: float = 0.0) -> list[tuple[float, float]]:
    """Corners of a regular polygon."""
    angles = [turn + 2 * math.pi * i / corners for i in range(corners)]
    return [(radius * math.cos(a), radius * math.sin(a)) for a in angles]


def prism(name: str, outline: Profile, bottom: float, top: float, material: Material) -> Object:
    """Pull an outline in the XY plane up along Z."""
    mesh = bmesh.new()
    lower = [mesh.verts.new((x, y, bottom)) for x, y in outline]
    upper = [mesh.verts.new((x, y, top)) for x, y in outline]
    mesh.faces.new(lower[::-1])
    mesh.faces.new(upper)
    for i in range(len(outline)):
        j = (i + 1) % len(outline)
        mesh.faces.new((lower[i], lower[j], upper[j], upper[i]))
    return solid(name, mesh, material)


def box(
    name: str,
    centre: Sequence[float],
    size: Sequence[float],
    material: Material,
    bevel: float = 0.0,
    turn: Sequence[float] = (0, 0, 0),
) -> Object:
    """A box with rounded edges; `turn` in degrees about X, Y, Z."""
    mesh = bmesh.new()
    bmesh.ops.create_cube(mesh, size=1)
    bmesh.ops.scale(mesh, vec=size, verts=mesh.verts)
    made = solid(name, mesh, material)
    made.location = centre
    made.rotation_euler = [math.radians(a) for a in turn]
    if bevel:
        edge = made.modifiers.new("bevel", "BEVEL")
        edge.width, edge.segments = bevel, 2
    return made


def rod(
    name: str,
    start: Sequence[float],
    end: Sequence[float],
    radius: float,
    material: Material,
    end_radius: float | None = None,
) -> Object:
    """A round bar between two points."""
    a, b = Vector(start), Vector(end)
    tip = radius if end_radius is None else end_radius
    length = (b - a).length
    made = lathe(name, [(1e-4, 0), (radius, 0), (tip, length), (1e-4, length)], material, 20)
    turn = (b - a).to_track_quat("Z", "Y").to_matrix().to_4x4()
    made.data.transform(Matrix.Translation(a) @ turn)
    return made


def bake(made: Object) -> Object:
    """Apply all modifiers and the object's own transform to its mesh."""
    bpy.context.view_layer.update()
    graph = bpy.context.evaluated_depsgraph_get()
    data = bpy.data.meshes.new_from_object(made.evaluated_get(graph))
    data.transform(made.matrix_world)
    made.modifiers.clear()
    made.data = data
    made.matrix_world = Matrix.Identity(4)
    return made


def combine(made: Object, other: Object, operation: str) -> None:
    """Cut, join or intersect with another body, which is used up."""
    bpy.context.view_layer.update()
    step = made.modifiers.new("combine", "BOOLEAN")
    step.object, step.operation, step.solver = other, operation, "EXACT"
    step.material_mode = "TRANSFER"
    bake(made)
    bpy.data.objects.remove(other)


def resharpen(made: Object, degrees: float) -> None:
    """Set hard edges again after a cut."""
    mesh = bmesh.new()
    mesh.from_mesh(made.data)
    mark_sharp(mesh, degrees)
    mesh.to_mesh(made.data)
    mesh.free()


def as_mesh(curve: Object) -> Object:
    """A mesh in the place of a curve or a text, which is used up."""
    bpy.context.view_layer.update()
    graph = bpy.context.evaluated_depsgraph_get()
    made = link(curve.name, bpy.data.meshes.new_from_object(curve.evaluated_get(graph)))
    made.matrix_world = curve.matrix_world
    bpy.data.objects.remove(curve)
    return made


def join(name: str, parts: Sequence[Object]) -> Object:
    """Melt several objects into one, keeping their materials."""
    parts = [bake(part if part.type == "MESH" else as_mesh(part)) for part in parts]
    with bpy.context.temp_override(
        active_object=parts[0], object=parts[0], selected_editable_objects=parts, selected_objects=parts
    ):
        bpy.ops.object.join()
    parts[0].name = name
    return parts[0]


def twin(name: str, original: Object) -> Object:
    """A second object with the same mesh."""
    return link(name, original.data)


def body(name: str, limbs: Sequence[tuple], material: Material, voxel: float, smooth: int = 5) -> Object:
    """Blend tapering limbs (start, end, start radius, end radius) into one skin."""
    mesh = bmesh.new()
    for start, end, first, last in limbs:
        a, b = Vector(start), Vector(end)
        count = max(2, int((b - a).length / (0.35 * min(first, last))) + 1)
        for i in range(count):
            u = i / (count - 1)
            bmesh.ops.create_icosphere(
                mesh, subdivisions=2, radius=first + (last - first) * u, matrix=Matrix.Translation(a.lerp(b, u))
            )
    made = solid(name, mesh, material)
    skin = made.modifiers.new("skin", "REMESH")
    skin.mode, skin.voxel_size, skin.use_smooth_shade = "VOXEL", voxel, True
    soft = made.modifiers.new("soft", "SMOOTH")
    soft.iterations, soft.factor = smooth, 0.5
    bake(made)
    for face in made.data.polygons:
        face.use_smooth = True
    return made


def cloth(name: str, size: float, height: float, material: Material, seed: float) -> Object:
    """A crumpled rag lying on the XY plane."""
    mesh = bmesh.new()
    bmesh.ops.create_grid(mesh, x_segments=60, y_segments=60, size=size)
    for vert in mesh.verts:
        fade = math.exp(-((vert.co.length / size) ** 4))
        near = vert.co * (1.5 / size) + Vector((seed, 1, 0))
        fold = height * abs(noise.noise(near)) + 0.3 * height * noise.noise(near * 3)
        vert.co.z = 0.2 + fade * fold
        vert.co.x *= 0.85 + 0.15 * noise.noise(near)
    return solid(name, mesh, material, 180)
