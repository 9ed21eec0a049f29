"""Small drawn pictures and a two-second clip for the sample edition."""

from fractions import Fraction
from pathlib import Path

import av
import cv2
import numpy as np
from numpy.typing import NDArray

Canvas = NDArray[np.uint8]

STILLS: dict[str, tuple[int, int, tuple[int, int, int]]] = {
    "chock.jpg": (640, 360, (96, 110, 120)),
    "dust-cap.jpg": (640, 360, (120, 104, 88)),
    "keeper-found.jpg": (480, 360, (92, 120, 104)),
    "keeper-off.jpg": (640, 360, (104, 96, 124)),
    "tall.jpg": (270, 480, (88, 112, 112)),
    "refit.jpg": (640, 360, (112, 112, 84)),
}
"""File name, width, height and colour."""


def write_media(media: Path) -> None:
    """Write every still and the clip ``dust-cap.mp4``."""
    media.mkdir(parents=True, exist_ok=True)
    for name, (width, height, colour) in STILLS.items():
        cv2.imwrite(str(media / name), draw_hub(width, height, colour, 0.0))
    write_clip(media / "dust-cap.mp4", seconds=2)


def draw_hub(width: int, height: int, colour: tuple[int, int, int], turn: float) -> Canvas:
    """A wheel hub with four studs, turned by an angle in radians, and two numbered marks."""
    canvas: Canvas = np.full((height, width, 3), colour, dtype=np.uint8)
    centre, radius = (width // 2, height // 2), min(width, height) // 3
    cv2.circle(canvas, centre, radius, (190, 195, 200), -1, cv2.LINE_AA)
    cv2.circle(canvas, centre, radius // 3, (120, 125, 130), -1, cv2.LINE_AA)
    for quarter in range(4):
        angle = turn + quarter * np.pi / 2 + np.pi / 4
        stud = (int(centre[0] + radius * 0.7 * np.cos(angle)), int(centre[1] + radius * 0.7 * np.sin(angle)))
        cv2.circle(canvas, stud, radius // 10, (50, 55, 60), -1, cv2.LINE_AA)
    for number, place in enumerate(((width // 5, height // 5), (width * 4 // 5, height * 3 // 4)), start=1):
        cv2.circle(canvas, place, 18, (255, 255, 255), -1, cv2.LINE_AA)
        cv2.putText(canvas, str(number), (place[0] - 8, place[1] + 9), 0, 0.8, (0, 0, 0), 2, cv2.LINE_AA)
    return canvas


def write_clip(path: Path, *, seconds: int, rate: int = 15) -> None:
    """A turning hub, H.264 in yuv420p, playable while it loads."""
    with av.open(str(path), "w", options={"movflags": "faststart"}) as container:
        stream = container.add_stream("libx264", rate=rate)
        stream.width, stream.height, stream.pix_fmt = 320, 180, "yuv420p"
        stream.time_base = Fraction(1, rate)
        for index in range(seconds * rate):
            picture = draw_hub(320, 180, (120, 104, 88), index / rate)
            container.mux(stream.encode(av.VideoFrame.from_ndarray(picture, format="bgr24")))
        container.mux(stream.encode())
