"""Which pictures a step shows: the technician's own first, else the best moment of its footage."""

from dataclasses import replace
from fractions import Fraction

from procbuilder.model.edition import Figure
from procbuilder.model.footage import Choice, Still
from procbuilder.model.marks import Picture, PictureState
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import Step
from procbuilder.model.timecode import format_time
from procbuilder.pipeline.studio import CHOSEN, FOUND_WINDOW, Studio
from procbuilder.publish.language import Language

NEXT_TIME = {
    "dark": "put a lamp on the finished part",
    "burnt out": "turn the lamp aside and tap on the part to set the light",
    "blurred": "tap on the part to focus and hold the camera still for two seconds",
    "covered": "take the hand away from the part for two seconds when it is done",
    "in motion": "hold the camera still on the finished part for two seconds",
    "turned away": "hold the camera on the finished part for two seconds",
    "early": "hold the camera on the finished part for two seconds at the end of the step",
}
"""What makes a good picture the next time, for each word of ``WEAK``."""

ORDER = {state: rank for rank, state in enumerate((PictureState.DONE, PictureState.DETAIL, PictureState.FOUND))}


def figures(studio: Studio, step: Step, language: Language) -> tuple[Figure, ...]:
    """The pictures of a step: finished state, details, then how it was found."""
    typed = [picture for picture in step.pictures if picture.state is not PictureState.FOUND]
    chosen = [figure for picture in typed if (figure := _typed(studio, step, picture, language))]
    if not any(figure.state == PictureState.DONE for figure in chosen):
        chosen += filter(None, [_automatic(studio, step, language)])
    found = [
        figure
        for picture in step.pictures
        if picture not in typed
        if (figure := _typed(studio, step, picture, language))
    ]
    return tuple(sorted(chosen + found, key=lambda figure: ORDER[PictureState(figure.state)]))


def as_found(studio: Studio, step: Step, language: Language) -> Figure | None:
    """How it looked before the step: the technician's picture, else the best one of the step's beginning."""
    for picture in step.pictures:
        if picture.state is PictureState.FOUND and (figure := _typed(studio, step, picture, language)):
            return figure
    stretches = studio.stretches(step)
    if not stretches:
        return None
    first = stretches[0]
    length = min(FOUND_WINDOW, first.seconds * Fraction(3, 10))
    choice = studio.choose_as_found(replace(first, end=first.start + length))
    still = studio.still(choice, None, step.hidden)
    return (
        Figure(still, language.text("Before: {command}", command=step.command), "", PictureState.FOUND)
        if still
        else None
    )


def _automatic(studio: Studio, step: Step, language: Language) -> Figure | None:
    """The best moment of the last footage of a step."""
    stretches = studio.stretches(step)
    if not stretches:
        return None
    last = studio.snapped(step)[-1]
    choice = studio.choose(last.span, step.skips)
    if last.moves:
        choice = replace(choice, reason=f"{choice.reason}; the step {' and '.join(last.moves)}")
    still = studio.still(choice, None, step.hidden)
    if still and choice.weak:
        studio.problems.append(_advice(step, choice))
    alt = language.text("Finished state of: {command}", command=step.command)
    return Figure(still, alt, "", PictureState.DONE) if still else None


def _advice(step: Step, choice: Choice) -> Problem:
    """That the best picture of a step is weak, and what to do at the next filming."""
    where = f"{choice.recording} {format_time(choice.time)}"
    what = f'the picture of "{step.command}" is {" and ".join(choice.weak)} at {where}'
    instead = (
        f'{NEXT_TIME[choice.weak[0]]} at the next filming, or choose a moment with "- Picture: time | what it shows"'
    )
    return worded(Severity.ADVICE, step.place, what, instead, "weak picture")


def _typed(studio: Studio, step: Step, picture: Picture, language: Language) -> Figure | None:
    still = _still(studio, step, picture, marked=False)
    if still is None:
        return None
    marks = picture.seen_marks
    alt = picture.shows or f"{language.capital(picture.state)}: {step.command}"
    if marks:
        told = "; ".join(f"{language.text(mark.shape)}, {mark.label}".rstrip(", ") for mark in marks)
        alt = language.text("{picture}. Marked: {marks}", picture=alt, marks=told)
    marked = _still(studio, step, picture, marked=True) if marks else None
    return Figure(still, alt, picture.shows, picture.state, marks, marked)


def _still(studio: Studio, step: Step, picture: Picture, *, marked: bool) -> Still | None:
    if picture.file:
        return studio.picture_file(picture, marked=marked)
    assert picture.time is not None
    choice = Choice(picture.recording, picture.time, CHOSEN)
    return studio.still(choice, picture, step.hidden, marked=marked)
