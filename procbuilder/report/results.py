"""What the commands say of what they made."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from procbuilder.model.estimate import Basis, StepTime
from procbuilder.model.facts import StepRef, Term, Time
from procbuilder.model.problem import stops
from procbuilder.pipeline.build import Built
from procbuilder.pipeline.check import Checked
from procbuilder.pipeline.library import Failed
from procbuilder.pipeline.log import Logged
from procbuilder.pipeline.new import HEARD, NewProcedure
from procbuilder.pipeline.refit import Refitted
from procbuilder.publish.filmed import remark
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.printable import first_seen
from procbuilder.publish.timewords import headline, sentences
from procbuilder.publish.wording.commands import clause, tell
from procbuilder.publish.wording.faults import said_fault
from procbuilder.read.procedure import FILE_NAME
from procbuilder.report.problems import filmed_line, summary


def exit_code(done: Built | Checked | Failed) -> int:
    """0 done, 1 something must stop an approval; that of its fault when it failed."""
    return done.fault.code if isinstance(done, Failed) else int(bool(stops(done.problems)))


def library_lines(results: Sequence[Built | Checked | Failed], language: Language = ENGLISH) -> list[str]:
    """How many procedures of a library came out how, and on what each failed."""
    failed = [each for each in results if isinstance(each, Failed)]
    stopped = sum(exit_code(each) for each in results if not isinstance(each, Failed))
    form = "library-failed" if failed else "library"
    good = len(results) - stopped - len(failed)
    told = tell(form, language, count=len(results), good=good, stopped=stopped, failed=len(failed))
    return [told, *(f"{each.folder.name}: {said_fault(each.fault, language)}" for each in failed)]


def outcome(built: Built, language: Language = ENGLISH) -> list[str]:
    """Where the results are, and how the procedure stands."""
    edition = built.edition
    lines = [f"{each.path}: {remark(told, language)}" for each in edition.recordings for told in each.remarks]
    lines += [filmed_line(one, language) for one in built.filmed]
    lines += _unprintable(built, language)
    count = 0 if edition.status == "withdrawn" else len(stops(edition.problems))
    status, told = Term(edition.status), summary(edition.problems, language)
    form = "status-because" if count else "status"
    return [
        *lines,
        tell(form, language, status=status, count=count, summary=told),
        tell("page", language, path=built.page),
        *([tell("pdf", language, path=built.print)] if built.print else []),
        *_film(built, language),
    ]


def _unprintable(built: Built, language: Language) -> Iterator[str]:
    """The characters that the PDF shows as an empty box, each with the first step that has it."""
    for number, signs in first_seen(built.edition, built.unprintable):
        shown = " ".join(sign if sign.isprintable() else f"U+{ord(sign):04X}" for sign in signs)
        if number:
            step = StepRef(built.edition.steps[number - 1].id, number)
            yield tell("unprintable-at", language, step=step, signs=shown)
        else:
            yield tell("unprintable", language, signs=shown)


def _film(built: Built, language: Language) -> list[str]:
    if built.film and built.edition.film:
        length = Time(Fraction(round(built.edition.film.seconds)))
        return [tell("film", language, path=built.film, length=length)]
    return [tell("film-dropped", language, folder=built.folder)] if built.film_dropped else []


def made_lines(made: NewProcedure, language: Language = ENGLISH) -> list[str]:
    """What a new folder holds, and what comes next."""
    folder = made.folder
    lines = [tell("made", language, path=folder / FILE_NAME, count=made.steps, folder=folder)]
    if made.set_aside is not None:
        lines.append(tell("heard", language, path=folder / HEARD, count=made.set_aside))
    return lines


def refit_lines(made: Refitted, language: Language = ENGLISH) -> list[str]:
    """How many steps were proposed, and how each is accepted."""
    if not made.steps:
        return [tell("nothing-derived", language, path=made.file)]
    lines = [tell("derived", language, path=made.file, count=made.steps)]
    if made.to_decide:
        lines.append(tell("to-decide", language, count=made.to_decide))
    return [*lines, tell("accept", language)]


def log_lines(logged: Logged, language: Language = ENGLISH) -> list[str]:
    """How many rows were added, and the estimate before and after them, step by step where it moved."""
    known = clause("known-already", language, count=logged.known) if logged.known else ""
    before, after = logged.before, logged.after
    lines = [tell("rows-added", language, count=logged.added, log=logged.log, known=known)]
    if logged.added:
        lines.append(tell("before", language, estimate=headline(before, language)))
        lines.append(tell("after", language, estimate=headline(after, language)))
    lines += sentences(after, language)[1:]
    if logged.outdated:
        lines.append(tell("outdated", language, kept=logged.kept, rows=logged.outdated, log=logged.log))
    pairs = zip(before.steps, after.steps, strict=True)
    moved = ((old, _minutes(old, language), _minutes(new, language)) for old, new in pairs if old != new)
    return lines + [f"  {step.step}: {old} → {new}" for step, old, new in moved]


def _minutes(time: StepTime, language: Language) -> str:
    """``1.8–3.1 min, likely 2.4 (4 logged runs)``"""
    if time.basis is Basis.NOTHING:
        return clause(time.basis, language)
    best = time.evidence[0]
    logged = best.basis is Basis.LOG
    source = clause("logged-runs", language, count=best.count) if logged else clause(best.basis, language)
    form = "one-time" if time.low == time.high else "range"
    return clause(form, language, low=time.low, high=time.high, likely=time.likely, source=source)
