"""Where in the clip of a step something was said or seen."""

from fractions import Fraction

from procbuilder.model.edition import EditionStep
from procbuilder.model.origin import Origin


def moment_in_clip(step: EditionStep, origin: Origin) -> Fraction | None:
    """Seconds into the clip of what was said or seen; None when it lies outside, or the clip is not the typed spans."""
    time, whole = origin.time, sum((span.seconds for span in step.spans), Fraction(0))
    if time is None or step.clip is None or step.clip.moved or step.footage != whole:
        return None
    begun = Fraction(0)
    for span in step.spans:
        if span.recording == (origin.recording or span.recording) and span.start <= time < span.end:
            return begun + time - span.start
        begun += span.seconds
    return None
