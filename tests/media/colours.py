"""A recording of saturated patches in BT.709, without colour tags, converted by the published formulas."""

from fractions import Fraction
from pathlib import Path

import av
import numpy as np
from av.video.frame import VideoFrame

PATCHES = ((40, 40, 200), (40, 180, 40), (200, 60, 40), (60, 200, 220), (128, 128, 128))
"""Blue, green, red."""

_RED, _GREEN, _BLUE = 0.2126, 0.7152, 0.0722


def stored(patch: tuple[int, int, int]) -> tuple[int, int, int]:
    """Luma and both colour differences, limited range, of a patch (ITU-R BT.709-6, items 3.2 to 3.4)."""
    blue, green, red = (value / 255 for value in patch)
    luma = _RED * red + _GREEN * green + _BLUE * blue
    blue_difference, red_difference = (blue - luma) / (2 * (1 - _BLUE)), (red - luma) / (2 * (1 - _RED))
    return round(219 * luma + 16), round(224 * blue_difference + 128), round(224 * red_difference + 128)


def film_bt709(path: Path) -> Path:
    """One second of the patches side by side, 1280 by 720."""
    width = 1280 // len(PATCHES)
    columns = np.repeat(np.array([stored(patch) for patch in PATCHES], dtype=np.uint8), width, axis=0)
    planes = [np.tile(columns[:, 0], (720, 1)), *(np.tile(columns[::2, i], (360, 1)) for i in (1, 2))]
    frame = VideoFrame.from_ndarray(np.concatenate([plane.reshape(-1, 1280) for plane in planes]), format="yuv420p")
    with av.open(str(path), "w") as container:
        stream = container.add_stream("libx264", rate=25, options={"crf": "10", "preset": "ultrafast"})
        stream.codec_context.width, stream.codec_context.height = 1280, 720
        for i in range(3):
            frame.pts, frame.time_base = i, Fraction(1, 25)
            container.mux(stream.encode(frame))
        container.mux(stream.encode(None))
    return path
