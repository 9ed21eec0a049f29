"""What the pictures and clips of a procedure are made of."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from procbuilder.keep.cache import Cache
from procbuilder.media.stretches import room
from procbuilder.model.fault import Fault
from procbuilder.model.marks import Box, HiddenPath
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Step
from procbuilder.model.timecode import Span
from procbuilder.pipeline.recordings import RecordingFile, Recordings

STILL_BYTES = 40_000_000
"""Of all pictures together: a phone must open the one file that holds them, and a mail carry the PDF."""


@dataclass(frozen=True, slots=True)
class Material:
    """The folder with its picture files, the recordings, and all that is typed of them."""

    folder: Path
    steps: tuple[Step, ...]
    """All of them, whether their reader is shown how they are done or not: what one hides is hidden in the others."""
    recordings: Recordings
    cache: Cache
    """Where what is made of them is kept."""

    @property
    def still_bytes(self) -> int:
        """Bytes that one picture may take, in coarse steps, so that one step more does not change all pictures."""
        most = STILL_BYTES // max(sum(2 + 2 * len(step.pictures) for step in self.steps), 1)
        coarse = max(most.bit_length() - 2, 0)
        return most >> coarse << coarse

    def usable(self, step: Step) -> tuple[tuple[Span, RecordingFile], ...]:
        """The footage of a step that its recordings have."""
        spans = filter(None, map(self.recordings.usable, step.spans))
        return tuple((span, file) for span in spans if (file := self.recordings.get(span.recording)))

    def hidden(self, step: Step) -> tuple[HiddenPath, ...]:
        """What is hidden in the footage of a step: by itself, and by other steps that show some of it too."""
        others = (other for other in self.steps if any(a.overlap(b) for a in step.spans for b in other.spans))
        return tuple(dict.fromkeys([*step.hidden, *(path for other in others for path in other.hidden)]))

    def hidden_at(self, recording: str, time: Fraction, own: Sequence[HiddenPath]) -> tuple[Box, ...]:
        """What is hidden in the picture of a moment, whichever step shows it; ``own`` is of the step that does now."""
        moment = Span(recording, time, time + Fraction(1, 1000))
        others = (other for other in self.steps if any(span.overlap(moment) for span in other.spans))
        paths = dict.fromkeys([*own, *(path for other in others for path in other.hidden)])
        return tuple(box for path in paths if path.recording == recording and (box := path.at(time)))

    def is_withheld(self, recording: str, time: Fraction) -> bool:
        """A step that may not be shown lies at this moment, so that no picture is made of it for anybody."""
        closed = (step for step in self.steps if step.withheld)
        return any(
            span.recording == recording and span.start <= time <= span.end for step in closed for span in step.spans
        )

    def room(self, step: Step, span: Span, file: RecordingFile) -> Span:
        """How far the ends of a span of a step may move."""
        others = [*(other for each in self.steps for other in each.spans), *step.skips]
        # What is to be hidden was typed for these times; beyond them nobody has looked.
        return span if self.hidden(step) else room(span, file.facts.duration, others)


def unreadable(fault: Fault, material: Material, step: Step) -> Problem:
    """That a recording or picture file that a step shows cannot be read."""
    told = fault.below(material.folder.resolve())
    return Problem("unreadable", Severity.ASK, step.place, told, fault.form, 4, subject=str(dict(told)["path"]))
