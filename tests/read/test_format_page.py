"""The format page tells the same fields and keys as the program."""

import re
from pathlib import Path

from procbuilder.model.fields import FIELDS
from procbuilder.model.procedure import FRONT_NAMES

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
