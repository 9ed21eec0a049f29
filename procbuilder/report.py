"""What the commands say: problems, outcome, and what is worth a look first."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from procbuilder.keep.records import stored
from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.estimate import Basis, StepTime
from procbuilder.model.facts import StepRef, Term, Time
from procbuilder.model.ledger import Balance, Entry
from procbuilder.model.problem import Problem, Severity, blocking, stops
from procbuilder.model.questions import MOST, questions
from procbuilder.model.readability import Counts
from procbuilder.model.signal import Signal
from procbuilder.pipeline.build import Built
from procbuilder.pipeline.check import Checked
from procbuilder.pipeline.library import Failed
from procbuilder.pipeline.log import Logged
from procbuilder.pipeline.new import HEARD, Made
from procbuilder.pipeline.recordings import Filmed
from procbuilder.pipeline.refit import Refitted
from procbuilder.publish.filmed import remark
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.printable import first_seen
from procbuilder.publish.terms import OPENINGS
from procbuilder.publish.terms import way as told_way
from procbuilder.publish.timewords import headline, sentences
from procbuilder.publish.wording.commands import clause, tell
from procbuilder.publish.wording.faults import said_fault
from procbuilder.publish.wording.gaps import say
from procbuilder.publish.wording.problems import said
from procbuilder.publish.wording.topics import more
from procbuilder.read.procedure import FILE_NAME


def problem_lines(problems: Iterable[Problem], language: Language = ENGLISH) -> list[str]:
    """One line a problem of a file that is not kept, its place first so that an editor can jump to it."""
    return [f"{one.place}: {language.text(one.severity)}: {said(one, language)}" for one in problems]


def _line(problem: Problem, folder: Path, language: Language) -> str:
    """The same of a procedure; in brackets stands what an answer names."""
    severity = language.text(problem.severity)
    settles = f" [{problem.question}]" if problem.subject else ""
    return f"{folder / problem.place.file}:{problem.place.line}: {severity}: {said(problem, language)}{settles}"


def checked_lines(
    problems: Iterable[Problem], folder: Path, language: Language = ENGLISH, *, everything: bool = False
) -> list[str]:
    """All problems: stops, then advice, and last the questions, of which not more than fit in a short sitting."""
    every = tuple(problems)
    lines = [_line(one, folder, language) for one in every if one.severity is not Severity.ASK]
    asked = questions(every, None if everything else MOST)
    if asked.first:
        lines += [tell("questions", language), *(_line(one, folder, language) for one in asked.first)]
    if asked.more:
        lines.append(tell("more-questions", language, more=more(asked.more, language), folder=folder))
    if count := sum(problem.severity is Severity.ASK for problem in blocking(every)):
        lines.append(tell("must-be-answered", language, count=count))
    return lines


def known_lines(checked: Checked, language: Language = ENGLISH) -> list[str]:
    """What a check could not look at, how the text reads, and how much is wrong."""
    folder = checked.folder
    return [
        *(tell("unread", language, recording=name, folder=folder) for name in checked.unread),
        *([_reading(checked.reading, language)] if checked.reading else []),
        *(tell("unscanned", language, recording=name, folder=folder) for name in checked.unscanned),
        *(filmed_line(one, language) for one in checked.filmed),
        summary(checked.problems, language),
    ]


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


def _reading(counts: Counts, language: Language) -> str:
    each = counts.words / counts.sentences
    return tell("reading-ease", language, words=counts.words, each=each, ease=counts.ease, grade=max(counts.grade, 0.0))


def filmed_line(filmed: Filmed, language: Language = ENGLISH) -> str:
    """When a recording was filmed, by its clock."""
    begins, ends = f"{filmed.begun:%H:%M:%S}", f"{filmed.ended:%H:%M:%S} {filmed.begun:%Z}".rstrip()
    return tell("filmed", language, recording=filmed.recording, day=filmed.begun.date(), begins=begins, ends=ends)


def problem_data(checked: Checked, language: Language = ENGLISH, *, alone: bool = True) -> list[dict[str, Any]]:
    """The problems for a machine, the facts and the sentences made of them; among several procedures also of which."""
    return [
        {
            "severity": problem.severity.value,
            "file": problem.place.file if alone else f"{checked.folder.name}/{problem.place.file}",
            "line": problem.place.line,
            "what": said(problem, language).what,
            "instead": said(problem, language).instead,
            "rule": problem.rule,
            "form": problem.form,
            "subject": problem.subject,
            "question": problem.question,
            "danger": problem.danger,
            "blocks": problem.blocks,
            "steps": sorted(problem.steps),
            "values": {name: stored(value) for name, value in problem.facts},
            "lines": [say(line, language) for line in problem.lines],
        }
        for problem in checked.problems
    ]


def summary(problems: Iterable[Problem], language: Language = ENGLISH) -> str:
    """How many problems of each severity there are."""
    severities = [problem.severity for problem in problems]
    counts = ((severities.count(severity), severity) for severity in Severity)
    told = [f"{count} {language.text(name)}" for count, name in counts if count]
    return ", ".join(told) or tell("nothing-wrong", language)


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


def highlights(edition: Edition, language: Language = ENGLISH) -> list[str]:
    """What nobody sees in the film: items still open, dangers that stand, torques to be looked up."""
    lines = [_open(entry, language) for entry in edition.ledger.having(Balance.OPEN, Balance.ASSUMED)]
    lines += _standing(edition.steps, language)
    for row in edition.torques:
        look_in = row.look_in
        source = clause("look-in", language, document=look_in) if look_in else clause("look-it-up", language)
        step = StepRef(row.step, row.number)
        form = "torque" if row.value else "torque-blank"
        lines.append(tell(form, language, item=row.item, step=step, value=str(row.value), source=source))
    return [edition.title, f"  {edition.item}", *(f"  {line}" for line in lines)]


def made_lines(made: Made, language: Language = ENGLISH) -> list[str]:
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


def _open(entry: Entry, language: Language) -> str:
    moment, way = entry.opened[-1], told_way(entry.way, language)
    time = Time(moment.time, moment.recording) if moment.time is not None else None
    assumed = entry.balance is Balance.ASSUMED
    return tell(
        "assumed-closed" if assumed else "still-open",
        language,
        item=entry.item,
        opening=Term(OPENINGS[entry.opening]),
        film=clause("filmed-at", language, time=time) if time else clause("not-filmed", language),
        step=StepRef(moment.step, moment.number),
        closing=StepRef(entry.closed[-1].step, entry.closed[-1].number) if assumed else "",
        way=f", {way}" if way else "",
    )


def _standing(steps: Iterable[EditionStep], language: Language) -> list[str]:
    """Each danger that outlasts its step, with the steps at which it still stands."""
    numbers: dict[tuple[Signal, str], list[int]] = {}
    for step in steps:
        for hazard in step.standing.hazards:
            numbers.setdefault((hazard.signal, hazard.hazard), []).append(step.number)
    return [
        tell(
            "still-dangerous", language,
            runs=_runs(found, language), count=len(found), signal=Term(signal), hazard=hazard,
        )
        for (signal, hazard), found in numbers.items()
    ]  # fmt: skip


def _runs(numbers: list[int], language: Language) -> tuple[str, ...]:
    """``4``, ``3 to 33``, ``3 to 7`` and ``12``; numbers rise."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return tuple(
        str(run[0]) if len(run) == 1 else clause("from-to", language, first=run[0], last=run[-1]) for run in runs
    )
