"""Which pictures a step shows: the technician's own first, else the best moment of its footage."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction

from procbuilder.model.edition import Figure
from procbuilder.model.facts import StepRef, Time, facts
from procbuilder.model.footage import TYPED_MOMENT, Choice, Still
from procbuilder.model.marks import Picture, PictureState
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Step
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.moments import as_found as moment_as_found
from procbuilder.pipeline.moments import finished
from procbuilder.pipeline.stills import picture_file, still
from procbuilder.pipeline.trimming import Trimmed

FOUND_WINDOW = Fraction(3, 2)
"""Seconds at the beginning of a step among which the as-found picture is looked for."""

ORDER = {state: rank for rank, state in enumerate((PictureState.DONE, PictureState.DETAIL, PictureState.FOUND))}


def figures(step: Step, footage: Trimmed, material: Material) -> tuple[Figure, ...]:
    """The pictures of a step: finished state, details, then how it was found; none of one that is withheld.

    Raises:
        CannotRead: a recording or a picture file cannot be read.
    """
    if step.withheld:
        return ()
    typed = [picture for picture in step.pictures if picture.state is not PictureState.FOUND]
    chosen = [figure for picture in typed if (figure := _typed(step, picture, material))]
    if not any(figure.state == PictureState.DONE for figure in chosen):
        chosen += filter(None, [_automatic(step, footage, material)])
    others = [picture for picture in step.pictures if picture not in typed]
    found = [figure for picture in others if (figure := _typed(step, picture, material))]
    return tuple(sorted(chosen + found, key=lambda figure: ORDER[figure.state]))


def as_found(step: Step, footage: Trimmed, material: Material) -> Figure | None:
    """How it looked before the step: the technician's picture, else the best one of the step's beginning.

    Raises:
        CannotRead: a recording or a picture file cannot be read.
    """
    if step.withheld:
        return None
    for picture in step.pictures:
        if picture.state is PictureState.FOUND and (figure := _typed(step, picture, material)):
            return figure
    first = next(iter(footage.stretches), None)
    file = material.recordings.get(first.recording) if first else None
    if first is None or file is None:
        return None
    length = min(FOUND_WINDOW, first.seconds * Fraction(3, 10))
    choice = moment_as_found(replace(first, end=first.start + length), file, material.cache)
    made = still(choice, None, step.hidden, material)
    return Figure(made, "", PictureState.FOUND) if made else None


def _automatic(step: Step, footage: Trimmed, material: Material) -> Figure | None:
    """The best moment of the last footage of a step."""
    last = footage.ends[-1] if footage.stretches else None
    file = material.recordings.get(last.span.recording) if last else None
    if last is None or file is None:
        return None
    choice = finished(last.span, step.skips, file, material.cache)
    choice = replace(choice, reason=replace(choice.reason, moves=last.moves))
    made = still(choice, None, step.hidden, material)
    return Figure(made, "", PictureState.DONE) if made else None


def weak(ref: StepRef, step: Step, figures: Iterable[Figure]) -> Iterator[Problem]:
    """That the best picture of a step is weak, and what to do at the next filming."""
    for shown in (figure.still for figure in figures if figure.still.weak):
        assert shown.time is not None
        time = Time(shown.time, shown.recording)
        given = facts(step=ref, command=step.command, weak=shown.weak, time=time)
        yield Problem("weak-picture", Severity.ADVICE, step.place, given, shown.weak[0], subject=f"#{step.id}")


def _typed(step: Step, picture: Picture, material: Material) -> Figure | None:
    plain = _still(step, picture, material, marked=False)
    if plain is None:
        return None
    marks = picture.seen_marks
    marked = _still(step, picture, material, marked=True) if marks else None
    return Figure(plain, picture.shows, picture.state, marks, marked)


def _still(step: Step, picture: Picture, material: Material, *, marked: bool) -> Still | None:
    if picture.file:
        return picture_file(picture, material, marked=marked)
    assert picture.time is not None
    choice = Choice(picture.recording, picture.time, TYPED_MOMENT)
    return still(choice, picture, step.hidden, material, marked=marked)
