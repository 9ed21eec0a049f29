"""Rules about times and recordings."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from rapidfuzz import process

from procbuilder.check.case import Case
from procbuilder.model.facts import Term, Time, facts
from procbuilder.model.marks import HiddenPath
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.timecode import Span

_WHOLE_SECOND = Fraction(1)
"""A player shows a film of 74.6 seconds as 1:15 long; an end typed so is meant as the end of the film."""


def unlisted_recording(case: Case) -> Iterator[Problem]:
    """A time in a recording that the front matter does not list; each name once."""
    listed = [file.name for file in case.procedure.front.recordings]
    used: dict[str, Place] = {}
    for _, place, span in case.spans:
        used.setdefault(span.recording, place)
    for _, step in case.numbered:
        for picture in step.pictures:
            used.setdefault(picture.recording, picture.place)
    for name, place in used.items():
        if name and name not in listed:
            near = process.extractOne(name, listed, score_cutoff=60)
            given = facts(name=name, near=near[0] if near else "")
            yield Problem("unlisted-recording", Severity.STOP, place, given, "near" if near else "", 4)


def time_outside_recording(case: Case) -> Iterator[Problem]:
    """A step, a skipped stretch or a picture beyond the end of its recording."""
    for _, place, span in case.spans:
        recording = case.recordings.get(span.recording)
        if recording is None:
            continue
        last = recording.duration
        late = span.start if span.start >= last else span.end if span.end >= last + _WHOLE_SECOND else None
        if late is not None:
            yield _outside(place, late, span.recording, last)
    for _, step in case.numbered:
        for picture in step.pictures:
            recording = case.recordings.get(picture.recording)
            if recording and picture.time is not None and picture.time >= recording.duration:
                yield _outside(picture.place, picture.time, picture.recording, recording.duration)


def _outside(place: Place, time: Fraction, name: str, duration: Fraction) -> Problem:
    end = Time(Fraction(int(duration * 1000), 1000))
    given = facts(time=Time(time), recording=name, end=end)
    return Problem("time-outside-recording", Severity.STOP, place, given, danger=4)


def end_before_start(case: Case) -> Iterator[Problem]:
    """A stretch that ends before it starts, or has no length."""
    for _, place, span in case.spans:
        if span.end <= span.start:
            form = "" if span.end < span.start else "no-length"
            yield Problem("end-before-start", Severity.STOP, place, facts(span=span), form, 4)


def overlapping_steps(case: Case) -> Iterator[Problem]:
    """Footage that two stretches share, whose time counts twice: each with the one before it that lasts longest."""
    stretches = [(number, step.place, span) for number, step in case.numbered for span in step.spans]
    longest = None
    for each in sorted(stretches, key=lambda stretch: (stretch[2].recording, stretch[2].start)):
        before = longest or each
        if each[2].recording != before[2].recording or each[2].end >= before[2].end:
            longest = each
        if before is each or not before[2].overlap(each[2]):
            continue
        (first, _, one), (second, place, other) = sorted((before, each), key=lambda stretch: stretch[1])
        shared = Span(one.recording, max(one.start, other.start), min(one.end, other.end))
        given = facts(
            first=case.step(first),
            second=case.step(second),
            shared=shared,
            begins=Time(shared.start),
            ends=Time(shared.end),
        )
        form = "" if first != second else "same-step"
        yield Problem("overlapping-steps", Severity.ADVICE, place, given, form, 5, str(shared))


def hidden_in_part(case: Case) -> Iterator[Problem]:
    """A region that is hidden between two times only, while the clip of its step shows more; or that meets nothing."""
    for _, step in case.numbered:
        for path in step.hidden:
            hidden = Span(path.recording, path.boxes[0][0], path.boxes[-1][0])
            spans = [span for span in step.spans if span.recording == path.recording]
            if not step.shows(path):
                yield _beside(path, hidden, spans)
            elif path.lasts and (shown := tuple(part for span in spans for part in _open(span, hidden, step.skips))):
                given = facts(hidden=hidden, shown=shown, ends=_ends(shown, hidden))
                yield Problem("hidden-in-part", Severity.ADVICE, path.place, given, "", 3, str(hidden))


def _beside(path: HiddenPath, hidden: Span, spans: Sequence[Span]) -> Problem:
    given = facts(hidden=hidden if path.lasts else Time(hidden.start, hidden.recording))
    if spans:
        given += facts(begins=Time(spans[0].start), ends=Time(spans[-1].end))
    form = "beside" if spans else "elsewhere"
    return Problem("hidden-in-part", Severity.STOP, path.place, given, form, 3)


def mark_outside_crop(case: Case) -> Iterator[Problem]:
    """A mark on what is cut off of its picture."""
    for _, step in case.numbered:
        for picture in step.pictures:
            for mark in picture.marks:
                if picture.crop and not mark.within(picture.crop):
                    given = facts(shape=Term(mark.shape), label=mark.label)
                    form = "" if mark.label else "no-label"
                    subject = mark.label or f"#{step.id} {mark.shape}"
                    yield Problem("mark-outside-crop", Severity.ASK, mark.place, given, form, 4, subject)


def _open(span: Span, hidden: Span, skips: Iterable[Span]) -> Iterator[Span]:
    """What a stretch of footage shows before and after a region is hidden in it, where that is not skipped."""
    before = Span(span.recording, span.start, min(hidden.start, span.end))
    after = Span(span.recording, max(hidden.end, span.start), span.end)
    for part, least in ((before, Fraction(0)), (after, _WHOLE_SECOND)):
        if part.seconds - sum((part.overlap(skip) for skip in skips), Fraction(0)) > least:
            yield part


def _ends(shown: Iterable[Span], hidden: Span) -> tuple[Time, ...]:
    """The outer ends of what is open: boxes typed there would hide it."""
    return tuple(Time(part.start if part.end <= hidden.start else part.end) for part in shown)
