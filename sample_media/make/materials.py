"""Surfaces: metal, rubber, paint, grease, cloth, all built from noise, no picture files."""

from dataclasses import dataclass

import bpy

Colour = tuple[float, float, float]


@dataclass(frozen=True)
class Look:
    """How one surface answers light."""

    colour: Colour
    metal: float = 0.0
    rough: float = 0.5
    scale: float = 0.0
    """Size of the stains; 0 for none."""
    stain: Colour | None = None
    bump: float = 0.0
    bump_scale: float = 6.0
    coat: float = 0.0


LOOKS = {
    "steel": Look((0.55, 0.55, 0.56), 1, 0.38, 3.0, (0.36, 0.35, 0.34)),
    "bright": Look((0.74, 0.74, 0.76), 1, 0.18, 5.0, (0.62, 0.62, 0.64)),
    "cap": Look((0.72, 0.71, 0.68), 1, 0.34, 1.2, (0.55, 0.53, 0.48), 0.1, 3),
    "shadow": Look((0.035, 0.033, 0.03), 0.4, 0.6),
    "zinc": Look((0.74, 0.62, 0.36), 1, 0.32, 3.0, (0.58, 0.52, 0.40)),
    "washer": Look((0.80, 0.80, 0.82), 1, 0.32, 4.0, (0.60, 0.58, 0.54)),
    "cast": Look((0.10, 0.10, 0.10), 0.2, 0.5, 0.8, (0.15, 0.10, 0.07), 0.35, 9),
    "cage": Look((0.42, 0.30, 0.15), 0.9, 0.36),
    "grease": Look((0.36, 0.15, 0.03), 0, 0.2, 3.0, (0.22, 0.08, 0.02), 0.9, 3, 0.6),
    "old grease": Look((0.05, 0.035, 0.02), 0, 0.3, 3.0, (0.09, 0.05, 0.02), 0.8, 4, 0.3),
    "blue race": Look((0.10, 0.16, 0.52), 1, 0.22, 1.6, (0.42, 0.25, 0.16)),
    "rubber": Look((0.018, 0.018, 0.019), 0, 0.62, 1.0, (0.04, 0.038, 0.035), 0.25, 4),
    "seal": Look((0.16, 0.045, 0.03), 0, 0.5, 2.0, (0.10, 0.03, 0.02)),
    "coating": Look((0.022, 0.024, 0.028), 0, 0.42, 0.8, (0.06, 0.055, 0.05), 0.5, 1.1),
    "knit": Look((0.30, 0.33, 0.36), 0, 0.95, 1.0, (0.17, 0.17, 0.17), 0.9, 9),
    "hem": Look((0.55, 0.30, 0.04), 0, 0.9, 0.0, None, 0.6, 8),
    "sleeve": Look((0.04, 0.07, 0.14), 0, 0.9, 0.6, (0.06, 0.085, 0.15), 0.6, 3),
    "wood": Look((0.30, 0.185, 0.09), 0, 0.62, 0.22, (0.12, 0.075, 0.04), 0.25, 2),
    "block": Look((0.52, 0.36, 0.19), 0, 0.7, 0.5, (0.38, 0.24, 0.11), 0.2, 3),
    "wall": Look((0.42, 0.45, 0.45), 0, 0.8, 0.02, (0.33, 0.35, 0.36), 0.1, 0.3),
    "floor": Look((0.30, 0.295, 0.28), 0, 0.7, 0.05, (0.24, 0.235, 0.225), 0.15, 0.6),
    "blue paint": Look((0.03, 0.10, 0.19), 0.2, 0.42, 1.5, (0.05, 0.075, 0.10), 0.15),
    "red paint": Look((0.45, 0.03, 0.025), 0, 0.45, 0.8, (0.28, 0.03, 0.02), 0.1),
    "green paint": Look((0.04, 0.20, 0.09), 0, 0.45, 0.5, (0.06, 0.14, 0.07), 0.1),
    "car paint": Look((0.30, 0.32, 0.34), 0.5, 0.3, coat=0.6),
    "wheel paint": Look((0.62, 0.62, 0.60), 0.3, 0.4, 0.25, (0.42, 0.38, 0.33), 0.1),
    "panel": Look((0.44, 0.46, 0.47), 0.85, 0.45, 0.1, (0.33, 0.34, 0.34)),
    "galvanised": Look((0.50, 0.51, 0.52), 0.85, 0.48, 1.2, (0.38, 0.39, 0.40)),
    "tray": Look((0.33, 0.34, 0.35), 0.8, 0.4, 0.6, (0.22, 0.21, 0.2)),
    "rag": Look((0.42, 0.12, 0.09), 0, 0.95, 0.35, (0.16, 0.06, 0.05), 0.5, 5),
    "clean rag": Look((0.30, 0.36, 0.42), 0, 0.95, 0.12, (0.22, 0.28, 0.34), 0.5, 5),
    "black": Look((0.012, 0.012, 0.013), 0, 0.5),
    "glass": Look((0.02, 0.025, 0.03), 0, 0.08, coat=0.8),
    "yellow": Look((0.62, 0.42, 0.03), 0, 0.5, 0.6, (0.42, 0.28, 0.04)),
    "brass": Look((0.72, 0.52, 0.20), 1, 0.32, 2.0, (0.5, 0.34, 0.12)),
    "white": Look((0.66, 0.66, 0.62), 0, 0.7),
    "paper": Look((0.46, 0.43, 0.36), 0, 0.8, 0.3, (0.36, 0.33, 0.27)),
    "oil": Look((0.10, 0.085, 0.07), 0, 0.28),
    "lamp": Look((0.55, 0.02, 0.015), 0, 0.25, coat=0.5),
    "skin": Look((0.62, 0.38, 0.26), 0, 0.7),
    "hair": Look((0.10, 0.055, 0.03), 0, 0.8),
    "violet": Look((0.26, 0.10, 0.36), 0, 0.6),
}


def make_materials() -> dict[str, bpy.types.Material]:
    """All surfaces by name."""
    return {name: _make(name, look) for name, look in LOOKS.items()}


def _make(name: str, look: Look) -> bpy.types.Material:
    material = bpy.data.materials.new(name)
    material.use_nodes = True
    tree = material.node_tree
    shader = next(node for node in tree.nodes if node.type == "BSDF_PRINCIPLED")
    shader.inputs["Base Color"].default_value = (*look.colour, 1)
    shader.inputs["Metallic"].default_value = look.metal
    shader.inputs["Roughness"].default_value = look.rough
    shader.inputs["Coat Weight"].default_value = look.coat
    place = tree.nodes.new("ShaderNodeTexCoord").outputs["Object"]
    if look.stain:
        _stain(tree, shader, place, look)
    if look.bump:
        _bump(tree, shader, place, look)
    return material


def _noise(tree: bpy.types.NodeTree, place: bpy.types.NodeSocket, scale: float) -> bpy.types.NodeSocket:
    node = tree.nodes.new("ShaderNodeTexNoise")
    node.inputs["Scale"].default_value = scale
    node.inputs["Detail"].default_value = 5
    tree.links.new(place, node.inputs["Vector"])
    return node.outputs[0]


def _stain(tree: bpy.types.NodeTree, shader: bpy.types.Node, place: bpy.types.NodeSocket, look: Look) -> None:
    ramp = tree.nodes.new("ShaderNodeValToRGB")
    first, last = ramp.color_ramp.elements
    first.position, last.position = 0.42, 0.66
    first.color, last.color = (*look.colour, 1), (*look.stain, 1)
    tree.links.new(_noise(tree, place, look.scale), ramp.inputs[0])
    tree.links.new(ramp.outputs[0], shader.inputs["Base Color"])


def _bump(tree: bpy.types.NodeTree, shader: bpy.types.Node, place: bpy.types.NodeSocket, look: Look) -> None:
    node = tree.nodes.new("ShaderNodeBump")
    node.inputs["Strength"].default_value = look.bump
    node.inputs["Distance"].default_value = 0.15
    tree.links.new(_noise(tree, place, look.bump_scale), node.inputs["Height"])
    tree.links.new(node.outputs[0], shader.inputs["Normal"])
