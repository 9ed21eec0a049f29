"""What the commands say: problems, outcome, and what is worth a look first."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.estimate import Basis, StepTime
from procbuilder.model.ledger import Balance, Entry
from procbuilder.model.problem import Problem, Severity, blocking, stops
from procbuilder.model.questions import MOST, questions
from procbuilder.model.readability import Counts
from procbuilder.model.timecode import format_time
from procbuilder.pipeline.build import Built
from procbuilder.pipeline.check import Checked
from procbuilder.pipeline.library import Failed
from procbuilder.pipeline.log import Logged
from procbuilder.pipeline.refit import Refitted
from procbuilder.publish.filmed import remark
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.spoken import spoken
from procbuilder.publish.terms import OPENINGS
from procbuilder.publish.terms import way as told_way
from procbuilder.publish.timewords import headline, sentences
from procbuilder.publish.wording.faults import said_fault
from procbuilder.publish.wording.problems import said
from procbuilder.publish.wording.topics import more
from procbuilder.publish.words import BASIS_WORDS

QUESTIONS = (
    'Questions that only you can answer, the worst first. Type the line that is shown; "look up" is an answer too, '
    'and "- Refused: the words in brackets | why" settles what does not matter here:'
)


def problem_lines(problems: Iterable[Problem], folder: Path | None = None) -> list[str]:
    """One line a problem, its place first so that an editor can jump to it."""
    return [_line(problem, folder) for problem in problems]


def _line(problem: Problem, folder: Path | None) -> str:
    file = folder / problem.place.file if folder else problem.place.file
    settles = f" [{problem.question}]" if problem.subject else ""
    return f"{file}:{problem.place.line}: {problem.severity}: {said(problem)}{settles}"


def checked_lines(problems: Iterable[Problem], folder: Path, *, everything: bool = False) -> list[str]:
    """All problems: stops, then advice, and last the questions, of which not more than fit in a short sitting."""
    every = tuple(problems)
    lines = problem_lines((one for one in every if one.severity is not Severity.ASK), folder)
    asked = questions(every, None if everything else MOST)
    if asked.first:
        lines += [QUESTIONS, *problem_lines(asked.first, folder)]
    if asked.more:
        lines.append(f"{more(asked.more)}: procbuilder check --all {folder} shows them")
    if count := sum(problem.severity is Severity.ASK for problem in blocking(every)):
        lines.append(f"{count} of the questions must be answered before anyone may approve it")
    return lines


def checked_notes(checked: Checked) -> list[str]:
    """What a check could not look at, how the text reads, when it was filmed, and how many problems there are."""
    again = f"procbuilder build {checked.folder}"
    lines = [f"{name} has not been read yet, so times were not compared with it: {again}" for name in checked.unread]
    lines += [_reading(checked.reading)] if checked.reading else []
    lines += [f"{name} has not been scanned yet for cuts, talk and stillness: {again}" for name in checked.unscanned]
    return [*lines, *checked.filmed, summary(checked.problems)]


def exit_code(done: Built | Checked | Failed) -> int:
    """0 done, 1 something must stop an approval; that of its fault when it failed."""
    return done.fault.code if isinstance(done, Failed) else int(bool(stops(done.problems)))


def library_lines(results: Sequence[Built | Checked | Failed]) -> list[str]:
    """How many procedures of a library came out how, and what each failed on."""
    failed = [each for each in results if isinstance(each, Failed)]
    stopped = sum(exit_code(each) == 1 for each in results if not isinstance(each, Failed))
    many = f"{len(results)} procedure{'s' if len(results) > 1 else ''}"
    told = f"{many}: {len(results) - stopped - len(failed)} without a stop, {stopped} with one"
    lines = [f"{told}, {len(failed)} failed" if failed else told]
    return lines + [f"{each.folder.name}: {said_fault(each.fault)}" for each in failed]


def _reading(counts: Counts) -> str:
    """How the text reads, in one line."""
    return (
        f"Text: {counts.words} words, {counts.words / counts.sentences:.0f} a sentence; reading ease "
        f"{counts.ease:.0f} (Flesch; 60 and more reads plainly), school grade {max(counts.grade, 0):.0f}"
    )


def problem_data(problems: Iterable[Problem], inside: str | None = None) -> list[dict[str, Any]]:
    """The problems for a machine; ``inside`` is the folder of the procedure, where there are several."""
    return [
        {
            "severity": problem.severity.value,
            "file": f"{inside}/{problem.place.file}" if inside else problem.place.file,
            "line": problem.place.line,
            "what": said(problem).what,
            "instead": said(problem).instead,
            "rule": problem.rule,
            "subject": problem.subject,
            "danger": problem.danger,
        }
        for problem in problems
    ]


def summary(problems: Iterable[Problem]) -> str:
    """How many problems of each severity there are."""
    severities = [problem.severity for problem in problems]
    counts = ((severities.count(severity), severity.value) for severity in Severity)
    return ", ".join(f"{count} {name}" for count, name in counts if count) or "nothing is wrong or missing"


def outcome(built: Built) -> list[str]:
    """Where the results are, and how the procedure stands."""
    edition = built.edition
    lines = [f"{each.path}: {remark(told, ENGLISH)}" for each in edition.recordings for told in each.remarks]
    lines += built.filmed
    if built.unprintable:
        lines.append(f"the PDF shows {' '.join(built.unprintable)} as an empty box: its typeface lacks them")
    told = spoken(edition)
    why = f" ({told.why_draft})" if told.why_draft else ""
    return [
        *lines,
        f"Status: {edition.status}{why}; {summary(edition.problems)}",
        f"Page: {built.page}",
        f"PDF:  {built.print}",
        *_film(built),
    ]


def _film(built: Built) -> list[str]:
    if built.edition.film:
        return [f"Film: {built.film}, {format_time(Fraction(round(built.edition.film.seconds)))}"]
    if built.film_dropped:
        return [f"The film did not fit any more; make it anew with: procbuilder build {built.folder} --film"]
    return []


def highlights(edition: Edition) -> list[str]:
    """What nobody sees in the film: items still open, dangers that stand, torques to be looked up."""
    lines = [edition.title, f"  {edition.item}"]
    lines += [_open(entry) for entry in edition.ledger.having(Balance.OPEN, Balance.ASSUMED)]
    lines += _standing(edition.steps)
    for row in edition.torques:
        if row.value:
            lines.append(f"  Torque: {row.item}, step {row.number}: {row.value}, {_source(row.look_in)}")
        else:
            lines.append(f"  Torque: {row.item}, step {row.number}: left blank, {_source(row.look_in)}")
    return lines


def refit_lines(made: Refitted) -> list[str]:
    """How many steps were proposed, and how each is accepted."""
    if not made.steps:
        return [f"{made.file}: there is nothing new to derive; nothing was written"]
    lines = [f"{made.file}: {made.steps} refit {'step' if made.steps == 1 else 'steps'} added, derived and not filmed"]
    if made.to_decide:
        lines.append(f"{made.to_decide} of them only ask: pressed, bled, timed, preloaded or single-use work")
    return [*lines, 'Read each one, put it right, and take its "- Derived:" line away; check asks until then']


def log_lines(logged: Logged) -> list[str]:
    """How many rows were added, and the estimate before and after them, step by step where it moved."""
    rows = "1 row" if logged.added == 1 else f"{logged.added} rows"
    known = f"; {logged.known} were there already" if logged.known else ""
    before, after = logged.before, logged.after
    lines = [f"{rows} added to {logged.log}{known}"]
    if logged.added:
        lines += [f"Before: {headline(before)}", f"After:  {headline(after)}"]
    lines += sentences(after)[1:]
    if logged.outdated:
        rows = ", ".join(map(str, logged.outdated))
        lines.append(f"Older than the {logged.kept} for which rows are kept: delete line {rows} of {logged.log}")
    pairs = zip(before.steps, after.steps, strict=True)
    return lines + [f"  {old.step}: {_minutes(old)} → {_minutes(new)}" for old, new in pairs if old != new]


def _minutes(time: StepTime) -> str:
    """``1.8–3.1 min, likely 2.4 (4 logged runs)``"""
    if time.basis is Basis.NOTHING:
        return BASIS_WORDS[Basis.NOTHING]
    best = time.evidence[0]
    source = (
        f"{best.count} logged {'run' if best.count == 1 else 'runs'}"
        if best.basis is Basis.LOG
        else best.basis.replace("-", " ")
    )
    if time.low == time.high:
        return f"{time.likely:f} min ({source})"
    return f"{time.low:f}–{time.high:f} min, likely {time.likely:f} ({source})"


def _open(entry: Entry) -> str:
    moment = entry.opened[-1]
    film = f" at {moment.recording} {format_time(moment.time)}" if moment.time is not None else ", not filmed"
    way = f", {told_way(entry.way, ENGLISH)}" if entry.way else ""
    opened = f"{entry.item}, {OPENINGS[entry.opening]}{film}"
    if entry.balance is Balance.ASSUMED:
        closing = f"step {entry.closed[-1].number} tells to refit in reverse"
        return f"  Only assumed closed: {opened} (step {moment.number}); {closing}{way}"
    return f"  Still open: {opened} (step {moment.number}); no step closes it{way}"


def _standing(steps: Iterable[EditionStep]) -> list[str]:
    """Each danger that outlasts its step, with the steps at which it still stands."""
    numbers: dict[str, list[int]] = {}
    for step in steps:
        for hazard in step.standing.hazards:
            numbers.setdefault(f"{hazard.signal}: {hazard.hazard}", []).append(step.number)
    return [f"  Still dangerous at {_runs(found)}: {hazard}" for hazard, found in numbers.items()]


def _runs(numbers: list[int]) -> str:
    """``step 4``, ``steps 3 to 33``, ``steps 3 to 7, 12``; numbers rise."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = (str(run[0]) if len(run) == 1 else f"{run[0]} to {run[-1]}" for run in runs)
    return f"step{'s' if len(numbers) > 1 else ''} {', '.join(words)}"


def _source(look_in: str) -> str:
    return f"see {look_in}" if look_in else "look it up in the maker's data"
