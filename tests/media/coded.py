"""Pictures in the signals of different cameras, made from an ordinary picture by the published formulas.

Nothing here is taken from the code under test; matrices are worked out from the primaries.
"""

from dataclasses import dataclass

import cv2
import numpy as np
from av.video.frame import VideoFrame
from numpy.typing import NDArray

from tests.media.filming import Image, numbered

Values = NDArray[np.float64]

UNTAGGED, BT709, BT601, BT2020 = 2, 1, 6, 9
PQ, HLG = 16, 18
LUMA = {BT709: (0.2126, 0.7152, 0.0722), BT601: (0.299, 0.587, 0.114), BT2020: (0.2627, 0.6780, 0.0593)}
"""Weights of red, green and blue: BT.709-6 item 3.2, BT.601-7 item 2.5.1, BT.2020-2 table 4."""

_WHITE_POINT = (0.3127, 0.3290)
_PRIMARIES = {
    BT709: ((0.640, 0.330), (0.300, 0.600), (0.150, 0.060)),
    BT2020: ((0.708, 0.292), (0.170, 0.797), (0.131, 0.046)),
}
"""Chromaticities: BT.709-6 items 1.3 and 1.4, BT.2020-2 table 3."""

_SEED = 7


@dataclass(frozen=True)
class Coding:
    """How a camera stores colours."""

    transfer: int = BT709
    matrix: int = BT709
    bits: int = 8
    full_range: bool = False

    @property
    def high_range(self) -> bool:
        """Whether this is high dynamic range."""
        return self.transfer in (PQ, HLG)


def patched(number: int, width: int, height: int) -> Image:
    """A numbered picture with random colours and a ramp of greys, the same every time."""
    image = numbered(number, width, height)
    colours = np.random.default_rng(_SEED).integers(20, 236, (3, 6, 3), dtype=np.uint8)
    top, bottom = height // 5, height * 5 // 6
    image[top:bottom] = cv2.resize(colours, (width, bottom - top), interpolation=cv2.INTER_NEAREST)
    image[bottom:] = np.linspace(0, 255, width, dtype=np.uint8)[None, :, None]
    return image


def coded(image: Image, coding: Coding) -> VideoFrame:
    """A picture, blue, green, red, as the camera stores it, in 4:2:0."""
    signal = image[..., ::-1] / 255
    if coding.high_range:
        light = 203 * signal**2.4 @ between(BT709, BT2020).T
        signal = hlg_signal(light) if coding.transfer == HLG else pq_signal(light)
    frame = VideoFrame(image.shape[1], image.shape[0], "yuv420p10le" if coding.bits > 8 else "yuv420p")
    for plane, values in zip(frame.planes, _planes(signal, coding), strict=True):
        whole = values.astype(np.uint16 if coding.bits > 8 else np.uint8)
        rows = np.zeros((plane.height, plane.line_size // whole.itemsize), whole.dtype)
        rows[:, : whole.shape[1]] = whole
        plane.update(rows.tobytes())
    return frame


def _planes(signal: Values, coding: Coding) -> list[Values]:
    """Luma and colour differences as whole numbers (BT.709-6 items 3.3 and 4.4; full range as in H.273, 8.3)."""
    weights = np.array(LUMA[coding.matrix])
    luma = signal @ weights
    differences = [(signal[..., i] - luma) / (2 * (1 - weights[i])) for i in (2, 0)]
    half = (signal.shape[1] + 1) // 2, (signal.shape[0] + 1) // 2
    small = [cv2.resize(plane, half, interpolation=cv2.INTER_AREA) for plane in differences]
    most, step = 2**coding.bits - 1, 2 ** (coding.bits - 8)
    if coding.full_range:
        return [np.rint(luma * most), *(np.rint(plane * most + 128 * step).clip(0, most) for plane in small)]
    return [np.rint((219 * luma + 16) * step), *(np.rint((224 * plane + 128) * step) for plane in small)]


def between(one: int, other: int) -> Values:
    """Turns light in one set of primaries into light in another (the way of SMPTE RP 177)."""
    matrix: Values = np.linalg.inv(_to_xyz(other)) @ _to_xyz(one)
    return matrix


def _to_xyz(primaries: int) -> Values:
    columns = np.array([[x / y, 1, (1 - x - y) / y] for x, y in _PRIMARIES[primaries]]).T
    x, y = _WHITE_POINT
    matrix: Values = columns * np.linalg.solve(columns, [x / y, 1, (1 - x - y) / y])
    return matrix


def hlg_signal(light: Values) -> Values:
    """Inverse OOTF and OETF of BT.2100-2, table 5, for a display of 1000 cd/m²."""
    luminance = np.maximum(light @ np.array(LUMA[BT2020]), 1e-9)[..., None] / 1000
    scene = np.maximum(light, 0) / 1000 * luminance ** (1 / 1.2 - 1)
    a, b, c = 0.17883277, 0.28466892, 0.55991073
    signal: Values = np.where(scene <= 1 / 12, np.sqrt(3 * scene), a * np.log(np.maximum(12 * scene - b, 1e-9)) + c)
    return signal


def pq_signal(light: Values) -> Values:
    """Inverse EOTF of BT.2100-2, table 4."""
    power = (np.maximum(light, 0) / 10_000) ** (2610 / 16384)
    signal: Values = ((3424 / 4096 + 2413 / 128 * power) / (1 + 2392 / 128 * power)) ** (2523 / 32)
    return signal
