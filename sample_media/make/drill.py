"""Draws the pictures and the clip of the drill procedure: a pillar drill whose belt is renewed.

Everything is invented. The same files come out each time.
"""

import sys
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from multiprocessing import Pool
from pathlib import Path

import av
import cv2
from drill_belt import Belt, End, length, lifted, painted, slack
from drill_canvas import Canvas, Image, Solid, View
from drill_cover import closed_cover, lugs, open_cover
from drill_parts import IN, MOTOR, floor_shadow, groove, head, lever, motor, pulley, tray
from drill_signs import arrow, dashes, inset, plug_picture

STILL, FRAME = (1280, 720), (960, 540)
RATE, SECONDS = 25, 10
TIGHT, LOOSE = 0.0, 38.0
"""Where the tension lever points, in degrees."""
STANDS = ((0.0, 0.3), (0.3, 0.8), (2.6, 2.9), (2.9, 3.2), (5.5, 5.8), (5.8, 6.0), (9.0, 10.0))
"""Seconds of the clip between which nothing moves."""
ABOVE = 116.0
"""Height at which the belt is free of the pulleys."""


@dataclass(frozen=True)
class Moment:
    """How the drill stands at one moment of the clip."""

    pushed: float
    belt: Belt | None
    signs: tuple[Solid, ...] = ()


def near_end(step: int) -> End:
    """The belt's end on a step of the spindle's pulley."""
    return groove(step, 0.0, largest_on_top=False)


def far_end(step: int, pushed: float) -> End:
    """The belt's end on a step of the motor's pulley."""
    return groove(step, MOTOR - pushed, largest_on_top=True)


LENGTH = length(Belt(near_end(1), far_end(1, 0)))


def opened(pushed: float, turn: float, belt: Belt | None) -> list[Solid]:
    """The open housing; ``pushed`` is how far the motor stands towards the spindle."""
    shaft = MOTOR - pushed
    fixed = [*head(), *tray(), *lugs(), *open_cover(), *lever(turn), floor_shadow(shaft)]
    moving = [*motor(shaft), *pulley(0, largest_on_top=False), *pulley(shaft, largest_on_top=True)]
    return [*fixed, *moving, *([painted(belt)] if belt else [])]


def drawn(solids: list[Solid], size: tuple[int, int], view: View | None = None) -> Image:
    """A picture of a scene."""
    canvas = Canvas(size, view or View())
    canvas.paint(solids)
    return canvas.finished()


def stills() -> dict[str, Image]:
    """The pictures by name."""
    shut = [*head(), *tray(), *lever(TIGHT), *closed_cover()]
    worn = Belt(near_end(1), far_end(1, 0), worn=True)
    loose, laid = (slack(LENGTH, near_end(1), far_end(1, IN), worn=worn_out) for worn_out in (True, False))
    pictures = {
        "plug": plug_picture(STILL),
        "cover-closed": drawn([*shut, *motor(MOTOR)], STILL, View(62)),
        "cover-shut": drawn([*shut, *motor(MOTOR)], STILL),
        "cover-open": drawn(opened(0, TIGHT, worn), STILL),
        "lever-released": drawn(opened(IN, LOOSE, loose), STILL),
        "belt-off": drawn(opened(IN, LOOSE, None), STILL),
        "new-belt": drawn(opened(IN, LOOSE, laid), STILL, View(98, -42, 500)),
        "tension": tension(),
    }
    inset(pictures["cover-closed"], plug_picture((320, 180)), (28, 512))
    return pictures


def tension() -> Image:
    """The front run of the belt pushed in half way between the pulleys, and where it ran before."""
    belt = Belt(near_end(1), far_end(1, 0), press=11)
    rest = Belt(near_end(1), far_end(1, 0)).path[-60:]
    start, middle, end = rest[-4], rest[30], rest[4]
    signs = [
        dashes((start[0], start[1] + 5, start[2] + 4), (end[0], end[1] + 5, end[2] + 4)),
        arrow((middle[0], middle[1] + 58, middle[2]), (middle[0], middle[1] - 3, middle[2])),
    ]
    return drawn([*opened(0, TIGHT, belt), *signs], STILL, View(100, -24, 400))


def moment(time: float) -> Moment:
    """The clip: motor in from 0.8 s, belt off the motor's pulley from 3.2 s, off the spindle's from 6 s."""
    pushed = IN * _ease(time, 0.8, 2.6)
    near, far = near_end(1), far_end(1, pushed)
    held = slack(LENGTH, near, far, worn=True)
    up, over = _ease(time, 3.2, 4.4), _ease(time, 4.4, 5.5)
    near_up, away = _ease(time, 6.0, 7.2), _ease(time, 7.2, 9.0)
    if up == 0 or away == 1:
        return Moment(pushed, None if away else held, _signs(time))
    far = replace(far, z=far.z + (ABOVE - far.z) * up, x=far.x - 50 * over - 480 * away, y=60 * away)
    near = replace(near, z=near.z + (ABOVE - near.z) * near_up, radius=near.radius + 18 * near_up)
    near = replace(near, x=-480 * away, y=60 * away)
    return Moment(pushed, lifted(LENGTH, near, far, held.bow * (1 - up)), _signs(time))


def _signs(time: float) -> tuple[Solid, ...]:
    """The arrow that tells what moves next."""
    if 0.3 < time < 2.6:
        return (arrow((272, 46, 30), (222, 46, 30)),)
    if 2.9 < time < 4.4:
        return (arrow((120, 66, 30), (120, 66, 84)),)
    if 5.8 < time < 7.2:
        return (arrow((-62, 10, 60), (-62, 10, 114)),)
    return ()


def _ease(time: float, start: float, end: float) -> float:
    """From 0 to 1 between two times, slow at both."""
    share = min(max((time - start) / (end - start), 0.0), 1.0)
    return share * share * (3 - 2 * share)


def frame(index: int) -> Image:
    """One frame of the clip."""
    now = moment(index / RATE)
    return drawn([*opened(now.pushed, LOOSE, now.belt), *now.signs], FRAME)


def repeats(index: int) -> bool:
    """True for a frame that shows what the one before it shows."""
    return any(start < (index - 1) / RATE and index / RATE <= end for start, end in STANDS)


def write_film(path: Path) -> None:
    """Draw the clip and encode it, without sound."""
    fresh = [index for index in range(RATE * SECONDS) if not repeats(index)]
    with Pool(2) as pool, av.open(str(path), "w") as container:
        stream = container.add_stream("libx264", rate=RATE, options={"crf": "24", "preset": "slow", "threads": "1"})
        stream.width, stream.height, stream.pix_fmt = *FRAME, "yuv420p"
        for picture, (start, end) in zip(pool.imap(frame, fresh), pairwise([*fresh, RATE * SECONDS]), strict=True):
            for index in range(start, end):
                made = av.VideoFrame.from_ndarray(picture, format="bgr24")
                made.pts, made.time_base = index, Fraction(1, RATE)
                container.mux(stream.encode(made))
        container.mux(stream.encode())


def main() -> None:
    """Draw into the folder that is named: pictures/ and recordings/."""
    target = Path(sys.argv[1])
    for name, picture in stills().items():
        cv2.imwrite(str(target / "pictures" / f"{name}.jpg"), picture, [cv2.IMWRITE_JPEG_QUALITY, 88])
    if "--stills" not in sys.argv:
        write_film(target / "recordings" / "belt.mp4")


if __name__ == "__main__":
    main()
