"""What the commands say of problems, as lines and as data."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from procbuilder.keep.records import stored
from procbuilder.model.problem import Problem, Severity, blocking
from procbuilder.model.questions import MOST, questions
from procbuilder.model.readability import Counts
from procbuilder.pipeline.check import Checked
from procbuilder.pipeline.recordings import Filmed
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.wording.commands import tell
from procbuilder.publish.wording.gaps import say
from procbuilder.publish.wording.problems import said
from procbuilder.publish.wording.topics import more


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
