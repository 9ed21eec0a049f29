"""The whole scene, built once; a shot shows a part of it and moves it."""

import bpy
from bpy_extras.object_utils import world_to_camera_view
from gloves import make_gloves
from hub_parts import make_hub_parts
from materials import make_materials
from mathutils import Matrix, Vector
from motion import Camera, Shot
from places import make_bench, make_floor, make_hall_light, make_lights, make_tray
from shapes import Object
from tools import make_tools, make_wheel_nuts
from trailer import make_car, make_trailer, make_wheel

WIDTH, HEIGHT = 992, 558
MOVING_PERCENT, MOVING_SAMPLES = 68, 3
"""What moves is blurred anyway: it is drawn smaller and with fewer samples."""

Poses = dict[str, Matrix | None]


class Stage:
    """All objects of the scene, and the current shot."""

    def __init__(self) -> None:
        bpy.ops.wm.read_factory_settings(use_empty=True)
        m = make_materials()
        self.movable: dict[str, Object] = make_hub_parts(m) | make_gloves(m) | make_tools(m) | make_wheel_nuts(m)
        self.movable |= {
            "wheel": make_wheel(m),
            "tray": make_tray(m),
            "trailer": make_trailer(m),
            "tow car": make_car(m),
        }
        self.standing = {"floor": make_floor(m), "bench": make_bench(m)}
        self.lights = {
            "floor": [*make_lights(1.0, (0, 0, 33)), make_hall_light()],
            "wide": [*make_lights(5.0, (0, 0, 33)), make_hall_light()],
            "bench": make_lights(1.0, (0, 0, 6), 0.72),
        }
        self.camera = _make_camera()
        self.samples = 4
        _set_world()
        _set_renderer()

    def set_shot(self, shot: Shot) -> None:
        """Show the place and the light of a shot, and point its camera."""
        for place, things in self.standing.items():
            for thing in things:
                thing.hide_render = place != shot.place
        light = "wide" if shot.camera.lens < 36 and shot.place == "floor" else shot.place
        for place, lamps in self.lights.items():
            for lamp in lamps:
                lamp.hide_render = place != light
        for name, thing in self.movable.items():
            _show(thing, name in shot.poses)
        self.samples = shot.samples
        self._point(shot.camera)

    def _point(self, camera: Camera) -> None:
        look = Vector(camera.target) - Vector(camera.place)
        self.camera.location = camera.place
        self.camera.rotation_euler = look.to_track_quat("-Z", "Y").to_euler()
        self.camera.data.lens = camera.lens
        self.camera.data.dof.focus_distance = look.length
        self.camera.data.dof.aperture_fstop = camera.blur

    def set_poses(self, before: Poses, now: Poses, after: Poses, fine: bool) -> None:
        """Put everything in its place; what moves gets its way before and after for the motion blur.

        A fine picture has full size even where things move.
        """
        moving = before != now or after != now
        render = bpy.context.scene.render
        render.use_motion_blur = moving
        render.resolution_percentage = 100 if fine or not moving else MOVING_PERCENT
        bpy.context.scene.cycles.samples = self.samples if fine or not moving else MOVING_SAMPLES
        for name, pose in now.items():
            thing = self.movable[name]
            _show(thing, pose is not None)
            thing.animation_data_clear()
            if pose is None:
                continue
            thing.rotation_mode = "QUATERNION"
            way = [before[name] or pose, pose, after[name] or pose]
            if way[0] == way[1] == way[2]:
                thing.location, thing.rotation_quaternion, thing.scale = pose.decompose()
            else:
                _key_way(thing, way)
        bpy.context.scene.frame_set(1)

    def private_boxes(self, shot: Shot) -> dict[str, list[float]]:
        """Where the number plate and the poster lie in the drawn frames, as fractions, if they are in sight."""
        self.set_shot(shot)
        boxes: dict[str, list[float]] = {}
        for film in (0.0, shot.seconds):
            self.set_poses(*[shot.pose_at(film)] * 3, True)
            bpy.context.view_layer.update()
            for name, thing in (("number plate", bpy.data.objects["plate"]), ("face", bpy.data.objects["poster"])):
                if not thing.hide_render and self._in_sight(thing):
                    boxes[name] = _around(boxes.get(name), self._box(thing))
        return boxes

    def _box(self, thing: Object) -> list[float]:
        """Left, top, right and bottom of a thing in the picture."""
        scene, corners = bpy.context.scene, [thing.matrix_world @ Vector(corner) for corner in thing.bound_box]
        seen = [world_to_camera_view(scene, self.camera, corner) for corner in corners]
        x, y = [point.x for point in seen], [1 - point.y for point in seen]
        return [round(v, 3) for v in (min(x), min(y), max(x), max(y))]

    def _in_sight(self, thing: Object) -> bool:
        """Whether the thing's front looks at the camera and lies in the picture."""
        front = thing.matrix_world.to_3x3() @ Vector((0, 0, 1))
        left, top, right, bottom = self._box(thing)
        facing = (self.camera.location - thing.matrix_world.translation) @ front > 0
        return facing and left < 0.98 and right > 0.03 and top < 0.97 and bottom > 0.03


def _around(first: list[float] | None, second: list[float]) -> list[float]:
    """The box around two boxes."""
    a = first or second
    return [min(a[0], second[0]), min(a[1], second[1]), max(a[2], second[2]), max(a[3], second[3])]


def _show(thing: Object, seen: bool) -> None:
    for part in (thing, *thing.children_recursive):
        part.hide_render = not seen


def _key_way(thing: Object, way: list[Matrix]) -> None:
    last = None
    for frame, pose in enumerate(way):
        place, turn, size = pose.decompose()
        if last is not None and turn.dot(last) < 0:
            turn.negate()
        last = turn
        thing.location, thing.rotation_quaternion, thing.scale = place, turn, size
        for path in ("location", "rotation_quaternion", "scale"):
            thing.keyframe_insert(path, frame=frame)


def _make_camera() -> Object:
    data = bpy.data.cameras.new("camera")
    data.dof.use_dof, data.clip_end = True, 5000
    camera = bpy.data.objects.new("camera", data)
    bpy.context.scene.collection.objects.link(camera)
    bpy.context.scene.camera = camera
    return camera


def _set_world() -> None:
    world = bpy.data.worlds.new("world")
    bpy.context.scene.world = world
    world.use_nodes = True
    sky = world.node_tree.nodes.get("Background") or world.node_tree.nodes.new("ShaderNodeBackground")
    sky.inputs[0].default_value = (0.6, 0.63, 0.66, 1)
    sky.inputs[1].default_value = 0.55


def _set_renderer() -> None:
    scene = bpy.context.scene
    scene.render.engine = "CYCLES"
    scene.render.threads_mode, scene.render.threads = "FIXED", 2
    scene.render.use_persistent_data = True
    scene.render.resolution_x, scene.render.resolution_y = WIDTH, HEIGHT
    scene.render.image_settings.file_format, scene.render.image_settings.quality = "JPEG", 95
    scene.render.motion_blur_shutter = 0.6
    scene.view_settings.view_transform, scene.view_settings.exposure = "Standard", 0.15
    cycles = scene.cycles
    cycles.device, cycles.use_adaptive_sampling = "CPU", False
    cycles.max_bounces, cycles.diffuse_bounces, cycles.glossy_bounces, cycles.transmission_bounces = 3, 2, 2, 0
    cycles.caustics_reflective = cycles.caustics_refractive = False
    cycles.use_denoising, cycles.denoiser = True, "OPENIMAGEDENOISE"
    cycles.denoising_quality, cycles.denoising_prefilter = "FAST", "FAST"
