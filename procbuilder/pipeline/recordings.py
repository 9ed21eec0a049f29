"""The recordings of a procedure: found, hashed, and their facts read once."""

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from fractions import Fraction
from pathlib import Path
from typing import Any

from procbuilder.keep.cache import Cache
from procbuilder.model.fault import Unreadable
from procbuilder.model.footage import Candidate, Choice, Recording
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import NamedFile, Procedure
from procbuilder.pipeline.paths import find

FACTS = "facts-1"
"""Kind of cached facts; another number when probing reads something else."""

Report = Callable[[str, int, int], None]
"""Called with (what is done, how much of it is done, how much there is)."""


@dataclass(frozen=True, slots=True)
class Found:
    """The recordings that can be used, those that cannot, and why."""

    recordings: tuple[Recording, ...] = ()
    paths: tuple[tuple[str, Path], ...] = ()
    """(name, path) of each usable recording."""
    unread: tuple[str, ...] = ()
    """Names of recordings whose facts are not known yet."""
    problems: tuple[Problem, ...] = ()

    def path(self, name: str) -> Path | None:
        """The file of a recording; None when it cannot be used."""
        return dict(self.paths).get(name)

    def recording(self, name: str) -> Recording | None:
        """The facts of a recording; None when they are not known."""
        return next((recording for recording in self.recordings if recording.name == name), None)


def known(procedure: Procedure, cache: Cache) -> Found:
    """What is known without opening a recording: for checking."""
    return _gather(procedure, lambda named, path: _cached(cache, named, path))


def read(procedure: Procedure, cache: Cache, report: Report) -> Found:
    """The facts of every recording; files that did not change are not opened again."""
    names = [named.name for named in procedure.front.recordings]

    def facts(named: NamedFile, path: Path) -> Recording:
        report(f"reading {named.path}", names.index(named.name), len(names))
        return _cached(cache, named, path) or _probe(cache, named, path)

    return _gather(procedure, facts)


def _gather(procedure: Procedure, facts: Callable[[NamedFile, Path], Recording | None]) -> Found:
    found = Found()
    for named in procedure.front.recordings:
        path = find(procedure.folder, named)
        if isinstance(path, Problem):
            found = replace(found, problems=(*found.problems, path))
            continue
        try:
            recording = facts(named, path)
        except Unreadable as fault:
            what, _, instead = str(fault).replace(str(path), named.path).partition(" – ")
            problem = Problem(Severity.STOP, named.place, what, instead, "unreadable", 4)
            found = replace(found, problems=(*found.problems, problem))
            continue
        found = replace(
            found,
            paths=(*found.paths, (named.name, path)),
            recordings=found.recordings + ((recording,) if recording else ()),
            unread=found.unread + (() if recording else (named.name,)),
        )
    return found


def _cached(cache: Cache, named: NamedFile, path: Path) -> Recording | None:
    sha256 = cache.known_hash(path)
    facts = cache.get(FACTS, sha256) if sha256 else None
    return replace(restored(Recording, facts), name=named.name, path=named.path) if facts else None


def _probe(cache: Cache, named: NamedFile, path: Path) -> Recording:
    from procbuilder.media.probe import probe

    sha256 = cache.hash(path)
    recording = probe(path, name=named.name, shown=named.path, sha256=sha256)
    cache.put(FACTS, sha256, stored(recording))
    return recording


def stored(record: Recording | Choice | Candidate) -> dict[str, Any]:
    """A flat record as JSON; exact times become text such as ``1001/30``."""
    values = {entry.name: getattr(record, entry.name) for entry in fields(record)}
    return {name: str(value) if isinstance(value, Fraction) else value for name, value in values.items()}


def restored(kind: type[Any], data: dict[str, Any]) -> Any:
    """The record that ``stored`` wrote."""
    values = {}
    for entry in fields(kind):
        value = data[entry.name]
        exact = "Fraction" in str(entry.type) and value is not None
        values[entry.name] = Fraction(value) if exact else tuple(value) if isinstance(value, list) else value
    return kind(**values)
