"""Where in the clip of a step something was said or seen."""

import re
from fractions import Fraction

from procbuilder.model.edition import EditionStep
from procbuilder.model.timecode import parse_time

_FILMED = re.compile(r"(?:said|seen) (?:(?P<recording>\S+) )?(?P<time>[\d:.]+)")


def moment_in_clip(step: EditionStep, origin: str) -> Fraction | None:
    """Seconds into the clip of ``said strip 1:02``; None when it lies outside, or the clip is not the typed spans."""
    match = _FILMED.fullmatch(origin)
    time = parse_time(match["time"]) if match else None
    whole = sum((span.seconds for span in step.spans), Fraction(0))
    if match is None or time is None or step.clip is None or step.clip.moved or step.footage != whole:
        return None
    begun = Fraction(0)
    for span in step.spans:
        if span.recording == (match["recording"] or span.recording) and span.start <= time < span.end:
            return begun + time - span.start
        begun += span.seconds
    return None
