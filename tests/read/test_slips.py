"""Nothing mistyped passes without a word, and nothing that was to be hidden is shown; prose is left in peace.

The lines are made by a program; the prose is our own, written before the rule that it tries.
"""

from pathlib import Path

import pytest

from procbuilder.model.fields import GRAVE
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Procedure, Step
from procbuilder.publish.wording.problems import line
from procbuilder.read.procedure import read_text
from tests.read.mistyped import ELEVEN, HEADINGS, Mistyped, mistyped

HEAD = "---\nrecordings: {strip: a.mp4}\n---\n# T\n\n## S\n\n### 0:01-0:09 Turn it {#turn-it}\n\n"
BELOW = HEAD.count("\n") + 1
"""The line below it."""
HIDES = "- Hide: strip 0:02 0.1,0.7,0.3,0.8"
SIGNS = " -:;,.|*#>`0129axXéß\t\u202e\u200b\\()[]"
"""What may be struck beside or instead of a sign of that line."""
PROSE = Path(__file__).with_name("prose.txt").read_text(encoding="utf-8").splitlines()


def read(typed: str, head: str = HEAD) -> tuple[Procedure, list[Problem]]:
    """A procedure with one more line, and the problems of that line."""
    procedure, problems = read_text(f"{head}{typed}\n")
    return procedure, [problem for problem in problems if problem.place.line == head.count("\n") + 1]


def is_read(step: Step, meant: Mistyped, number: int = BELOW) -> bool:
    return any((entry.name, entry.raw, entry.place.line) == (meant.name, meant.value, number) for entry in step.fields)


def is_covered(step: Step) -> bool:
    return bool(step.withheld) or any(path.recording == "strip" for path in step.hidden)


def test_no_mistyped_line_passes_without_a_word() -> None:
    lines = list(mistyped())
    assert len(lines) > 2000
    silent, mild, shown = [], [], []
    for meant in lines:
        procedure, problems = read(meant.line)
        (step,) = procedure.steps
        understood = is_read(step, meant)
        silent += [meant.line] if not understood and not problems else []
        stopped = any(problem.severity is Severity.STOP for problem in problems)
        mild += [meant.line] if meant.name in GRAVE and not understood and not stopped else []
        shown += [meant.line] if meant.name == "Hide" and not is_covered(step) else []
    assert (silent, mild, shown) == ([], [], [])


@pytest.mark.parametrize("before", ["- Off: cap\n", "Some words\n", "- Picture: 0:02 | cap\n"])
def test_nor_does_one_behind_another_line(before: str) -> None:
    head = HEAD + before
    lines = [meant for meant in mistyped() if meant.name in GRAVE]
    told = ((meant, *read(meant.line, head)) for meant in lines)
    number = head.count("\n") + 1
    silent = [m.line for m, found, problems in told if not problems and not is_read(found.steps[0], m, number)]
    in_picture = [one for one in silent if before.startswith("- Picture") and one.lstrip().startswith("- Hide:")]
    assert [one for one in silent if one not in in_picture] == []


@pytest.mark.parametrize("typed", ELEVEN)
def test_what_was_to_be_hidden_is_hidden_or_withheld(typed: str) -> None:
    procedure, _ = read(typed)
    assert is_covered(procedure.steps[0])


EDITS = [HIDES[:at] + sign + HIDES[at + kept :] for at in range(len(HIDES)) for sign in SIGNS for kept in (0, 1)]
EDITS += [HIDES[:at] + HIDES[at + 1 :] for at in range(len(HIDES))]


@pytest.mark.parametrize("before", ["", "- Off: cap\n"])
def test_no_edit_of_a_line_that_hides_shows_what_it_hid_or_is_silent(before: str) -> None:
    told = {typed: read_text(f"{HEAD}{before}{typed}\n") for typed in EDITS}
    assert [typed for typed, (procedure, _) in told.items() if not is_covered(procedure.steps[0])] == []
    silent = [typed for typed, (procedure, problems) in told.items() if not (procedure.steps[0].hidden or problems)]
    assert silent == []


@pytest.mark.parametrize("typed", ["## Danger: hot oil", "### Hold: bearing play", "# Warning: the spring"])
def test_what_keeps_from_harm_is_no_heading(typed: str) -> None:
    problems = [problem for problem in read(typed)[1] if problem.rule == "field-name"]
    assert [line(problem).rpartition(": - ")[2] for problem in problems] == [typed.lstrip("# ")]


def test_hidden_before_the_first_step_it_withholds_every_step() -> None:
    text = HEAD.replace("## S\n", "## S\n\n- Hide: 0:02 0.1,0.7,0.3,0.8\n") + "### Lift\n"
    procedure, problems = read_text(text)
    assert [[place.line for place in step.withheld] for step in procedure.steps] == [[8], [8]]
    assert [line(problem) for problem in problems] == [
        "procedure.md:8: Hide stands in no step, so no pictures and clips are shown at all – "
        "put it below the heading of the step whose footage it hides"
    ]


@pytest.mark.parametrize(
    ("typed", "withheld"),
    [
        ("- Hide: 0:02 0.1,0.7,0.3,0.8", False),
        ("- Hide: 0:08 0.1,0.7,0.3,0.8; 0:12 0.2,0.7,0.4,0.8", False),
        ("- Hide: 0:12 0.1,0.7,0.3,0.8; 0:14 0.2,0.7,0.4,0.8", True),
        ("- Hide: 0:02 0.3,0.8,0.1,0.7", True),
        ("- Hide: 0:02 0.1,0.7,0.3,0.8 | 0:05 0.2,0.7,0.4,0.8", True),
        ("- Hide:", True),
        ("- Hidden: 0:02 0.1,0.7,0.3,0.8", True),
        ("- Picture: 0:02\n  - Hide: 0.1,0.7,0.3,0.8", False),
        ("- Picture: 0:02\n  - Hide: 0.1,0.7,0.3", True),
        ("- Picture: later\n  - Hide: 0.1,0.7,0.3,0.8", True),
        ("- Picture: 0:02\n  - Hdie: 0.1,0.7,0.3,0.8", True),
        ("- Picture: 0:02\n-Hide: 0:02 0.1,0.7,0.3,0.8", True),
        ("- Tool: bar\n  - Hide: 0:02 0.1,0.7,0.3,0.8", False),
        ("```\n- Hide: 0:02 0.1,0.7,0.3,0.8\n```", True),
    ],
)
def test_only_what_is_understood_and_meets_footage_counts_as_hidden(typed: str, withheld: bool) -> None:
    procedure, _ = read(typed)
    assert bool(procedure.steps[0].withheld) is withheld


def test_steps_that_show_the_same_footage_are_withheld_too_and_no_others() -> None:
    text = HEAD + (
        "- Hdie: 0:02 0.1,0.7,0.3,0.8\n\n### 0:08-0:12 Lift\n\n### 0:20-0:30 Lower\n\n- Picture: 0:05\n\n"
        "### 0:40-0:50 Go\n"
    )
    procedure, _ = read_text(text)
    assert [[place.line for place in step.withheld] for step in procedure.steps] == [[10], [10], [10], []]


@pytest.mark.parametrize("typed", HEADINGS)
def test_no_heading_with_a_mistyped_time_passes_without_a_word(typed: str) -> None:
    procedure, problems = read(typed)
    understood = [step for step in procedure.steps if step.place.line == BELOW and step.spans]
    assert problems or [step.command for step in understood] == ["Stand it up"]


@pytest.mark.parametrize(
    ("typed", "better"),
    [
        ("### 58-68 Stand it up", "### 0:58-1:08 Stand it up"),
        ("### 0:48-0:58: Put {#a}", "### 0:48-0:58 Put {#a}"),
        ("### 0:48-58 Stand it up", "### 0:48-0:58 Stand it up"),
        ("### Strip 0.48-0.58 Stand it up", "### strip 0:48-0:58 Stand it up"),
        ("###0:48-0:58 Stand it up", "### 0:48-0:58 Stand it up"),
        ("**0:48-0:58 Stand it up**", "### 0:48-0:58 Stand it up"),
        ("## 0:48-0:58 Stand it up", "### 0:48-0:58 Stand it up"),
    ],
)
def test_the_line_to_copy_is_the_heading_that_was_meant(typed: str, better: str) -> None:
    problems = read(typed)[1]
    assert line(problems[0]).endswith(f": {better}")
    repaired, left = read(better)
    assert (left, len(repaired.steps[-1].spans)) == ([], 1)


def test_times_that_fall_are_not_turned_round() -> None:
    (problem,) = read("### 68-58 Stand it up")[1]
    assert (problem.form, problem.lines) == ("mistimed-unclear", ())


def test_prose_is_left_in_peace() -> None:
    """At most one line in a hundred."""
    assert len(PROSE) >= 500
    told = [typed for typed in PROSE if read(typed)[1]]
    assert len(told) * 100 <= len(PROSE), told
    assert [typed for typed in PROSE if read(typed)[0].steps[0].withheld] == []
