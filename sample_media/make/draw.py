"""Draws the frames of all shots, the most telling first; frames that exist are left alone.

python draw.py FRAMES            draw all that is missing
python draw.py FRAMES --list     only say how many frames each shot needs
python draw.py FRAMES --look hub-off:2.5 --look ...    draw single moments as PNG
"""

import argparse
import json
import time
from pathlib import Path

import bpy
from motion import Shot
from shots_refit import REFIT
from shots_strip import STRIP
from stage import Poses, Stage

SHOTS = (*STRIP, *REFIT)
BLUR_STEP = 0.08
"""How far before and after a frame the motion blur looks, in seconds."""

PASSES = ("keys", "coarse", "held", "half", "all")


def pose_key(poses: Poses) -> str:
    """Equal for two sets of poses that look the same."""
    return json.dumps(
        [[round(v, 3) for row in pose for v in row] if pose is not None else 0 for pose in poses.values()]
    )


def moving(shot: Shot, film: float) -> bool:
    """Whether anything moves at a moment of the film."""
    now = pose_key(shot.pose_at(film))
    return any(pose_key(shot.pose_at(film + shift)) != now for shift in (-BLUR_STEP, BLUR_STEP))


def sequence(shot: Shot) -> list[int]:
    """For every drawn tick of the shot the tick whose frame shows it, a still one where there is one."""
    alike: dict[str, list[int]] = {}
    for tick in range(round(shot.seconds * shot.rate)):
        alike.setdefault(pose_key(shot.pose_at(tick / shot.rate)), []).append(tick)
    shown: dict[int, int] = {}
    for ticks in alike.values():
        best = next((tick for tick in ticks if not moving(shot, tick / shot.rate)), ticks[0])
        shown |= dict.fromkeys(ticks, best)
    return [shown[tick] for tick in sorted(shown)]


def key_ticks(shot: Shot, order: list[int]) -> list[int]:
    """The frames that show the finished states."""
    return sorted({order[min(len(order) - 1, round(key * shot.rate))] for key in shot.keys})


def plan(shots: tuple[Shot, ...]) -> list[tuple[Shot, int]]:
    """All frames in the order in which they are drawn."""
    orders = {shot.name: sequence(shot) for shot in shots}
    ranked = sorted(shots, key=lambda shot: shot.rank)
    work: dict[tuple[str, int], Shot] = {}
    for name in PASSES:
        for shot in ranked:
            for tick in _pass(name, shot, orders[shot.name]):
                work.setdefault((shot.name, tick), shot)
    return [(shot, tick) for (_, tick), shot in work.items()]


def _pass(name: str, shot: Shot, order: list[int]) -> list[int]:
    frames = sorted(set(order))
    if name == "keys":
        return key_ticks(shot, order)[:1] if shot.rank == 1 else []
    if name == "coarse":
        return key_ticks(shot, order)
    if name == "held":
        return [tick for tick in frames if order.count(tick) > 2]
    return frames[::2] if name == "half" else frames


def draw(stage: Stage, shot: Shot, film: float, target: Path, fine: bool) -> None:
    """Draw one moment of a shot into a picture file."""
    before, now, after = (shot.pose_at(film + shift) for shift in (-BLUR_STEP, 0, BLUR_STEP))
    stage.set_poses(before, now, after, fine)
    bpy.context.scene.render.filepath = str(target)
    bpy.ops.render.render(write_still=True)


def draw_missing(frames: Path, shots: tuple[Shot, ...]) -> None:
    """Draw the frames that do not exist yet."""
    stage, current = Stage(), None
    for shot in shots:
        (frames / shot.name).mkdir(parents=True, exist_ok=True)
        facts = {
            "seconds": shot.seconds,
            "rate": shot.rate,
            "order": sequence(shot),
            "keys": shot.keys,
            "private": stage.private_boxes(shot),
        }
        (frames / shot.name / "sequence.json").write_text(json.dumps(facts), encoding="utf-8")
    fine = {shot.name: key_ticks(shot, sequence(shot)) for shot in shots}
    work = plan(shots)
    for number, (shot, tick) in enumerate(work, 1):
        target = frames / shot.name / f"{tick:04d}.jpg"
        if target.exists():
            continue
        if shot is not current:
            stage.set_shot(shot)
            current = shot
        begin = time.monotonic()
        draw(stage, shot, tick / shot.rate, target.with_suffix(".part.jpg"), tick in fine[shot.name])
        target.with_suffix(".part.jpg").replace(target)
        print(f"{number}/{len(work)} {shot.name} {tick} {time.monotonic() - begin:.1f} s", flush=True)


def look(frames: Path, wishes: list[str]) -> None:
    """Draw single moments, `shot:seconds`, as PNG for a check by eye."""
    stage, by_name = Stage(), {shot.name: shot for shot in SHOTS}
    bpy.context.scene.render.image_settings.file_format = "PNG"
    for wish in wishes:
        name, film = wish.split(":")
        stage.set_shot(by_name[name])
        draw(stage, by_name[name], float(film), frames / f"look-{name}-{film}.png", True)


def main() -> None:
    """Read the command line and draw."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("frames", type=Path, help="folder for the drawn frames, outside the repository")
    parser.add_argument("--list", action="store_true")
    parser.add_argument("--look", action="append", metavar="SHOT:SECONDS")
    given = parser.parse_args()
    if given.list:
        for shot in SHOTS:
            print(f"{shot.name:20} {shot.seconds:5.1f} s {len(set(sequence(shot))):4} frames")
        print(f"{'together':20} {sum(s.seconds for s in SHOTS):5.1f} s {len(plan(SHOTS)):4} frames")
    elif given.look:
        look(given.frames, given.look)
    else:
        draw_missing(given.frames, SHOTS)


if __name__ == "__main__":
    main()
