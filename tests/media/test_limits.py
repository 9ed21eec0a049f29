"""What is larger than a camera makes is refused with a reason, before it costs memory or hours."""

import struct
import subprocess
import sys
import zlib
from pathlib import Path

import pytest

from procbuilder.media import limits
from procbuilder.media.limits import beyond_usual, too_large
from procbuilder.media.probe import probe
from procbuilder.media.stills import still
from procbuilder.model.fault import Beyond, Unreadable, UnreadablePicture
from tests.media import filming
from tests.media.filming import Track
from tests.refused import refused

_PROGRAM = """
import sys
from pathlib import Path
from procbuilder.media.stills import still

print(*still(Path(sys.argv[1]), None, picture=None, target=Path(sys.argv[2])))
peak = next(line for line in Path("/proc/self/status").read_text().splitlines() if line.startswith("VmHWM"))
print(int(peak.split()[1]) // 1024)
"""


def _png(path: Path, width: int, height: int, *, whole: bool = False) -> Path:
    """A grey PNG of a few kilobytes (ISO 15948, 11.2.2 IHDR); without its pixels unless it is ``whole``."""
    rows = zlib.compressobj(1)
    data = b"".join([*(rows.compress(bytes(width + 1)) for _ in range(height if whole else 1)), rows.flush()])
    chunks = (b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)), (b"IDAT", data), (b"IEND", b"")
    written = (struct.pack(">I", len(each)) + kind + each + struct.pack(">I", zlib.crc32(kind + each))
               for kind, each in chunks)  # fmt: skip
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + b"".join(written))
    return path


@pytest.mark.parametrize(
    ("width", "height", "why"),
    [
        (30_000, 30_000, "it has 30000 x 30000 pixels; at most 67 million are read"),
        (8193, 8192, "it has 8193 x 8192 pixels; at most 67 million are read"),
        (9000, 1000, "it has 9000 x 1000 pixels; none that is over 8 times as long as wide is read"),
        (1, 60_000, "it has 1 x 60000 pixels; none that is over 8 times as long as wide is read"),
    ],
)
def test_a_picture_beyond_all_cameras_is_refused_by_its_head(tmp_path: Path, width: int, height: int, why: str) -> None:
    with refused(UnreadablePicture, rf"bomb.png: cannot be read as a picture \({why}\)"):
        still(_png(tmp_path / "bomb.png", width, height), None, picture=None, target=tmp_path / "still.jpg")


def test_a_picture_file_of_many_bytes_is_not_read_into_memory(tmp_path: Path) -> None:
    path = _png(tmp_path / "heavy.png", 10, 10)
    with path.open("r+b") as file:
        file.truncate(limits.MOST_BYTES + 1)
    with refused(UnreadablePicture, "its file takes more than 268 MB"):
        still(path, None, picture=None, target=tmp_path / "still.jpg")


@pytest.mark.skipif(not Path("/proc/self/status").is_file(), reason="the system does not tell the peak of memory")
def test_the_largest_picture_takes_little_memory(tmp_path: Path) -> None:
    """67 million pixels in 65 kB would take 200 MB for each copy of them in full size."""
    path = _png(tmp_path / "large.png", 8192, 8192, whole=True)
    command = [sys.executable, "-c", _PROGRAM, str(path), str(tmp_path / "still.jpg")]
    run = subprocess.run(command, capture_output=True, text=True, check=True, timeout=60)
    width, height, megabytes = run.stdout.split()
    assert (width, height) == ("1280", "1280")
    assert int(megabytes) < 500


@pytest.mark.parametrize(
    ("size", "usual"),
    [((1920, 1080), True), ((7680, 4320), True), ((8192, 4320), True), ((8192, 8192), False)],
)
def test_the_largest_film_cameras_are_within_what_is_usual(size: tuple[int, int], usual: bool) -> None:
    """8K of ITU-R BT.2020 has 7680 x 4320; 8192 x 4320 is that of the largest film cameras, from memory."""
    assert (beyond_usual(*size) is None) is usual
    assert too_large(*size) is None


def test_a_recording_with_too_large_pictures_is_read_only_when_asked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = filming.film(tmp_path / "wide.mp4", filming.steady(1), track=Track(size=(640, 480)))
    monkeypatch.setattr(limits, "USUAL_PIXELS", 300_000)
    with refused(Beyond, r"is larger than what is usually read \(its pictures have 640 x 480 pixels, more than 0 mil"):
        probe(path, name="strip", shown="", sha256="")
    assert probe(path, name="strip", shown="", sha256="", thorough=True).recording.width == 640
    monkeypatch.setattr(limits, "MOST_PIXELS", 300_000)
    with refused(Unreadable, "it has 640 x 480 pixels; at most 0 million are read"):
        probe(path, name="strip", shown="", sha256="", thorough=True)


def test_a_recording_with_too_many_pictures_is_read_only_when_asked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = filming.film(tmp_path / "long.mp4", filming.steady(2))
    monkeypatch.setattr("procbuilder.media.probe.USUAL_PICTURES", 49)
    with refused(Beyond, r"\(it holds more than [0-9]+ pictures\) – save it smaller or in shorter pieces, or have"):
        probe(path, name="strip", shown="", sha256="")
    assert probe(path, name="strip", shown="", sha256="", thorough=True).recording.pictures == 50
