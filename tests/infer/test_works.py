"""Every work that can hurt somebody: a text that proposes its danger, and a harmless near miss that does not."""

import tomllib
from pathlib import Path

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.proposed import noticed
from tests.infer.written import written

WORKS = tomllib.loads((Path(__file__).parent / "dangers" / "works.toml").read_text(encoding="utf-8"))
CASES = [(work, language) for work in WORKS for language in ("en", "de")]


def works(command: str, language: str) -> set[str]:
    head = f"---\nformat: 1\nlanguage: {language}\n---\n# Probe\n\n"
    return {one.activity.id for one in noticed(written(f"## A\n### {command}\n", head=head), {}, load(language))}


@pytest.mark.parametrize(("work", "language"), CASES)
def test_each_work_is_found_and_its_near_miss_is_not(work: str, language: str) -> None:
    *said, near = WORKS[work][language]
    assert said
    for command in said:
        assert work in works(command, language), command
    assert works(near, language) == set()


def test_every_work_has_its_sentences() -> None:
    for language in ("en", "de"):
        assert list(WORKS) == [activity.id for activity in load(language).activities]
    assert len(WORKS) == 140
