"""Rules about times and recordings."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from rapidfuzz import process

from procbuilder.check.case import Case
from procbuilder.model.marks import HiddenPath
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.timecode import Span, format_time

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
            instead = f"did you mean {near[0]}? Or add" if near else "add"
            yield worded(
                Severity.STOP,
                place,
                f"no recording is called {name}",
                f"{instead} it at the top: recordings: {{{name}: recordings/FILE.mp4}}",
                "unlisted-recording",
                4,
            )


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
    end = format_time(Fraction(int(duration * 1000), 1000))
    return worded(
        Severity.STOP,
        place,
        f"{format_time(time)} lies outside the recording {name}, which ends at {end}",
        f"write a time before {end}, or name the recording that shows it",
        "time-outside-recording",
        4,
    )


def end_before_start(case: Case) -> Iterator[Problem]:
    """A stretch that ends before it starts, or has no length."""
    for _, place, span in case.spans:
        if span.end < span.start:
            turned = Span(span.recording, span.end, span.start)
            what, instead = f"{span} ends before it starts", f"turn it round: {turned}"
        elif span.end == span.start:
            longer = Span(span.recording, span.start, span.end + 5)
            what, instead = f"{span} has no length", f"write when the step ends, such as {longer}"
        else:
            continue
        yield worded(Severity.STOP, place, what, instead, "end-before-start", 4)


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
        who = f"step {first} and step {second} both show" if first != second else f"step {first} shows twice"
        yield worded(
            Severity.ADVICE,
            place,
            f"{who} {shared}, and its time counts twice",
            f"end one where the other begins, at {format_time(shared.start)} or {format_time(shared.end)}",
            "overlapping-steps",
            5,
        )


def hidden_in_part(case: Case) -> Iterator[Problem]:
    """A region that is hidden between two times only, while the clip of its step shows more."""
    for _, step in case.numbered:
        for path in step.hidden:
            if path.lasts is None:
                continue
            hidden = Span(path.recording, *path.lasts)
            spans = [span for span in step.spans if span.recording == path.recording]
            if not any(span.start <= hidden.end and hidden.start < span.end for span in spans):
                yield _beside(path, hidden, spans)
            elif shown := [part for span in spans for part in _open(span, hidden, step.skips)]:
                what = f"hidden only {_times(hidden)}; the clip shows {' and '.join(map(_times, shown))} open"
                instead = f"write a box for {_ends(shown, hidden)} as well, if it is in sight then"
                yield worded(Severity.ADVICE, path.place, what, instead, "hidden-in-part", 3)


def _beside(path: HiddenPath, hidden: Span, spans: Sequence[Span]) -> Problem:
    what = f"{hidden} is hidden, but the step does not show it"
    instead = "move it to a step whose footage shows it"
    if spans:
        instead = f"write times between {format_time(spans[0].start)} and {format_time(spans[-1].end)}"
    return worded(Severity.ASK, path.place, what, instead, "hidden-in-part", 3)


def mark_outside_crop(case: Case) -> Iterator[Problem]:
    """A mark on what is cut off of its picture."""
    for _, step in case.numbered:
        for picture in step.pictures:
            for mark in picture.marks:
                if picture.crop and not mark.within(picture.crop):
                    what = f'the {mark.shape} "{mark.label}" lies outside the crop of its picture and is not shown'
                    yield worded(
                        Severity.ASK,
                        mark.place,
                        what.replace(' ""', ""),
                        "move it into the crop, or widen the crop",
                        "mark-outside-crop",
                        4,
                    )


def _open(span: Span, hidden: Span, skips: Iterable[Span]) -> Iterator[Span]:
    """What a stretch of footage shows before and after a region is hidden in it, where that is not skipped."""
    before = Span(span.recording, span.start, min(hidden.start, span.end))
    after = Span(span.recording, max(hidden.end, span.start), span.end)
    for part, least in ((before, Fraction(0)), (after, _WHOLE_SECOND)):
        if part.seconds - sum((part.overlap(skip) for skip in skips), Fraction(0)) > least:
            yield part


def _times(span: Span) -> str:
    return f"{format_time(span.start)}–{format_time(span.end)}"


def _ends(shown: Iterable[Span], hidden: Span) -> str:
    """The outer ends of what is open: boxes typed there would hide it."""
    return " and ".join(format_time(part.start if part.end <= hidden.start else part.end) for part in shown)
