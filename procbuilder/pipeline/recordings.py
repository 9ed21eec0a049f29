"""The recordings of a procedure: found, hashed, and their facts read once."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path

from procbuilder.keep.cache import Cache
from procbuilder.keep.records import restored, stored
from procbuilder.model.fault import Unreadable
from procbuilder.model.footage import PacketFacts, Recording
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import NamedFile, Procedure
from procbuilder.model.timecode import Span
from procbuilder.pipeline.paths import find

FACTS = "facts-4"
"""Kind of cached facts; another number when probing reads something else."""

Facts = tuple[Recording, PacketFacts]

Report = Callable[[str, int, int], None]
"""Called with (what is done, how much of it is done, how much there is)."""


@dataclass(frozen=True, slots=True)
class Found:
    """The recordings that can be used, those that cannot, and why."""

    recordings: tuple[Recording, ...] = ()
    paths: tuple[tuple[str, Path], ...] = ()
    """(name, path) of each usable recording."""
    films: tuple[tuple[str, PacketFacts], ...] = ()
    """(name, what its packets tell) of the recordings whose facts are known."""
    unread: tuple[str, ...] = ()
    """Names of recordings whose facts are not known yet."""
    problems: tuple[Problem, ...] = ()

    def path(self, name: str) -> Path | None:
        """The file of a recording; None when it cannot be used."""
        return dict(self.paths).get(name)

    def recording(self, name: str) -> Recording | None:
        """The facts of a recording; None when they are not known."""
        return next((recording for recording in self.recordings if recording.name == name), None)

    def film(self, name: str) -> PacketFacts | None:
        """What the packets of a recording tell; None when its facts are not known."""
        return dict(self.films).get(name)

    def usable(self, span: Span) -> Span | None:
        """The part of a span that its recording has; None when there is none."""
        recording = self.recording(span.recording)
        if recording is None or span.start >= min(span.end, recording.duration):
            return None
        return replace(span, end=min(span.end, recording.duration))


def known(procedure: Procedure, cache: Cache) -> Found:
    """What is known without opening a recording: for checking."""
    return _gather(procedure, lambda named, path: _cached(cache, named, path))


def read(procedure: Procedure, cache: Cache, report: Report) -> Found:
    """The facts of every recording; files that did not change are not opened again."""
    names = [named.name for named in procedure.front.recordings]

    def facts(named: NamedFile, path: Path) -> Facts:
        report(f"reading {named.path}", names.index(named.name), len(names))
        return _cached(cache, named, path) or _probe(cache, named, path)

    return _gather(procedure, facts)


def filmed(found: Found) -> tuple[str, ...]:
    """``strip: filmed 2026-03-04 10:00:00 to 10:12:30 by the clock of its camera``; for the terminal alone."""
    lines = []
    for recording in found.recordings:
        film = found.film(recording.name)
        if film and film.begun:
            begun = datetime.fromisoformat(film.begun)
            ended = begun + timedelta(seconds=round(recording.duration))
            when = f"{begun:%Y-%m-%d %H:%M:%S} to {ended:%H:%M:%S} {begun:%Z}".rstrip()
            lines.append(f"{recording.name}: filmed {when}, by the clock of its camera")
    return tuple(lines)


def _gather(procedure: Procedure, facts: Callable[[NamedFile, Path], Facts | None]) -> Found:
    found = Found()
    for named in procedure.front.recordings:
        path = find(procedure.folder, named)
        if isinstance(path, Problem):
            found = replace(found, problems=(*found.problems, path))
            continue
        try:
            known = facts(named, path)
        except Unreadable as fault:
            what, _, instead = str(fault).replace(str(path), named.path).partition(" – ")
            problem = worded(Severity.STOP, named.place, what, instead, "unreadable", 4)
            found = replace(found, problems=(*found.problems, problem))
            continue
        found = replace(
            found,
            paths=(*found.paths, (named.name, path)),
            recordings=found.recordings + ((known[0],) if known else ()),
            films=found.films + (((named.name, known[1]),) if known else ()),
            unread=found.unread + (() if known else (named.name,)),
        )
    return found


def _cached(cache: Cache, named: NamedFile, path: Path) -> Facts | None:
    sha256 = cache.known_hash(path)
    facts = cache.get(FACTS, sha256) if sha256 else None
    if not facts:
        return None
    recording = replace(restored(Recording, facts["recording"]), name=named.name, path=named.path)
    return recording, restored(PacketFacts, facts["film"])


def _probe(cache: Cache, named: NamedFile, path: Path) -> Facts:
    from procbuilder.media.probe import probe

    sha256 = cache.hash(path)
    probed = probe(path, name=named.name, shown=named.path, sha256=sha256)
    cache.put(FACTS, sha256, stored(probed))
    return probed.recording, probed.film
