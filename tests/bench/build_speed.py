"""How fast a build is, as a ratio to bare ffmpeg runs beside it, and how much memory it takes.

    python -m tests.bench.build_speed FOLDER [--seconds 600] [--only short|long]

FOLDER keeps the recordings (about 1.3 GB for ten minutes, and the same six times in a row, an hour) for the next run.
CPU seconds are compared, since they hold on a busy machine too. The reference is the ffmpeg that the wheel
``imageio-ffmpeg`` carries.

Each part of a build is timed and its decoded pictures are counted by ``tests/bench/parts.py``. The hour has the same
steps, spread over it: each shows what it shows in the short film. What must grow with the length of a recording, its
hash, its packets, its key frames and its sound, is measured apart and taken off before the two are compared.
"""

import argparse
import shutil
import sys
from collections.abc import Sequence
from pathlib import Path

from rich.console import Console
from rich.table import Table

from tests.bench.cost import Cost, cost
from tests.bench.film import make, repeated
from tests.bench.parts import GROWING, Part, told_apart

STEPS, STEP_SECONDS = 20, 20
TIMES = 6
"""How often the film follows on itself in the long one."""
_CUT = "-vf scale=1280:720 -c:v libx264 -preset veryfast -crf 23 -pix_fmt yuv420p -c:a aac -ac 1 -b:a 96k"

Row = tuple[str, float, str, float]
"""What was measured, its value, its unit, and the value that it should not pass."""

Parts = dict[str, Part]


def main() -> None:
    """Measure and print the tables; exit 1 when a value passes its limit."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--seconds", type=int, default=600)
    parser.add_argument("--only", choices=("short", "long"), help="one of the two films alone")
    request = parser.parse_args()
    film = make(request.folder / f"phone-{request.seconds}.mp4", request.seconds)
    starts = [index * request.seconds // STEPS for index in range(STEPS)]
    length = min(STEP_SECONDS, request.seconds // STEPS)
    rows: list[Row] = []
    if request.only != "long":
        rows += short(film, request.folder / "procedure", starts, length)
    if request.only != "short":
        rows += long(film, request.seconds, request.folder / "long", starts, length)
    _print(rows)
    sys.exit(any(value > limit for _, value, _, limit in rows))


def short(film: Path, home: Path, starts: Sequence[int], length: int) -> list[Row]:
    """The rows of one film, from an empty folder on."""
    decode = cost([_ffmpeg(), "-v", "error", "-i", str(film), "-map", "0:v", "-f", "null", "-"])
    _write(home, film, starts, length)
    thorough, looked_through = told_apart(home, "--thorough", clips=False)
    _tell("first build without clips, thorough", thorough, looked_through)
    _write(home, film, starts, length)
    stills, parts = told_apart(home, clips=False)
    _tell("first build without clips", stills, parts)
    everything = _build(home)
    bare = [_bare_cut(film, start, length, home / "bare.mp4") for start in starts]
    again = _build(home)
    _, nothing = told_apart(home)
    _text(home, starts, length, "Turn the part slowly")
    changed = _build(home)
    start_up = cost([sys.executable, "-m", "procbuilder.cli", "--help"])
    cuts = everything.cpu - again.cpu
    twice = sum(part.again for each in (parts, looked_through) for part in each.values())
    return [
        ("first build without clips / decoding once", stills.cpu / decode.cpu, "", 0.50),
        ("the same, thorough / decoding once", thorough.cpu / decode.cpu, "", 1.0),
        ("clips / bare cuts, one call each", cuts / sum(each.cpu for each in bare), "", 1.15),
        ("second build, nothing changed", again.wall, "s", 1.0),
        ("build after a change of text", changed.wall, "s", 2.0),
        ("peak memory", max(each.peak for each in (everything, again, changed)), "MB", 350),
        ("pictures decoded twice by one pass", twice, "", 0),
        ("pictures decoded by a second build", sum(each.pictures for each in nothing.values()), "", 0),
        ("procbuilder --help", start_up.wall, "s", 0.3),
    ]  # fmt: skip


def long(film: Path, seconds: int, home: Path, starts: Sequence[int], length: int) -> list[Row]:
    """The rows of the film six times in a row, beside the film alone."""
    hour = repeated(film, film.with_name(f"{film.stem}x{TIMES}.mp4"), seconds, TIMES)
    _write(home, film, starts, length)
    once, parts = told_apart(home, clips=False)
    spread = [start + seconds * (index % TIMES) for index, start in enumerate(starts)]
    _write(home, hour, spread, length)
    _tell(f"{seconds} s of film", once, parts)
    many, longer = told_apart(home, clips=False)
    _tell(f"{seconds * TIMES} s of film, the same steps", many, longer)
    _write(home, hour, spread, length)
    everything = _build(home)
    ratio = _apart(many, longer) / _apart(once, parts)
    return [
        (f"{seconds * TIMES} s of film / {seconds} s, the same steps", ratio, "", 1.3),
        (f"peak memory with {seconds * TIMES} s of film", everything.peak, "MB", 350),
    ]


def _apart(run: Cost, parts: Parts) -> float:
    """Seconds beside those that grow with the length of a recording."""
    return run.cpu - sum(parts[name].seconds for name in GROWING)


def _write(home: Path, film: Path, starts: Sequence[int], length: int) -> None:
    """A new procedure folder."""
    shutil.rmtree(home, ignore_errors=True)
    (home / "recordings").mkdir(parents=True)
    (home / "recordings" / "phone.mp4").hardlink_to(film)
    _text(home, starts, length, "Turn the part")


def _text(home: Path, starts: Sequence[int], length: int, command: str) -> None:
    steps = [f"### {_clock(start)}-{_clock(start + length)} {command} {{#s{start}}}" for start in starts]
    text = "\n\n".join(["---\nrecordings: recordings/phone.mp4\n---\n# Bench", "## Work", *steps])
    (home / "procedure.md").write_text(text + "\n", encoding="utf-8")


def _clock(seconds: int) -> str:
    return f"{seconds // 60}:{seconds % 60:02}"


def _build(home: Path) -> Cost:
    return cost([sys.executable, "-m", "procbuilder.cli", "build", str(home)], exit_codes=(0, 1))


def _ffmpeg() -> str:
    import imageio_ffmpeg

    return str(imageio_ffmpeg.get_ffmpeg_exe())


def _bare_cut(film: Path, start: int, length: int, target: Path) -> Cost:
    where = ["-ss", str(start), "-t", str(length), "-i", str(film)]
    return cost([_ffmpeg(), "-v", "error", "-y", *where, *_CUT.split(), "-movflags", "+faststart", str(target)])


def _tell(what: str, run: Cost, parts: Parts) -> None:
    table = Table("part", "CPU s", "pictures decoded", title=what)
    for name, part in parts.items():
        table.add_row(name, f"{part.seconds:.1f}", str(part.pictures))
    rest = run.cpu - sum(part.seconds for part in parts.values())
    table.add_row("all else", f"{rest:.1f}", "")
    table.add_row("together", f"{run.cpu:.1f}", str(sum(part.pictures for part in parts.values())))
    Console().print(table)


def _print(rows: list[Row]) -> None:
    table = Table("measured", "value", "limit", "")
    for what, value, unit, limit in rows:
        table.add_row(what, f"{value:.2f} {unit}", f"{limit} {unit}", "ok" if value <= limit else "over")
    Console().print(table)


if __name__ == "__main__":
    main()
