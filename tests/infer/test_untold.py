"""How many dangers are proposed for procedures of several trades in which none is typed, and how many false alarms.

The procedures were written by who widened the word lists later: they show what is reached, not what a stranger's would.
At their first run, before that, 2 of 41 dangers and 1 of 12 killers were proposed, and 1 false alarm.
"""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.proposed import noticed
from tests.infer.written import written

FOLDER = Path(__file__).parent / "dangers"


def procedures(name: str) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = tomllib.loads((FOLDER / f"{name}.toml").read_text(encoding="utf-8"))["procedure"]
    return found


def proposed(one: dict[str, Any]) -> set[str]:
    lines = "".join(f"### {line}\n" for line in one["text"].strip().splitlines())
    procedure = written(f"## A\n{lines}", head=f"---\nformat: 1\nlanguage: {one['language']}\n---\n# Probe\n\n")
    return {each.activity.id for each in noticed(procedure, {}, load(one["language"]))}


@pytest.mark.parametrize("one", procedures("untold"), ids=lambda one: one["trade"])
def test_the_killer_is_proposed(one: dict[str, Any]) -> None:
    assert proposed(one) & set(one["dangers"][0]["by"])


def test_nine_of_ten_dangers_are_proposed() -> None:
    dangers = [(proposed(one), set(danger["by"])) for one in procedures("untold") for danger in one["dangers"]]
    found = sum(bool(ids & by) for ids, by in dangers)
    print(f"{found} of {len(dangers)} dangers proposed")
    assert len(dangers) == 41
    assert found >= 0.9 * len(dangers)


def test_harmless_work_raises_no_false_alarm_in_ten_procedures() -> None:
    alarms = [ids for one in procedures("harmless") if (ids := proposed(one))]
    assert len(procedures("harmless")) == 12
    assert len(alarms) <= 1
