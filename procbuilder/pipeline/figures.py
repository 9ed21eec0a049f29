"""Which pictures a step shows: the technician's own first, else the best moment of its footage."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction

from procbuilder.model.edition import Figure
from procbuilder.model.footage import TYPED_MOMENT, Choice, Still, Weakness
from procbuilder.model.marks import Picture, PictureState
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import Step
from procbuilder.model.timecode import format_time
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.moments import as_found as moment_as_found
from procbuilder.pipeline.moments import finished
from procbuilder.pipeline.stills import picture_file, still
from procbuilder.pipeline.trimming import Trimmed
from procbuilder.publish.language import Language

NEXT_TIME = {
    Weakness.DARK: "put a lamp on the finished part",
    Weakness.BURNT_OUT: "turn the lamp aside and tap on the part to set the light",
    Weakness.BLURRED: "tap on the part to focus and hold the camera still for two seconds",
    Weakness.COVERED: "take the hand away from the part for two seconds when it is done",
    Weakness.IN_MOTION: "hold the camera still on the finished part for two seconds",
    Weakness.TURNED_AWAY: "hold the camera on the finished part for two seconds",
    Weakness.EARLY: "hold the camera on the finished part for two seconds at the end of the step",
}
"""What makes a good picture the next time."""

FOUND_WINDOW = Fraction(3, 2)
"""Seconds at the beginning of a step among which the as-found picture is looked for."""

ORDER = {state: rank for rank, state in enumerate((PictureState.DONE, PictureState.DETAIL, PictureState.FOUND))}


def figures(step: Step, footage: Trimmed, material: Material, language: Language) -> tuple[Figure, ...]:
    """The pictures of a step: finished state, details, then how it was found.

    Raises:
        Unreadable, UnreadablePicture: a recording or a picture file cannot be read.
    """
    typed = [picture for picture in step.pictures if picture.state is not PictureState.FOUND]
    chosen = [figure for picture in typed if (figure := _typed(step, picture, material, language))]
    if not any(figure.state == PictureState.DONE for figure in chosen):
        chosen += filter(None, [_automatic(step, footage, material, language)])
    found = [
        figure
        for picture in step.pictures
        if picture not in typed
        if (figure := _typed(step, picture, material, language))
    ]
    return tuple(sorted(chosen + found, key=lambda figure: ORDER[PictureState(figure.state)]))


def as_found(step: Step, footage: Trimmed, material: Material, language: Language) -> Figure | None:
    """How it looked before the step: the technician's picture, else the best one of the step's beginning.

    Raises:
        Unreadable, UnreadablePicture: a recording or a picture file cannot be read.
    """
    for picture in step.pictures:
        if picture.state is PictureState.FOUND and (figure := _typed(step, picture, material, language)):
            return figure
    first = next(iter(footage.stretches), None)
    file = material.recordings.get(first.recording) if first else None
    if first is None or file is None:
        return None
    length = min(FOUND_WINDOW, first.seconds * Fraction(3, 10))
    choice = moment_as_found(replace(first, end=first.start + length), file, material.cache)
    made = still(choice, None, step.hidden, material)
    alt = language.text("Before: {command}", command=step.command)
    return Figure(made, alt, "", PictureState.FOUND) if made else None


def _automatic(step: Step, footage: Trimmed, material: Material, language: Language) -> Figure | None:
    """The best moment of the last footage of a step."""
    last = footage.ends[-1] if footage.stretches else None
    file = material.recordings.get(last.span.recording) if last else None
    if last is None or file is None:
        return None
    choice = finished(last.span, step.skips, file, material.cache)
    choice = replace(choice, reason=replace(choice.reason, moves=last.moves))
    made = still(choice, None, step.hidden, material)
    alt = language.text("Finished state of: {command}", command=step.command)
    return Figure(made, alt, "", PictureState.DONE) if made else None


def weak(step: Step, figures: Iterable[Figure]) -> Iterator[Problem]:
    """That the best picture of a step is weak, and what to do at the next filming."""
    for shown in (figure.still for figure in figures if figure.still.weak):
        assert shown.time is not None
        wrong = " and ".join(weakness.replace("-", " ") for weakness in shown.weak)
        what = f'the picture of "{step.command}" is {wrong} at {shown.recording} {format_time(shown.time)}'
        instead = (
            f'{NEXT_TIME[shown.weak[0]]} at the next filming, or choose a moment with "- Picture: time | what it shows"'
        )
        yield worded(Severity.ADVICE, step.place, what, instead, "weak picture")


def _typed(step: Step, picture: Picture, material: Material, language: Language) -> Figure | None:
    plain = _still(step, picture, material, marked=False)
    if plain is None:
        return None
    marks = picture.seen_marks
    alt = picture.shows or f"{language.capital(picture.state)}: {step.command}"
    if marks:
        told = "; ".join(f"{language.text(mark.shape)}, {mark.label}".rstrip(", ") for mark in marks)
        alt = language.text("{picture}. Marked: {marks}", picture=alt, marks=told)
    marked = _still(step, picture, material, marked=True) if marks else None
    return Figure(plain, alt, picture.shows, picture.state, marks, marked)


def _still(step: Step, picture: Picture, material: Material, *, marked: bool) -> Still | None:
    if picture.file:
        return picture_file(picture, material, marked=marked)
    assert picture.time is not None
    choice = Choice(picture.recording, picture.time, TYPED_MOMENT)
    return still(choice, picture, step.hidden, material, marked=marked)
