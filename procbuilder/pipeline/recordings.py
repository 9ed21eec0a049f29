"""The recordings of a procedure: found, hashed, and their facts read once."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path

from procbuilder.keep.cache import Cache, key_of
from procbuilder.keep.records import restored, stored
from procbuilder.model.facts import Phrase
from procbuilder.model.fault import CannotRead
from procbuilder.model.footage import PacketFacts, Recording
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import NamedFile, Procedure
from procbuilder.model.timecode import Span
from procbuilder.pipeline.paths import find
from procbuilder.pipeline.program import made_by
from procbuilder.pipeline.progress import Progress

Facts = tuple[Recording, PacketFacts]


@dataclass(frozen=True, slots=True)
class RecordingFile:
    """A recording that can be used."""

    path: Path
    facts: Recording
    film: PacketFacts
    """What its packets tell."""


@dataclass(frozen=True, slots=True)
class Recordings:
    """The recordings that can be used, those that cannot, and why."""

    files: tuple[RecordingFile, ...] = ()
    """In the order in which the procedure names them."""
    unread: tuple[str, ...] = ()
    """Names of recordings whose facts are not known yet."""
    problems: tuple[Problem, ...] = ()

    @property
    def facts(self) -> tuple[Recording, ...]:
        """Those of each usable recording."""
        return tuple(file.facts for file in self.files)

    def get(self, name: str) -> RecordingFile | None:
        """A recording by its name; None when it cannot be used."""
        return next((file for file in self.files if file.facts.name == name), None)

    def usable(self, span: Span) -> Span | None:
        """The part of a span that its recording has; None when there is none."""
        file = self.get(span.recording)
        if file is None or span.start >= min(span.end, file.facts.duration):
            return None
        return replace(span, end=min(span.end, file.facts.duration))


def known(procedure: Procedure, cache: Cache) -> Recordings:
    """What is known without opening a recording: for checking."""
    return _gather(procedure, lambda named, path: _cached(cache, named, path))


def read(procedure: Procedure, cache: Cache, progress: Progress, *, thorough: bool = False) -> Recordings:
    """The facts of every recording, when ``thorough`` of the largest too; unchanged files are not opened again."""
    names = [named.name for named in procedure.front.recordings]

    def facts(named: NamedFile, path: Path) -> Facts:
        progress(Phrase("reading", (("file", named.path),)), names.index(named.name), len(names))
        return _cached(cache, named, path) or _probe(cache, named, path, thorough=thorough)

    return _gather(procedure, facts)


@dataclass(frozen=True, slots=True)
class Filmed:
    """When a recording was filmed, by the clock of its camera; for the terminal alone, never to be published."""

    recording: str
    begun: datetime
    ended: datetime


def filmed(recordings: Recordings) -> tuple[Filmed, ...]:
    """The recordings whose cameras noted when they began."""
    noted = ((file, datetime.fromisoformat(file.film.begun)) for file in recordings.files if file.film.begun)
    return tuple(
        Filmed(file.facts.name, begun, begun + timedelta(seconds=round(file.facts.duration))) for file, begun in noted
    )


def _gather(procedure: Procedure, facts: Callable[[NamedFile, Path], Facts | None]) -> Recordings:
    files: list[RecordingFile] = []
    unread: list[str] = []
    problems: list[Problem] = []
    for named in procedure.front.recordings:
        path = find(procedure.folder, named)
        if isinstance(path, Problem):
            problems.append(path)
            continue
        try:
            known = facts(named, path)
        except CannotRead as fault:
            told = fault.named(named.path)
            problems.append(Problem("unreadable", Severity.STOP, named.place, told, fault.form, 4))
            continue
        if known:
            files.append(RecordingFile(path, *known))
        else:
            unread.append(named.name)
    return Recordings(tuple(files), tuple(unread), tuple(problems))


def _cached(cache: Cache, named: NamedFile, path: Path) -> Facts | None:
    sha256 = cache.known_hash(path)
    facts = cache.get("facts", _key(sha256)) if sha256 else None
    if not facts:
        return None
    recording = replace(restored(Recording, facts["recording"]), name=named.name, path=named.path)
    return recording, restored(PacketFacts, facts["film"])


def _probe(cache: Cache, named: NamedFile, path: Path, *, thorough: bool) -> Facts:
    from procbuilder.media.probe import probe

    sha256 = cache.hash(path)
    probed = probe(path, name=named.name, shown=named.path, sha256=sha256, thorough=thorough)
    cache.put("facts", _key(sha256), stored(probed))
    return probed.recording, probed.film


def _key(sha256: str) -> str:
    return key_of(made_by(__name__), sha256)
