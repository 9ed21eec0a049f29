"""How fast a build is, as a ratio to bare ffmpeg runs beside it.

    python -m tests.bench.build_speed FOLDER [--seconds 600]

FOLDER keeps the recording (about 1.3 GB for ten minutes) for the next run. CPU seconds are compared, since they hold on
a busy machine too. The reference is the ffmpeg that the wheel ``imageio-ffmpeg`` carries.
"""

import argparse
import shutil
import sys
from pathlib import Path

from rich.console import Console
from rich.table import Table

from tests.bench.cost import Cost, cost
from tests.bench.film import make

STEPS, STEP_SECONDS = 20, 20
_WITHOUT_CLIPS = (
    "import sys; from procbuilder.pipeline.studio import Studio; Studio.clip = lambda *_: None;"
    "from procbuilder.cli import main; main()"
)
_CUT = "-vf scale=1280:720 -c:v libx264 -preset veryfast -crf 23 -pix_fmt yuv420p -c:a aac -ac 1 -b:a 96k"

Row = tuple[str, float, str, float]
"""What was measured, its value, its unit, and the value that it should not pass."""


def main() -> None:
    """Measure and print the table; exit 1 when a value passes its limit."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--seconds", type=int, default=600)
    request = parser.parse_args()
    film = make(request.folder / f"phone-{request.seconds}.mp4", request.seconds)
    rows = measure(film, request.folder / "procedure", request.seconds)
    _print(rows)
    sys.exit(any(value > limit for _, value, _, limit in rows))


def measure(film: Path, home: Path, seconds: int) -> list[Row]:
    """Every row of the table, from an empty folder on."""
    starts = [index * seconds // STEPS for index in range(STEPS)]
    length = min(STEP_SECONDS, seconds // STEPS)
    shutil.rmtree(home, ignore_errors=True)
    (home / "recordings").mkdir(parents=True)
    (home / "recordings" / "phone.mp4").hardlink_to(film)
    _write(home, starts, length, "Turn the part")
    decode = cost([_ffmpeg(), "-v", "error", "-i", str(film), "-map", "0:v", "-f", "null", "-"])
    stills = _build(home, [sys.executable, "-c", _WITHOUT_CLIPS])
    everything = _build(home)
    bare = [_bare_cut(film, start, length, home / "bare.mp4") for start in starts]
    again = _build(home)
    _write(home, starts, length, "Turn the part slowly")
    changed = _build(home)
    start_up = cost([sys.executable, "-m", "procbuilder.cli", "--help"])
    cuts = everything.cpu - again.cpu
    return [
        ("first build without clips / decoding once", stills.cpu / decode.cpu, "", 0.50),
        ("clips / bare cuts, one call each", cuts / sum(each.cpu for each in bare), "", 1.15),
        ("second build, nothing changed", again.wall, "s", 1.0),
        ("build after a change of text", changed.wall, "s", 2.0),
        ("peak memory", max(each.peak for each in (stills, everything, again, changed)), "MB", 400),
        ("procbuilder --help", start_up.wall, "s", 0.3),
    ]


def _write(home: Path, starts: list[int], length: int, command: str) -> None:
    steps = [f"### {_clock(start)}-{_clock(start + length)} {command} {{#s{start}}}" for start in starts]
    text = "\n\n".join(["---\nrecordings: recordings/phone.mp4\n---\n# Bench", "## Work", *steps])
    (home / "procedure.md").write_text(text + "\n", encoding="utf-8")


def _clock(seconds: int) -> str:
    return f"{seconds // 60}:{seconds % 60:02}"


def _build(home: Path, program: list[str] | None = None) -> Cost:
    return cost([*(program or [sys.executable, "-m", "procbuilder.cli"]), "build", str(home)], exit_codes=(0, 1))


def _ffmpeg() -> str:
    import imageio_ffmpeg

    return str(imageio_ffmpeg.get_ffmpeg_exe())


def _bare_cut(film: Path, start: int, length: int, target: Path) -> Cost:
    where = ["-ss", str(start), "-t", str(length), "-i", str(film)]
    return cost([_ffmpeg(), "-v", "error", "-y", *where, *_CUT.split(), "-movflags", "+faststart", str(target)])


def _print(rows: list[Row]) -> None:
    table = Table("measured", "value", "limit", "")
    for what, value, unit, limit in rows:
        table.add_row(what, f"{value:.2f} {unit}", f"{limit} {unit}", "ok" if value <= limit else "over")
    Console().print(table)


if __name__ == "__main__":
    main()
