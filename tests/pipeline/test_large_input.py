"""Large and monstrous texts: nothing blows up, nothing is raised. The limits are wide: speed is measured elsewhere."""

import time
from pathlib import Path

import pytest

from procbuilder.model.problem import Problem
from procbuilder.pipeline.build import build
from procbuilder.pipeline.check import check, write_ids
from tests.pipeline.bad import FRONT
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults


@pytest.mark.parametrize(
    "front",
    ["}\n" * 20_000, "a: b: c\n" * 7_000, "[" * 60_000, "- " * 30_000, "? " * 30_000, "a: " + "{a: " * 15_000,
     "".join(f"k{n}: &a{n} x\n" for n in range(4_000)), "".join(" " * n + "a:\n" for n in range(340))],
    ids=["brackets", "colons", "deep flow", "deep lists", "deep keys", "deep maps", "anchors", "deep blocks"],
)  # fmt: skip
def test_a_bomb_in_the_front_matter_is_given_up_soon(home: Path, front: str) -> None:
    (home / "procedure.md").write_text(f"---\n{front}\n---\n{WHOLE.removeprefix(FRONT)}", encoding="utf-8")
    start = time.process_time()
    told = check(home).problems
    assert time.process_time() - start < 40
    assert "front-matter" in {problem.rule for problem in told}
    assert len([problem for problem in told if problem.rule == "front-matter"]) <= 21


def steps(count: int) -> str:
    """A sound procedure in which each step closes what the one before it opened."""
    lines = []
    for n in range(count):
        lines.append(
            f"### {n // 60}:{n % 60:02}-{(n + 1) // 60}:{(n + 1) % 60:02} Take off the cover\n\n- Off: part {n}"
        )
        lines.append(f"- Tool: key {n}\n- Torque: bolt {n} | {n} N·m | D1\n- State: raised {n}\n- For now: chock {n}")
        lines.append(f"- Warning: fall {n} | hurts | stay away | while: raised {n}")
        if n:
            lines.append(f"- Ends: raised {n - 1}\n- On: part {n - 1}\n- Out again: chock {n - 1}")
    return "\n".join(lines)


def problems_in(home: Path, body: str, most: float) -> tuple[Problem, ...]:
    """The problems of a large text, found within so many seconds of one core."""
    (home / "procedure.md").write_text(f"{FRONT}# Long\n\n## Work\n\n{body}\n", encoding="utf-8")
    start = time.process_time()
    told = check(home).problems
    assert time.process_time() - start < most
    return told


def test_two_thousand_steps_are_checked_in_seconds(home: Path) -> None:
    told = problems_in(home, steps(2000), most=48)
    by_rule = {problem.rule for problem in told}
    assert {"unbalanced-ledger", "no-final-check"} <= by_rule
    assert "doubled-id" not in by_rule
    start = time.process_time()
    assert write_ids(home) == 2000
    assert time.process_time() - start < 32
    assert "Take off the cover {#take-off-the-cover-2000}" in (home / "procedure.md").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("line", "rule"),
    [("then the belt\n", "no-steps"), ("- Note: loose\n", "no-steps"), ("> quoted\n\n", "no-steps"),
     ("### 0:01-0:03 Turn it {#same}\n\n", "doubled-id")],
    ids=["prose", "notes", "quotes", "doubled ids"],
)  # fmt: skip
def test_fifty_thousand_lines_are_checked_in_seconds(home: Path, line: str, rule: str) -> None:
    told = problems_in(home, line * (50_000 // line.count("\n")), most=80)
    assert rule in {problem.rule for problem in told}


@pytest.mark.parametrize(
    "line",
    ["### " + "9" * 100_000, "### " + "a" * 100_000, "### " + "9" * 5000 + ":00-1:00 x", "- Time: " + "9" * 5000,
     "- Picture: 0:01 | x\n  - Mark: ring | 0." + "1" * 5000 + ",0.5 | x", "- Tool: " + "9" * 5000 + " x bar",
     "- Note: x (said " + "9" * 5000 + ":00)", "**a " * 3000 + "b**" * 3000, "[" * 50_000, "- " * 5000,
     ">" * 5000, "- Note: " + "1,2" * 20_000],
)  # fmt: skip
def test_one_monstrous_line_is_read_soon_and_raises_nothing(home: Path, line: str) -> None:
    problems_in(home, f"### Turn it\n\n{line}", most=20)


def test_a_monstrous_line_is_published_as_typed(home: Path) -> None:
    """Emphasis three thousand deep and a number of five thousand digits: page, PDF and data are still made."""
    text = f"{FRONT}# Long\n\n## Work\n\n### Turn it\n\n{'**a ' * 3000 + 'b**' * 3000}\n\n- Tool: {'9' * 5000} x bar\n"
    (home / "procedure.md").write_text(text, encoding="utf-8")
    build(home)
    assert faults(home / "out") == []
