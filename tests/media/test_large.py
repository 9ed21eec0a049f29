"""Recordings of several gigabytes are read in pieces."""

import subprocess
import sys
from fractions import Fraction
from pathlib import Path

from tests.media import filming
from tests.media.filming import Track

_GIGABYTES = 6
_PROGRAM = """
import resource, sys
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
print(facts.pictures, seconds, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024)
"""


def test_a_recording_larger_than_memory_costs_no_memory(tmp_path: Path) -> None:
    """Six gigabytes that belong to nobody stand between pictures and index (ISO 14496-12, 4.2 largesize, 8.1.2)."""
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
