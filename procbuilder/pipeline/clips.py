"""The clip of each step, which begins with its marked pictures, made once."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any

from procbuilder.keep.cache import key_of
from procbuilder.keep.records import restored, stored
from procbuilder.model.facts import Blank, Line, Phrase, Time, facts
from procbuilder.model.fault import CannotRead
from procbuilder.model.footage import Clip, Damage, Move, Still
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Step
from procbuilder.model.timecode import Span
from procbuilder.pipeline.material import Material, unreadable
from procbuilder.pipeline.pictures import Pictures
from procbuilder.pipeline.program import made_by
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.recordings import Recordings
from procbuilder.pipeline.trimming import Trimmed

if TYPE_CHECKING:
    from procbuilder.media.clips import ClipPart

HOLD, HOLD_ALL = Fraction(3), Fraction(6)
"""Seconds for which a marked picture stands still at the beginning of a clip, and all of them together at most."""


@dataclass(frozen=True, slots=True)
class Clips:
    """The clips of the steps."""

    by_step: Mapping[str, Clip]
    """By id of the step; steps without footage, and those that are withheld, are missing."""
    problems: tuple[Problem, ...]


def cut(
    steps: Sequence[Step], trimmed: Mapping[str, Trimmed], pictures: Pictures, material: Material,
    progress: Progress,
) -> Clips:  # fmt: skip
    """Cut the clips of these steps; footage that cannot be read, or is damaged, is a problem."""
    clips: dict[str, Clip] = {}
    problems: list[Problem] = []
    for number, step in enumerate(steps):
        progress(Phrase("cutting", facts(command=step.command)), number, len(steps))
        if step.withheld or not (footage := trimmed[step.id]).stretches:
            continue
        marked = [figure.marked for figure in pictures.figures.get(step.id, ()) if figure.marked]
        try:
            clips[step.id], damage = _clip(step, footage, marked, material)
        except CannotRead as fault:
            problems.append(unreadable(fault, material, step))
        else:
            problems += (damaged(each, step) for each in damage)
    return Clips(clips, tuple(problems))


def _clip(step: Step, footage: Trimmed, marked: Sequence[Still], material: Material) -> tuple[Clip, list[Damage]]:
    each = hold(len(marked))

    def make(target: Path) -> dict[str, Any]:
        from procbuilder.media.clips import Held, cut
        from procbuilder.media.damage import stretches as damage_in

        moments: list[tuple[str, Fraction]] = []
        held = [Held(material.cache.file(still.file), each) for still in marked]
        made = cut(parts(step, footage, material.recordings), target, held, lambda *moment: moments.append(moment))
        return {"clip": stored(Clip("", *made)), "damage": stored(damage_in(moments))}

    key = key_of(made_by(__name__), *footage_key(footage, material.recordings), each, *(still.file for still in marked))
    name, made = material.cache.media("clip", ".mp4", made_by(__name__), key, make)
    clip = replace(restored(Clip, made["clip"]), file=name, held=each * len(marked), moved=_moved(footage))
    return clip, [restored(Damage, one) for one in made["damage"]]


def parts(step: Step, footage: Trimmed, recordings: Recordings) -> "tuple[ClipPart, ...]":
    """The footage of a step as it goes into a clip or film."""
    from procbuilder.media.clips import ClipPart

    files = ((recordings.get(stretch.recording), stretch) for stretch in footage.stretches)
    return tuple(ClipPart(file.path, stretch, step.skips, footage.hidden) for file, stretch in files if file)


def footage_key(footage: Trimmed, recordings: Recordings) -> list[object]:
    """All that can be seen in the footage of a step depends on these."""
    files = (recordings.get(stretch.recording) for stretch in footage.stretches)
    hashes = [file.facts.sha256 for file in files if file]
    return [*hashes, *footage.stretches, [(path.recording, path.boxes) for path in footage.hidden]]


def _moved(footage: Trimmed) -> tuple[Move, ...]:
    """Where a clip does not begin or end at a typed time."""
    if len(footage.ends) == 1:
        return footage.ends[0].moves
    return tuple(replace(move, part=number) for number, part in enumerate(footage.ends, 1) for move in part.moves)


def damaged(damage: Damage, step: Step) -> Problem:
    """What is told in whole seconds can be left out with them."""
    span = damage.span
    start, end = Fraction(int(span.start)), Fraction(int(span.end))
    left_out = Span(span.recording, start, end + 1)
    given = facts(
        count=damage.pictures, recording=span.recording, start=Time(start), end=Time(end),
        skip=Line("Skip", (str(left_out), Blank("damaged")), place=step.place),
    )  # fmt: skip
    form = "damaged" if start == end else "damaged-between"
    return Problem("damaged", Severity.ASK, step.place, given, form, 4, subject=f"#{step.id}")


def hold(count: int) -> Fraction:
    """Seconds for which each of that many marked pictures stands still: less when they are many."""
    return min(HOLD, HOLD_ALL / count) if count else Fraction(0)
