"""The film of the whole job: its scenes with their footage, made once and kept in the cache."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import Any

from procbuilder.keep.cache import key_of
from procbuilder.keep.records import restored, stored
from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.facts import Phrase, facts
from procbuilder.model.film import Film, Scene
from procbuilder.model.procedure import Cue, Narration, Step
from procbuilder.model.timecode import Span
from procbuilder.pipeline.clips import footage_key, hold, parts
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.narration import said_in
from procbuilder.pipeline.program import made_by
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.recordings import Recordings
from procbuilder.pipeline.shipped import shipped
from procbuilder.pipeline.trimming import Trimmed
from procbuilder.publish.storyboard import identity, storyboard
from procbuilder.publish.tokens import panels

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
    footage: Trimmed


def film(
    edition: Edition, material: Material, trimmed: Mapping[str, Trimmed], narration: tuple[Narration, ...],
    progress: Progress, *, wanted: bool,
) -> Film | None:  # fmt: skip
    """The film of an edition; None when it is not wanted and there is none that still fits.

    Raises:
        Fault: it cannot be made.
    """
    scenes = list(_scenes(edition, material.steps, trimmed))
    cache, key = material.cache, _key(scenes, identity(edition), material.recordings)
    if not (wanted or cache.made(key)):
        return None
    audible = any(recording.audio is not None for recording in edition.recordings)

    def make(target: Path) -> dict[str, Any]:
        from procbuilder.media.film import make

        def told(done: int) -> None:
            progress(Phrase("filming", facts(scene=scenes[done].scene.title)), done, len(scenes))

        filmed = [_filmed(scene, material) for scene in scenes]
        made = make(filmed, identity(edition), target, audible=audible, told=told)
        film = Film("", made.seconds, made.width, made.height, audible, made.chapters, ())
        return {"film": stored(film), "footage": stored(made.footage)}

    name, made = cache.media("film", ".mp4", made_by(__name__), key, make)
    begins = [Fraction(begin) for begin in made["footage"]]
    said = _said(narration, zip((scene.footage.stretches for scene in scenes), begins, strict=True))
    return replace(restored(Film, made["film"]), file=name, captions=tuple(said))


def _scenes(edition: Edition, steps: Sequence[Step], trimmed: Mapping[str, Trimmed]) -> Iterator[_Shown]:
    typed = {step.id: step for step in steps}
    worked = {step.id: step for step in edition.steps}
    for scene in storyboard(edition, panels(shipped("templates"))):
        if not scene.step:
            yield _Shown(scene, (), SHOWN, None, Trimmed())
            continue
        pictures = _pictures(worked[scene.step])
        footage = trimmed[scene.step] if worked[scene.step].clip else Trimmed()
        yield _Shown(scene, pictures, hold(len(pictures)) if footage.stretches else SHOWN, typed[scene.step], footage)


def _pictures(step: EditionStep) -> tuple[str, ...]:
    """The marked pictures of a step; the first one of a step without footage, marked or not."""
    marked = tuple(figure.marked.file for figure in step.figures if figure.marked)
    return marked or tuple(figure.still.file for figure in step.figures[:1] if not step.clip)


def _key(scenes: Iterable[_Shown], foot: str, recordings: Recordings) -> str:
    """All that the film depends on: words, pictures, footage and what is hidden in it."""
    parts: list[object] = [made_by(__name__), foot]
    for shown in scenes:
        parts += [shown.scene, shown.pictures, shown.each, *footage_key(shown.footage, recordings)]
    return key_of(*parts)


def _filmed(shown: _Shown, material: Material) -> Any:
    from procbuilder.media.clips import Held
    from procbuilder.media.film import FilmedScene

    held = tuple(Held(material.cache.file(name), shown.each) for name in shown.pictures)
    return FilmedScene(shown.scene, held, parts(shown.step, shown.footage, material.recordings) if shown.step else ())


def _said(narration: tuple[Narration, ...], footage: Iterable[tuple[tuple[Span, ...], Fraction]]) -> Iterator[Cue]:
    """The captions of every scene, where its footage begins."""
    for stretches, begin in footage:
        yield from said_in(narration, stretches, begin)
