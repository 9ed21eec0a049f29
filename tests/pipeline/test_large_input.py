"""Large and monstrous texts: nothing blows up, nothing is raised."""

from collections.abc import Callable
from pathlib import Path

import pytest

from procbuilder.pipeline.build import build
from procbuilder.pipeline.check import Checked, check, write_ids
from tests.growth import no_blow_up
from tests.pipeline.bad import FRONT
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults

BOMBS: dict[str, tuple[int, Callable[[int], str]]] = {
    "brackets": (20_000, lambda n: "}\n" * n),
    "colons": (7_000, lambda n: "a: b: c\n" * n),
    "deep flow": (60_000, lambda n: "[" * n),
    "deep lists": (30_000, lambda n: "- " * n),
    "deep keys": (30_000, lambda n: "? " * n),
    "deep maps": (15_000, lambda n: "a: " + "{a: " * n),
    "anchors": (4_000, lambda n: "".join(f"k{k}: &a{k} x\n" for k in range(n))),
    "deep blocks": (340, lambda n: "".join(" " * k + "a:\n" for k in range(n))),
}
"""Front matter in the largest size that is read at all."""


@pytest.mark.parametrize(("size", "bomb"), BOMBS.values(), ids=BOMBS.keys())
def test_a_bomb_in_the_front_matter_is_given_up(home: Path, size: int, bomb: Callable[[int], str]) -> None:
    def prepare(size: int) -> Callable[[], Checked]:
        (home / "procedure.md").write_text(f"---\n{bomb(size)}\n---\n{WHOLE.removeprefix(FRONT)}", encoding="utf-8")
        return lambda: check(home)

    told = [problem for problem in no_blow_up(prepare, size).problems if problem.rule == "front-matter"]
    assert 0 < len(told) <= 21


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


def checked(home: Path, body: Callable[[int], str], size: int) -> set[str]:
    """The rules that a text of this size breaks, found without a blow-up."""

    def prepare(size: int) -> Callable[[], Checked]:
        (home / "procedure.md").write_text(f"{FRONT}# Long\n\n## Work\n\n{body(size)}\n", encoding="utf-8")
        return lambda: check(home)

    return {problem.rule for problem in no_blow_up(prepare, size).problems}


def test_two_thousand_steps_are_checked_and_given_ids(home: Path) -> None:
    by_rule = checked(home, steps, 2000)
    assert {"unbalanced-ledger", "no-final-check"} <= by_rule
    assert "doubled-id" not in by_rule
    assert write_ids(home) == 2000
    assert "Take off the cover {#take-off-the-cover-2000}" in (home / "procedure.md").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("line", "rule"),
    [("then the belt\n", "no-steps"), ("- Note: loose\n", "no-steps"), ("> quoted\n\n", "no-steps"),
     ("### 0:01-0:03 Turn it {#same}\n\n", "doubled-id")],
    ids=["prose", "notes", "quotes", "doubled ids"],
)  # fmt: skip
def test_tens_of_thousands_of_lines_are_checked(home: Path, line: str, rule: str) -> None:
    assert rule in checked(home, lambda lines: line * (lines // line.count("\n")), 30_000)


MONSTERS: dict[str, tuple[int, Callable[[int], str]]] = {
    "figures": (100_000, lambda n: "### " + "9" * n),
    "letters": (100_000, lambda n: "### " + "a" * n),
    "minutes": (5_000, lambda n: "### " + "9" * n + ":00-1:00 x"),
    "time": (5_000, lambda n: "- Time: " + "9" * n),
    "mark": (5_000, lambda n: "- Picture: 0:01 | x\n  - Mark: ring | 0." + "1" * n + ",0.5 | x"),
    "count": (5_000, lambda n: "- Tool: " + "9" * n + " x bar"),
    "said": (5_000, lambda n: "- Note: x (said " + "9" * n + ":00)"),
    "emphasis": (3_000, lambda n: "**a " * n + "b**" * n),
    "brackets": (50_000, lambda n: "[" * n),
    "lists": (5_000, lambda n: "- " * n),
    "quotes": (5_000, lambda n: ">" * n),
    "commas": (20_000, lambda n: "- Note: " + "1,2" * n),
}


@pytest.mark.parametrize(("size", "monster"), MONSTERS.values(), ids=MONSTERS.keys())
def test_a_monstrous_line_is_read_and_raises_nothing(home: Path, size: int, monster: Callable[[int], str]) -> None:
    checked(home, lambda size: f"### Turn it\n\n{monster(size)}", size)


def test_a_monstrous_line_is_published_as_typed(home: Path) -> None:
    """Emphasis three thousand deep and a number of five thousand digits: page, PDF and data are still made."""
    text = f"{FRONT}# Long\n\n## Work\n\n### Turn it\n\n{'**a ' * 3000 + 'b**' * 3000}\n\n- Tool: {'9' * 5000} x bar\n"
    (home / "procedure.md").write_text(text, encoding="utf-8")
    build(home)
    assert faults(home / "out") == []
