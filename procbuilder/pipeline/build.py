"""procbuilder build: from a procedure folder to its page, PDF and data.

read → probe and scan (cached) → infer → trim and choose stills (cached) → check → cut clips, make the film (cached)
→ publish
"""

import os
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from procbuilder.check.settled import unsettled
from procbuilder.infer.lexicon import load
from procbuilder.keep.cache import Cache
from procbuilder.keep.files import finish_together, is_unfinished
from procbuilder.keep.lock import locked
from procbuilder.model.edition import Edition
from procbuilder.model.facts import Phrase
from procbuilder.model.fault import Busy
from procbuilder.model.problem import Problem, worst_first
from procbuilder.model.workshop import Qualification
from procbuilder.pipeline.assemble import assemble
from procbuilder.pipeline.clips import cut
from procbuilder.pipeline.examine import check, examine
from procbuilder.pipeline.film import film
from procbuilder.pipeline.library import Library, Source, library_around, read_source
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.narration import read_narration
from procbuilder.pipeline.paths import OUT
from procbuilder.pipeline.pictures import choose
from procbuilder.pipeline.progress import Progress, silent
from procbuilder.pipeline.publishing import publish
from procbuilder.pipeline.recordings import Filmed, filmed, read
from procbuilder.pipeline.reserved import qualification, without_methods, without_words
from procbuilder.pipeline.scanning import scan
from procbuilder.pipeline.thorough import look_through
from procbuilder.pipeline.trimming import trim
from procbuilder.read.headings import slug


@dataclass(frozen=True, slots=True)
class Built:
    """What a build has made."""

    folder: Path
    """Of the procedure."""
    out: Path
    """The folder with page, PDF and data."""
    edition: Edition
    unprintable: tuple[str, ...]
    """Characters that the PDF shows as an empty box."""
    problems: tuple[Problem, ...]
    """All problems, worst first; those of the edition say nothing of steps reserved by law."""
    film_dropped: bool = False
    """There was a film, which does not fit any more."""
    filmed: tuple[Filmed, ...] = ()
    """When each recording was filmed, by its clock; never to be published."""

    @property
    def page(self) -> Path:
        """The page to open."""
        return self.out / "index.html"

    @property
    def film(self) -> Path | None:
        """The film of the whole job."""
        return self.out / "media" / self.edition.film.file if self.edition.film else None

    @property
    def print(self) -> Path | None:
        """The PDF; None when it could not be made."""
        path = self.out / "procedure.pdf"
        return path if path.is_file() else None


@dataclass(frozen=True, slots=True)
class Options:
    """What a build makes besides the usual, and how."""

    reader: str = ""
    """A qualification, for an edition that shows how the steps reserved to it are done; it gets a folder of its own,
    so that the edition for everybody never holds them."""
    also: tuple[str, ...] = ()
    """Names of outputs that are made on request only."""
    film: bool = False
    """The film of the whole job too; one that was made before stays as long as it fits."""
    thorough: bool = False
    """Look for cuts in every picture of the steps, not only where one is suspected."""


USUAL = Options()


def build(folder: Path, progress: Progress = silent, options: Options = USUAL, today: date | None = None) -> Built:
    """Build one procedure; the old output stays whole until the new one is.

    Args:
        folder: of the procedure.
        progress: is told how far it is.
        options: what to make.
        today: the day on which the qualification of the reader must still be valid.

    Raises:
        NotQualified: the workshop file does not name this qualification, or its last day is over.
        Fault: it cannot be built at all; what is wrong in the text is no fault but a problem.
    """
    source = read_source(folder)
    library = library_around(source)
    return build_source(source, library, reader_of(source, library, options, today), options, progress)


def reader_of(source: Source, library: Library, options: Options, today: date | None) -> Qualification | None:
    """For whom an edition is; None: for everybody.

    Raises:
        NotQualified: see ``build``.
    """
    if not options.reader:
        return None
    words = load(source.procedure.front["language"]).words
    return qualification(options.reader, library.workshop, words, today or date.today())


def build_source(
    source: Source, library: Library, reader: Qualification | None, options: Options, progress: Progress
) -> Built:
    """Build a procedure that has been read: the way of the data, from stage to stage.

    Raises:
        Fault: it cannot be built; the old output is whole.
    """
    folder, procedure = source.folder, source.procedure
    with locked(folder):
        out = folder / (f"{OUT}-{slug(reader.name)}" if reader else OUT)
        finish_together(out)
        cache = Cache(folder)
        narration, narration_problems = read_narration(procedure)
        recordings = read(procedure, cache, progress, thorough=options.thorough)
        material = Material(folder, procedure.steps, recordings, cache)
        if options.thorough:
            look_through(material, progress)
        footage = scan(material, progress)
        examined = examine(source, narration, recordings, footage, library)
        shown = without_methods(examined, reader)
        trimmed = trim(shown.procedure.steps, material, footage.cuts, progress)
        pictures = choose(shown, trimmed, material, progress)
        broken = check(examined)
        clips = cut(shown.procedure.steps, trimmed, pictures, material, progress)
        found = (
            *source.problems, *library.problems, *narration_problems, *recordings.problems, *broken,
            *pictures.problems, *clips.problems,
        )  # fmt: skip
        problems = worst_first(unsettled(procedure, found))
        told = without_words(problems, procedure, shown.reserved)
        edition = assemble(shown, trimmed, pictures, clips, told, reader)
        edition = replace(edition, film=film(edition, material, trimmed, narration, progress, wanted=options.film))
        progress(Phrase("writing"), 1, 1)
        had_film = any((out / "media").glob("film-*.mp4"))
        published = publish(edition, out, epoch(), cache, options.also)
        problems = worst_first((*problems, *published.problems))
        dropped = had_film and edition.film is None
        return Built(folder, out, edition, published.unprintable, problems, dropped, filmed(recordings))


def finish(out: Path) -> None:
    """Make whole what a killed build had begun to put out; a build that is at work does so itself."""
    if is_unfinished(out):
        with suppress(Busy), locked(out.parent):
            finish_together(out)


def epoch() -> int:
    """Seconds since 1970 that the PDF carries as its date: SOURCE_DATE_EPOCH, else 0.

    PDF/A demands a date, and the day of the build would give other bytes each day.
    """
    text = os.environ.get("SOURCE_DATE_EPOCH", "")
    return int(text) if text.isdigit() else 0
