"""procbuilder log: practice times into the log of a procedure, and how its estimate moves."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from difflib import get_close_matches
from pathlib import Path

from procbuilder.infer.times import estimate
from procbuilder.keep.append import append
from procbuilder.keep.cache import Cache
from procbuilder.model.estimate import Estimate
from procbuilder.model.facts import facts
from procbuilder.model.origin import Place
from procbuilder.model.practice import HEADER, Run, last_kept
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Procedure
from procbuilder.pipeline.library import LOG, library_around, read_source
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.recordings import known
from procbuilder.pipeline.scanning import scanned
from procbuilder.read.practice import PracticeFile, read_practice
from procbuilder.read.text import TextFile, decode, read_file


@dataclass(frozen=True, slots=True)
class Logged:
    """What came of it. With a problem nothing was added."""

    log: Path
    before: Estimate
    after: Estimate
    added: int = 0
    known: int = 0
    """Rows that were in the log already and were not added again."""
    problems: tuple[Problem, ...] = ()
    outdated: tuple[int, ...] = ()
    """Lines of rows that are older than the workshop says it keeps them."""
    kept: str = ""
    """For how long, in its words."""


def log(folder: Path, file: Path, today: date | None = None) -> Logged:
    """Add the rows of a file to the log; all of them, or none when one is wrong.

    Args:
        folder: of the procedure.
        file: the rows to add.
        today: the day from which the age of rows is counted, and after which no row can be.

    Raises:
        NoProcedure, NotThere, NotText: there is nothing to work with.
        Busy, CannotWrite: the log is as it was.
    """
    source = read_source(folder)
    procedure, library = source.procedure, library_around(source)
    given = read_practice(read_file(file, str(file)))
    cache = Cache(folder)
    splits = scanned(Material(folder, procedure.steps, known(procedure, cache), cache)).splits
    before = estimate(procedure, source.runs, library.workshop, splits, library.beside(source))
    path = folder / LOG
    held = read_practice(read_file(path, str(path))).problems if path.is_file() else ()
    today = today or date.today()
    problems = (*given.problems, *_unfitting(given, file, procedure, today), *held)
    if problems:
        return Logged(path, before, before, problems=problems)
    added = append(path, HEADER, lambda content: _new(content, path, given.runs))
    now = read_source(folder)
    library = library_around(now)
    after = estimate(procedure, now.runs, library.workshop, splits, library.beside(now))
    kept = library.workshop.kept
    outdated = _outdated(now.runs, last_kept(kept, today))
    return Logged(path, before, after, len(added), len(given.runs) - len(added), outdated=outdated, kept=kept)


def _outdated(runs: Iterable[Run], first: date | None) -> tuple[int, ...]:
    """Lines of the rows before a day. Nothing is deleted: only a person takes rows out."""
    return tuple(run.place.line for run in runs if first and run.when[:10] < first.isoformat())


def _new(content: bytes, path: Path, runs: Iterable[Run]) -> list[str]:
    """Lines of the rows that the log does not hold yet; the same row twice in a file is two rows."""
    log = read_practice(TextFile(path.name, decode(content, path)))
    held = Counter(run.line for run in log.runs)
    lines = []
    for run in runs:
        if held[run.line]:
            held[run.line] -= 1
        else:
            lines.append(run.line)
    return lines


def _unfitting(given: PracticeFile, file: Path, procedure: Procedure, today: date) -> Iterator[Problem]:
    """Rows for another procedure, for steps that this one does not have, or of a day to come."""
    number = procedure.front["number"]
    if given.procedure and number and given.procedure != number:
        told = facts(procedure=given.procedure, number=number)
        yield Problem("practice-log", Severity.ASK, Place(str(file), 1), told, "other-procedure")
    ids = [step.id for step in procedure.steps]
    form = "no-step-of-many" if len(ids) > 5 else "no-step"
    for run in given.runs:
        if run.step not in ids:
            near = get_close_matches(run.step, ids, 1, cutoff=0.7)
            told = facts(step=run.step, near=near[0]) if near else facts(step=run.step, ids=tuple(ids[:5]))
            yield Problem("practice-log", Severity.ASK, run.place, told, "near-step" if near else form)
        if run.when[:10] > today.isoformat():
            yield Problem("practice-log", Severity.ASK, run.place, facts(when=run.when[:10], today=today), "to-come")
