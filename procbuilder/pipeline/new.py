"""procbuilder new: a procedure folder from recordings and a rough list, or from what the narration tells."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from procbuilder.infer.dictionary.wordbook import is_heard
from procbuilder.infer.hearing.draft import draft
from procbuilder.infer.hearing.filled import filled
from procbuilder.keep.cache import Cache
from procbuilder.keep.files import copy_whole, write_whole
from procbuilder.model.drafted import Draft
from procbuilder.model.facts import Phrase, facts
from procbuilder.model.fault import AlreadyThere, NotThere, TooMuchNarration
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Front, ListedStep, NamedFile, Narration, Procedure
from procbuilder.model.workshop import OwnWords
from procbuilder.pipeline.library import read_workshop_of
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.recordings import read
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.wording.drafts import draft_texts
from procbuilder.read.compose import as_proposed, compose, receipts
from procbuilder.read.front import recording_name
from procbuilder.read.headings import free_id
from procbuilder.read.procedure import FILE_NAME
from procbuilder.read.steplist import read_step_list
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import read_file

HEARD = "narration/heard.txt"
"""Where each sentence of a drafted narration went."""


@dataclass(frozen=True, slots=True)
class NewProcedure:
    """A new procedure folder."""

    folder: Path
    steps: int
    problems: tuple[Problem, ...]
    """Lines of the list that were not taken, and odd ones that were."""
    set_aside: int | None = None
    """Sentences of the narration that are in no step; None when it was not heard."""


def new(
    folder: Path,
    recordings: Sequence[Path],
    steps: Path | None,
    narration: Sequence[Path],
    progress: Progress,
    language: Language = ENGLISH,
) -> NewProcedure:
    """Copy the recordings and subtitles, and write a first procedure.md from the list.

    The narration fills the steps of the list, whose commands and order stay. Without a list the steps are
    drafted from it; where it tells of no work, every subtitle becomes a step to be sorted out. ``language`` is
    what the procedure is written in.

    Raises:
        AlreadyThere: the folder is not empty; nothing is ever written over.
        TooMuchNarration: there are more subtitle files than recordings.
        NotThere, NotText, CannotWrite: a file cannot be used.
    """
    _refuse(folder, recordings, steps, narration)
    films = _named(recordings)
    spoken = [
        replace(film, path=f"narration/{film.name}{path.suffix.lower()}")
        for film, path in zip(films, narration, strict=False)
    ]
    # A narration is heard in English so far, and steps are drafted in it.
    heard = bool(narration) and (is_heard(language.tag) or not steps)
    told = _told(narration, films, read_workshop_of(folder.resolve().parent)[0].words) if heard else None
    if told and not told.steps and not steps:
        told = None
    listed, problems = _listed(steps, narration, films)
    for source, target in zip([*recordings, *narration], [*films, *spoken], strict=True):
        progress(Phrase("copying", facts(file=source.name)), 0, 1)
        copy_whole(source, folder / target.path)
    found = read(Procedure(folder, Place(FILE_NAME, 1), Front(recordings=tuple(films))), Cache(folder), progress)
    durations = {recording.name: recording.duration for recording in found.facts}
    if told and steps:
        told = filled(as_proposed(listed, films, durations), told)
    text = compose(
        _title(folder),
        [] if told else listed,
        draft_texts(ENGLISH if told and not steps else language),
        recordings=films,
        narration=spoken,
        durations=durations,
        proposed=told.steps if told else (),
        before=told.before if told else (),
    )
    if told:
        write_whole(folder / HEARD, receipts(told.landings).encode())
    write_whole(folder / FILE_NAME, text.encode())
    aside = sum(landing.aside for landing in told.landings) if told else None
    return NewProcedure(folder, len(told.steps) if told else len(listed), (*problems, *found.problems), aside)


def _refuse(folder: Path, recordings: Sequence[Path], steps: Path | None, narration: Sequence[Path]) -> None:
    """Raise a fault for what cannot be used, before anything is written."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise AlreadyThere(folder)
    for path in [*recordings, *narration, *filter(None, [steps])]:
        if not path.is_file():
            raise NotThere(path)
    if len(narration) > len(recordings):
        raise TooMuchNarration(len(narration), len(recordings))


def _told(narration: Sequence[Path], films: Sequence[NamedFile], own: OwnWords) -> Draft:
    """What the narration tells of the work."""
    spoken = [
        Narration(film.name, read_subtitles(read_file(path))[0]) for path, film in zip(narration, films, strict=False)
    ]
    return draft(spoken, own=own)


def _named(recordings: Sequence[Path]) -> list[NamedFile]:
    """A name of its own for each recording, and its path in the new folder."""
    films: list[NamedFile] = []
    taken: dict[str, int] = {}
    for path in recordings:
        name = free_id(recording_name(path.stem), taken)
        films.append(NamedFile(name, f"recordings/{name}{path.suffix.lower()}", Place(FILE_NAME, 1)))
    return films


def _listed(
    steps: Path | None, narration: Sequence[Path], films: Sequence[NamedFile]
) -> tuple[list[ListedStep], list[Problem]]:
    """The steps of the list, else those drafted from the narration of each recording."""
    sources = [(steps, "")] if steps else [(path, film.name) for path, film in zip(narration, films, strict=False)]
    listed: list[ListedStep] = []
    problems: list[Problem] = []
    for path, name in sources:
        read_steps, found = read_step_list(read_file(path))
        listed += (replace(step, recording=step.recording or name) for step in read_steps)
        problems += found
    return [_placed(step, films, problems) for step in listed], problems


def _placed(step: ListedStep, films: Sequence[NamedFile], problems: list[Problem]) -> ListedStep:
    """The step with a recording that there is; with several, a list that names none is asked about."""
    names = [film.name for film in films]
    if step.recording in names:
        return step
    if len(names) > 1 or step.recording:
        told = facts(recording=step.recording, first=names[0], step=step.text, names=tuple(names))
        form = "no-recording" if step.recording else "which-recording"
        problems.append(Problem("step-list", Severity.ASK, step.place, told, form, 4))
    return replace(step, recording=names[0])


def _title(folder: Path) -> str:
    """A title from the folder name, to be put right by the technician."""
    name = folder.resolve().name.encode(errors="replace").decode()
    words = name.replace("-", " ").replace("_", " ")
    return words[:1].upper() + words[1:]
