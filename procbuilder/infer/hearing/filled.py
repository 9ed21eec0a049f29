"""What a narration tells, put into steps that somebody typed: their commands and their order stay."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from procbuilder.model.drafted import Draft, Landing, ProposedField, ProposedStep
from procbuilder.model.timecode import Span

ELSEWHERE = "said where no step was typed"


def filled(typed: Sequence[ProposedStep], told: Draft) -> Draft:
    """The typed steps with the fields of the narration, each where its words were said.

    What was said between two typed steps, or behind the last one, belongs to the step before it; what was said before
    the first belongs to the first. What was said late, and belongs to an earlier step, goes with that step. A
    sentence of a recording that no typed step shows is set aside.
    """
    return _Filler(typed, told).draft()


class _Filler:
    def __init__(self, typed: Sequence[ProposedStep], told: Draft) -> None:
        self.typed, self.told = typed, told
        self.fields: list[list[ProposedField]] = [[] for _ in typed]
        self.starts: dict[str, list[tuple[Fraction, int]]] = {}
        for at, step in enumerate(typed):
            if step.span:
                self.starts.setdefault(step.span.recording, []).append((step.span.start, at))
        for starts in self.starts.values():
            starts.sort()

    def draft(self) -> Draft:
        landings = tuple(self._landing(landing) for landing in self.told.landings)
        for step in self.told.steps:
            for field in step.fields:
                at = self._place(step.span, field.origin.recording, field.origin.time)
                if at is not None and field not in self.fields[at]:
                    self.fields[at].append(field)
        steps = tuple(
            replace(step, fields=(*step.fields, *own)) for step, own in zip(self.typed, self.fields, strict=True)
        )
        return Draft(steps, self.told.before, landings)

    def _landing(self, landing: Landing) -> Landing:
        if not landing.step:
            return landing
        said, span = landing.sentence, self.told.steps[landing.step - 1].span
        at = self._place(span, said.recording, said.start)
        if at is None:
            return replace(landing, step=0, how=ELSEWHERE, aside=True)
        how = "heard" if landing.how == "command" else landing.how
        return replace(landing, step=at + 1, how=how)

    def _place(self, span: Span | None, recording: str, time: Fraction | None) -> int | None:
        """Which typed step shows this moment; of a moment outside its heard step, the one that shows that step."""
        if span is not None and (time is None or recording != span.recording or not span.start <= time <= span.end):
            recording, time = span.recording, span.start
        starts = self.starts.get(recording)
        if not starts:
            return None
        at = bisect_right([start for start, _ in starts], time or Fraction(0)) - 1
        return starts[max(at, 0)][1]
