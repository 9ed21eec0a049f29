"""The film of the whole job: its scenes with their footage, made once and kept in the cache."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from procbuilder.keep.cache import key_of, sha256_of
from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.film import Chapter, Film, Scene
from procbuilder.model.procedure import Cue, Narration, Procedure, Step
from procbuilder.model.timecode import Span
from procbuilder.pipeline.narration import said_in
from procbuilder.pipeline.recordings import Report
from procbuilder.pipeline.shipped import shipped
from procbuilder.pipeline.studio import Studio, hold
from procbuilder.publish.storyboard import identity, storyboard
from procbuilder.publish.tokens import panels

RECIPE = 3
"""Another number when the same scenes come out in another way: then the film is made anew."""

SHOWN = Fraction(4)
"""Seconds for which the picture of a step stands still that was not filmed."""


@dataclass(frozen=True, slots=True)
class _Shown:
    """What of a procedure a scene shows."""

    scene: Scene
    pictures: tuple[str, ...]
    """Published names."""
    each: Fraction
    """Seconds for which each of them stands still."""
    step: Step | None
    stretches: tuple[Span, ...]


def film(
    edition: Edition, procedure: Procedure, narration: tuple[Narration, ...], studio: Studio, report: Report, *,
    wanted: bool,
) -> Film | None:  # fmt: skip
    """The film of an edition; None when it is not wanted and there is none that still fits.

    Raises:
        Fault: it cannot be made.
    """
    scenes = list(_scenes(edition, procedure, studio))
    key = _key(scenes, identity(edition), studio)
    if not (wanted or studio.cache.made(key, ".mp4")):
        return None
    audible = any(recording.audio is not None for recording in edition.recordings)

    def make(target: Path) -> dict[str, Any]:
        from procbuilder.media.film import make

        def told(done: int) -> None:
            report(f"film: {scenes[done].scene.title}", done, len(scenes))

        filmed = [_filmed(scene, studio) for scene in scenes]
        made = make(filmed, identity(edition), target, audible=audible, told=told)
        return {
            "name": f"film-{sha256_of(target)[:16]}.mp4",
            "seconds": str(made.seconds),
            "chapters": [[str(chapter.start), chapter.title] for chapter in made.chapters],
            "footage": [str(begin) for begin in made.footage],
            "width": made.width,
            "height": made.height,
        }

    path, value = studio.cache.media(key, ".mp4", make)
    studio.files[value["name"]] = path
    begins = [Fraction(begin) for begin in value["footage"]]
    return Film(
        file=value["name"],
        seconds=Fraction(value["seconds"]),
        width=value["width"],
        height=value["height"],
        sound=audible,
        chapters=tuple(Chapter(Fraction(start), title) for start, title in value["chapters"]),
        captions=tuple(_said(narration, zip((scene.stretches for scene in scenes), begins, strict=True))),
    )


def _scenes(edition: Edition, procedure: Procedure, studio: Studio) -> Iterator[_Shown]:
    typed = {step.id: step for step in procedure.steps}
    worked = {step.id: step for step in edition.steps}
    for scene in storyboard(edition, panels(shipped("templates"))):
        if not scene.step:
            yield _Shown(scene, (), SHOWN, None, ())
            continue
        step = typed[scene.step]
        pictures = _pictures(worked[scene.step])
        stretches = studio.stretches(step) if worked[scene.step].clip else ()
        yield _Shown(scene, pictures, hold(len(pictures)) if stretches else SHOWN, step, stretches)


def _pictures(step: EditionStep) -> tuple[str, ...]:
    """The marked pictures of a step; the first one of a step without footage, marked or not."""
    marked = tuple(figure.marked.file for figure in step.figures if figure.marked)
    return marked or tuple(figure.still.file for figure in step.figures[:1] if not step.clip)


def _key(scenes: Iterable[_Shown], foot: str, studio: Studio) -> str:
    """All that the film depends on: words, pictures, footage and what is hidden in it."""
    parts: list[object] = [RECIPE, foot]
    for shown in scenes:
        recordings = (studio.found.recording(stretch.recording) for stretch in shown.stretches)
        hashes = [recording.sha256 for recording in recordings if recording]
        hidden = [(path.recording, path.boxes) for path in studio.hidden(shown.step)] if shown.step else []
        parts += [shown.scene, shown.pictures, shown.each, hashes, shown.stretches, hidden]
    return key_of(*parts)


def _filmed(shown: _Shown, studio: Studio) -> Any:
    from procbuilder.media.clips import Held
    from procbuilder.media.film import Filmed

    held = tuple(Held(studio.files[name], shown.each) for name in shown.pictures)
    return Filmed(shown.scene, held, studio.parts(shown.step, shown.stretches) if shown.step else ())


def _said(narration: tuple[Narration, ...], footage: Iterable[tuple[tuple[Span, ...], Fraction]]) -> Iterator[Cue]:
    """The captions of every scene, where its footage begins."""
    for stretches, begin in footage:
        yield from said_in(narration, stretches, begin)
