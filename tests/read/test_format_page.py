"""The format page tells the same fields and keys as the program."""

import re
from pathlib import Path

from procbuilder.model.fields import FIELDS
from procbuilder.model.procedure import FRONT_NAMES
from procbuilder.read.practice import read_practice
from procbuilder.read.text import TextFile
from procbuilder.read.workshop import read_workshop

PAGE = (Path(__file__).parents[2] / "procbuilder/read/FORMAT.md").read_text(encoding="utf-8")


def rows(heading: str) -> list[list[str]]:
    part = PAGE.split(f"## {heading}")[1].split("\n## ")[0]
    lines = [line.strip("|").replace(r"\|", "¦").split("|") for line in part.splitlines() if line.startswith("| ")]
    return [[cell.strip() for cell in cells] for cells in lines[1:]]


def test_the_table_of_fields_is_the_one_of_the_program() -> None:
    told = [(name.strip(), cells[1]) for cells in rows("Fields") for name in cells[0].split(",")]
    parts = [(kind.name, " ¦ ".join([*kind.parts, *(f"{word}:" for word in kind.words)])) for kind in FIELDS]
    assert sorted(told) == sorted(parts)


def test_the_keys_of_the_front_matter_are_those_of_the_program() -> None:
    told = {name.strip() for cells in rows("Front matter") for name in cells[0].split(",")}
    assert told == set(FRONT_NAMES)


def test_the_example_heading_is_one_that_is_read() -> None:
    assert re.search(r"^ {4}### strip 0:42-1:15 Prise off the dust cap \{#dust-cap\}$", PAGE, re.M)


def test_the_example_of_the_practice_log_is_one_that_is_read() -> None:
    example = PAGE.split("    who,when,step,minutes\n")[1].split("\n\n")[0]
    found = read_practice(TextFile("times.csv", f"who,when,step,minutes\n{example.strip()}\n"))
    assert (len(found.runs), found.problems) == (1, ())


def test_the_example_of_the_workshop_file_is_one_that_is_read() -> None:
    workshop, problems = read_workshop(TextFile("workshop.toml", PAGE.split("```toml\n")[1].split("```")[0]))
    assert problems == ()
    assert [condition.name for condition in workshop.conditions] == ["on a lift"]
    assert None not in (workshop.allowance, workshop.rate)
    assert "" not in (workshop.allowance_origin, workshop.seen_by, workshop.kept, workshop.currency)
