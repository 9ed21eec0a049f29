"""A line to copy whose place is known, put there, ends its problem and makes no graver one."""

from collections.abc import Iterator
from fractions import Fraction

import pytest

from procbuilder.model.facts import Blank, Line
from procbuilder.model.fields import GRAVE
from procbuilder.model.problem import RANK, Problem
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.wording.gaps import say
from procbuilder.publish.wording.problems import said
from tests.check.faults import FOLDER, Fault, faults
from tests.check.sample import DURATIONS, GOOD, all_found, found
from tests.read.mistyped import HEADINGS, OTHER_WORDS, value

SAMPLES = [fault for path in sorted(FOLDER.glob("*.txt")) for fault in faults(path.stem)]


def ways(problem: Problem) -> Iterator[list[Line]]:
    """Lines that end it: those for a heading that are whole together, each other one alone."""
    placed = [line for line in problem.lines if line.place]
    whole = [line for line in placed if not line.replaces and not _has_blank(line)]
    yield from ([line] for line in placed if line not in whole)
    if whole:
        yield whole


def _has_blank(line: Line) -> bool:
    return any(isinstance(part, Blank) for part in (*line.parts, *(value for _, value in line.words)))


def applied(text: str, lines: list[Line]) -> str:
    """The text with lines that replace one, or stand below a heading."""
    typed = text.splitlines()
    for line in sorted(lines, key=lambda one: one.place.line if one.place else 0, reverse=True):
        at = line.place.line if line.place else 0
        typed[at - 1 : at] = [say(line, ENGLISH)] if line.replaces else [typed[at - 1], "", say(line, ENGLISH)]
    return "".join(f"{line}\n" for line in typed)


CASES = [
    (fault, problem, lines) for fault in SAMPLES for problem in found(fault.applied(GOOD)) for lines in ways(problem)
]


def test_lines_of_many_rules_are_tried() -> None:
    assert len({problem.rule for _, problem, _ in CASES}) > 15


@pytest.mark.parametrize(
    ("fault", "problem", "lines"), CASES, ids=[f"{case[1].rule}-{case[0].title.replace(' ', '-')}" for case in CASES]
)
def test_a_line_put_in_its_place_ends_the_problem(fault: Fault, problem: Problem, lines: list[Line]) -> None:
    text = fault.applied(GOOD)
    before = {(one.rule, said(one).what) for one in found(text)}
    after = found(applied(text, lines))
    assert (problem.rule, said(problem).what) not in {(one.rule, said(one).what) for one in after}
    new = [one for one in after if (one.rule, said(one).what) not in before]
    grave = (RANK[problem.severity], problem.danger)
    assert [said(one).what for one in new if (RANK[one.severity], one.danger) < grave] == []


LONG = {name: Fraction(100) for name in DURATIONS}
OFF = "- Off: washer\n"
WHEEL = "### strip 0:10-0:20 Take off the wheel {#wheel}"
IN_A_STEP = [f"- {name[1]}{name[0]}{name[2:]}: {value(name)}" for name in GRAVE]
IN_A_STEP += [f"- {word}: {value(name)}" for word, name in OTHER_WORDS]
MISREAD = [GOOD.replace(OFF, f"{OFF}{typed}\n") for typed in IN_A_STEP]
MISREAD += [GOOD.replace(WHEEL, f"{typed.replace('### ', '### strip ')} {{#wheel}}") for typed in HEADINGS[:25]]
MISREAD += [GOOD.replace(WHEEL, f"{typed} {{#wheel}}") for typed in HEADINGS if "strip" in typed.casefold()]


@pytest.mark.parametrize("text", MISREAD)
def test_a_line_for_what_cannot_be_read_ends_the_problem_too(text: str) -> None:
    before = all_found(text, durations=LONG)
    assert before
    for problem in (one for one in before if one.rule in ("field-name", "heading", "heading-form") and one.lines):
        after = all_found(applied(text, list(problem.lines)), durations=LONG)
        assert said(problem).what not in {said(one).what for one in after}
        new = {said(one).what: one for one in after if said(one).what not in {said(old).what for old in before}}
        grave = (RANK[problem.severity], problem.danger)
        assert [what for what, one in new.items() if (RANK[one.severity], one.danger) < grave] == []


def test_a_line_that_does_not_help_would_be_noticed() -> None:
    """A tool that is no torque wrench."""
    fault = next(fault for fault in SAMPLES if fault.title == "no torque wrench")
    text = fault.applied(GOOD)
    (problem,) = found(text)
    (line,) = problem.lines
    other = applied(text, [Line("Tool", ("wheel brace",), place=line.place)])
    assert [one.rule for one in found(other)] == ["torque-wrench-range"]
