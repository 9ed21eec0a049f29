"""The footage of each step, trimmed to where its action really begins and ends."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from procbuilder.keep.cache import Cache, key_of
from procbuilder.keep.records import restored, stored
from procbuilder.media.stretches import kept
from procbuilder.model.facts import Phrase, facts
from procbuilder.model.fault import Unreadable
from procbuilder.model.footage import Cut, Snapped
from procbuilder.model.marks import HiddenPath
from procbuilder.model.procedure import Step
from procbuilder.model.timecode import Span
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.program import made_by
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.recordings import RecordingFile


@dataclass(frozen=True, slots=True)
class Trimmed:
    """The footage of a step that can be shown."""

    ends: tuple[Snapped, ...] = ()
    """Of each span that its recording has."""
    stretches: tuple[Span, ...] = ()
    """What is left of them when skipped stretches are left out."""
    hidden: tuple[HiddenPath, ...] = ()


def trim(
    steps: Sequence[Step], material: Material, cuts: Mapping[str, Sequence[Cut]], progress: Progress
) -> dict[str, Trimmed]:
    """The footage of these steps by their ids; ``cuts`` are those of each recording by its name."""
    trimmed = {}
    for number, step in enumerate(steps):
        progress(Phrase("trimming", facts(command=step.command)), number, len(steps))
        ends = tuple(
            _ends(span, material.room(step, span, file), cuts.get(span.recording, ()), file, material.cache)
            for span, file in material.usable(step)
        )
        stretches = tuple(part for each in ends for part in kept(each.span, step.skips))
        trimmed[step.id] = Trimmed(ends, stretches, material.hidden(step))
    return trimmed


def _ends(span: Span, room: Span, cuts: Iterable[Cut], file: RecordingFile, cache: Cache) -> Snapped:
    cuts = inside(span, cuts)
    key = ends_key(file.facts.sha256, span, room, cuts)
    if known := cache.get("ends", key):
        return restored(Snapped, known)
    from procbuilder.media.snap import snapped

    try:
        made = snapped(file.path, span, room, cuts)
    except Unreadable:  # the picture and the clip tell it
        return Snapped(span, span)
    cache.put("ends", key, stored(made))
    return made


def inside(span: Span, cuts: Iterable[Cut]) -> list[Cut]:
    """The cuts that are not at an end of a span."""
    return [cut for cut in cuts if span.start < cut.time < span.end]


def ends_key(sha256: str, span: Span, room: Span, cuts: Sequence[Cut]) -> str:
    """Under which the ends of a span are kept."""
    return key_of(made_by(__name__), sha256, span, room, cuts)
