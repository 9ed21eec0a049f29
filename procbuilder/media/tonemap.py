"""Pictures in high dynamic range brought to the range and the colours of an ordinary screen.

Light is reckoned on a display of 1000 cd/m², as ITU-R BT.2100-2 defines it for both of its systems. Of that, white
paper has 203 cd/m² (Report ITU-R BT.2408), which becomes the white of an ordinary screen; what is brighter, such as a
lamp or bare metal in the sun, is pressed together at the top instead of being cut off.
"""

import tempfile
from fractions import Fraction
from functools import lru_cache
from pathlib import Path
from threading import Lock

import numpy as np
from av.filter import Graph
from av.video.format import VideoFormat
from av.video.frame import VideoFrame
from numpy.typing import NDArray

Light = NDArray[np.float64]
"""Any shape whose last axis is red, green, blue."""

PQ, HLG = 16, 18
"""Transfer characteristics in ITU-T H.273, table 3: perceptual quantiser, hybrid log-gamma."""

SYSTEMS = {PQ: "PQ", HLG: "HLG"}
"""The two systems of high dynamic range, with their names."""

WHITE, _PEAK = 203.0, 1000.0
"""Luminance of white paper and of the display, in cd/m²."""

_KNEE = 0.9
"""Signal above which bright parts are pressed together."""

_STEPS = 65
"""Points of the lookup table on each axis."""

DEEP = "gbrp16le"
"""Format in which pictures pass through the table, with 16 bits a colour."""

_TURN = Lock()
"""One picture at a time passes through the table."""

_HLG_GAMMA = 1.2
_LUMINANCE = np.array([0.2627, 0.6780, 0.0593])
"""Of red, green and blue in BT.2020-2, table 4."""

_TO_BT709 = np.array([[1.6605, -0.5876, -0.0728], [-0.1246, 1.1329, -0.0083], [-0.0182, -0.1006, 1.1187]])
"""Light in BT.2020 primaries to light in BT.709 primaries (ITU-R BT.2407-0, 2.2)."""


def hlg_light(signal: Light) -> Light:
    """Light of a display, in cd/m² and BT.2020 primaries, for a signal from 0 to 1 (BT.2100-2, table 5)."""
    scene = hlg_scene(signal)
    luminance = np.maximum(scene @ _LUMINANCE, 1e-9)[..., None]
    light: Light = _PEAK * luminance ** (_HLG_GAMMA - 1) * scene
    return light


def hlg_scene(signal: Light) -> Light:
    """Light before the camera, from 0 to 1: the inverse OETF of BT.2100-2, table 5."""
    a, b, c = 0.17883277, 0.28466892, 0.55991073
    scene: Light = np.where(signal <= 0.5, signal**2 / 3, (np.exp((signal - c) / a) + b) / 12)
    return scene


def pq_light(signal: Light) -> Light:
    """Light of a display, in cd/m² and BT.2020 primaries, for a signal from 0 to 1 (BT.2100-2, table 4)."""
    m1, m2, c1, c2, c3 = 2610 / 16384, 2523 / 4096 * 128, 3424 / 4096, 2413 / 4096 * 32, 2392 / 4096 * 32
    root = signal ** (1 / m2)
    light: Light = 10_000 * (np.maximum(root - c1, 0) / (c2 - c3 * root)) ** (1 / m1)
    return light


def ordinary(light: Light) -> Light:
    """Signal from 0 to 1 of an ordinary screen (BT.709 primaries, BT.1886 display) for light in cd/m².

    The signal is the one with which the screen shows the same light, white paper at its white. Colours that it
    cannot show are cut off at its edge; bright ones keep their hue.
    """
    signal = np.maximum(light @ _TO_BT709.T / WHITE, 0) ** (1 / 2.4)
    brightest = np.maximum(signal.max(axis=-1, keepdims=True), _KNEE)
    pressed = _KNEE + (1 - _KNEE) * (1 - np.exp((_KNEE - brightest) / (1 - _KNEE)))
    shown: Light = signal * pressed / brightest
    return shown


def ordinary_signal(signal: Light, transfer: int) -> Light:
    """What becomes of a signal of high dynamic range, from 0 to 1, of this system."""
    return ordinary((hlg_light if transfer == HLG else pq_light)(signal))


def tone_mapped(frame: VideoFrame, transfer: int) -> VideoFrame:
    """A picture of high dynamic range in the ``DEEP`` format, in the signals of an ordinary screen."""
    graph = _graph(transfer, frame.width, frame.height)
    with _TURN:
        graph.vpush(frame)
        return graph.vpull()


@lru_cache(maxsize=4)
def _graph(transfer: int, width: int, height: int) -> Graph:
    """Looks colours up in a table, which takes a hundredth of the time of the formulas."""
    graph = Graph()
    with tempfile.TemporaryDirectory() as folder:
        table = Path(folder) / "table.cube"
        table.write_text(_table(transfer), encoding="ascii")
        source = graph.add_buffer(width=width, height=height, format=VideoFormat(DEEP), time_base=Fraction(1, 1000))
        lookup = graph.add("lut3d", file=str(table), interp="tetrahedral")
        graph.link_nodes(source, lookup, graph.add("buffersink")).configure()
    return graph


@lru_cache(maxsize=2)
def _table(transfer: int) -> str:
    """The table as text: three values from 0 to 1 a line, red changes fastest."""
    axis = np.linspace(0, 1, _STEPS)
    blue, green, red = np.meshgrid(axis, axis, axis, indexing="ij")
    values = ordinary_signal(np.stack([red, green, blue], axis=-1), transfer)
    return f"LUT_3D_SIZE {_STEPS}\n" + "%.6f %.6f %.6f\n" * _STEPS**3 % tuple(values.ravel().tolist())
