"""Recordings of several gigabytes are read in pieces."""

import subprocess
import sys
from fractions import Fraction
from pathlib import Path

from tests.media import filming
from tests.media.filming import Track

_GIGABYTES = 6
_PROGRAM = """
import sys
from fractions import Fraction
from pathlib import Path
from procbuilder.media.clips import ClipPart, cut
from procbuilder.media.decode import picture_at
from procbuilder.media.probe import probe
from procbuilder.model.timecode import Span

path = Path(sys.argv[1])
facts = probe(path, name="strip", shown=path.name, sha256="0").recording
picture_at(path, Fraction(1))
seconds, *_ = cut([ClipPart(path, Span("strip", Fraction(0), Fraction(2)))], Path(sys.argv[2]))
peak = next(line for line in Path("/proc/self/status").read_text().splitlines() if line.startswith("VmHWM"))
print(facts.pictures, seconds, int(peak.split()[1]) // 1024)
"""


def test_a_recording_larger_than_memory_costs_no_memory(tmp_path: Path) -> None:
    """Six gigabytes that belong to nobody stand between pictures and index (ISO 14496-12, 4.2 largesize, 8.1.2).

    The peak is that of the program alone: ``ru_maxrss`` would count that of the process which started it.
    """
    data = filming.film(tmp_path / "small.mov", filming.steady(2), track=Track(sound=(Fraction(2),))).read_bytes()
    index, nobody = data.rindex(b"moov") - 4, _GIGABYTES << 30
    large = tmp_path / "large.mov"
    with large.open("wb") as file:
        file.write(data[:index] + (1).to_bytes(4, "big") + b"free" + nobody.to_bytes(8, "big"))
        file.seek(index + nobody)
        file.write(data[index:])
    command = [sys.executable, "-c", _PROGRAM, str(large), str(tmp_path / "clip.mp4")]
    run = subprocess.run(command, capture_output=True, text=True, check=True, timeout=60)
    pictures, seconds, megabytes = run.stdout.split()
    assert (pictures, seconds) == ("50", "2")
    assert int(megabytes) < 300
