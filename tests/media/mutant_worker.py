"""Puts recordings and pictures through everything that a build does with one, and says how each came out.

    python -m tests.media.mutant_worker SECONDS FOLDER FILE...

A file that takes longer than SECONDS kills the program, as a fault in a library would. The last line that was printed
then names it.
"""

import signal
import sys
import time
from fractions import Fraction
from pathlib import Path

from procbuilder.media.clips import ClipPart, cut
from procbuilder.media.keyframe import finished
from procbuilder.media.probe import probe
from procbuilder.media.stills import still
from procbuilder.model.fault import Unreadable, UnreadablePicture
from procbuilder.model.timecode import Span


def main() -> None:
    """Prints ``FILE begins`` and ``FILE ends as OUTCOME`` for each file."""
    seconds, folder = float(sys.argv[1]), Path(sys.argv[2])
    folder.mkdir(exist_ok=True)
    for name in sys.argv[3:]:
        print(f"{name} begins", flush=True)
        signal.setitimer(signal.ITIMER_REAL, seconds)
        begin = time.monotonic()
        outcome = _outcome(Path(name), folder)
        signal.setitimer(signal.ITIMER_REAL, 0)
        peak = _peak()
        print(f"{name} ends as {outcome} after {time.monotonic() - begin:.2f} s with {peak} MB", flush=True)


def _peak() -> int:
    """Megabytes at most; ``ru_maxrss`` would count those of the process which started this one."""
    status = Path("/proc/self/status").read_text(encoding="ascii")
    return int(status.partition("VmHWM:")[2].split()[0]) // 1024


def _outcome(path: Path, folder: Path) -> str:
    try:
        if path.suffix in (".jpg", ".png"):
            still(path, None, picture=None, target=folder / "still.jpg")
            return "made"
        facts = probe(path, name="film", shown=path.name, sha256="0").recording
        span = Span("film", Fraction(0), min(facts.duration, Fraction(2)))
        choice = finished(path, span)
        still(path, choice.time, picture=None, target=folder / "still.jpg")
        cut([ClipPart(path, span)], folder / "clip.mp4")
    except (Unreadable, UnreadablePicture) as fault:
        return "refused" if str(path) in str(fault) else f"REFUSED WITHOUT ITS NAME: {fault}"
    except Exception as error:
        return f"FAILED: {type(error).__name__}: {error}"
    return "made"


if __name__ == "__main__":
    main()
