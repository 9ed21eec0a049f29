"""Step lists as CSV or TSV with a header line."""

import csv
import re
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from io import StringIO
from itertools import zip_longest

from procbuilder.model.facts import Phrase, Value
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import ListedStep
from procbuilder.model.timecode import parse_time
from procbuilder.read.listed import Listed, odd_steps, problem
from procbuilder.read.text import TextFile

COLUMNS = {
    "start": ("start", "from", "begin", "time", "at"),
    "end": ("end", "to", "until"),
    "text": ("text", "step", "what", "command", "description", "action", "words"),
    "recording": ("recording", "file", "film", "clip"),
}
"""What a column may be called, by what it holds."""

_SECONDS = re.compile(r"\d{1,6}(?:\.\d{1,6})?\Z")


def read_table(source: TextFile, delimiter: str = "") -> Listed:
    """The steps of a table, and a problem for every row that is not one.

    Times are ``1:15`` or bare seconds. Without a delimiter it is the comma, or the semicolon when the
    header holds one and no comma.
    """
    header = source.lines[0] if source.lines else ""
    sign = delimiter or (";" if ";" in header and "," not in header else ",")
    rows = _rows(source, sign)
    first = next(rows, (1, []))
    if isinstance(first, Problem):
        return (), (first,)
    columns = _columns(first[1])
    if "start" not in columns or "text" not in columns:
        return (), (_problem(source, first[0], "column-words" if "start" in columns else "column-start"),)
    steps: list[ListedStep] = []
    problems: list[Problem] = []
    for row in rows:
        read = row if isinstance(row, Problem) else _step(source, *row, columns)
        steps += [read] if isinstance(read, ListedStep) else []
        problems += [read] if isinstance(read, Problem) else []
    ended = tuple(_with_ends(steps))
    return ended, (*problems, *odd_steps(ended))


def _rows(source: TextFile, delimiter: str) -> Iterator[tuple[int, list[str]] | Problem]:
    """Line number and cells of each row that is not empty; a problem for a row whose quotes do not close."""
    reader = csv.reader(StringIO(source.text, newline="\n"), delimiter=delimiter, strict=True)
    before = 0
    while True:
        line = before + 1
        try:
            cells = next(reader)
        except csv.Error:
            yield _problem(source, line, "quotes")
            cells = []
        except StopIteration:
            return
        before = reader.line_num
        if any(cell.strip() for cell in cells):
            yield line, [cell.strip() for cell in cells]


def _columns(header: list[str]) -> dict[str, int]:
    names = [name.casefold() for name in header]
    return {
        column: names.index(name) for column, choices in COLUMNS.items() for name in reversed(choices) if name in names
    }


def _step(source: TextFile, line: int, cells: list[str], columns: dict[str, int]) -> ListedStep | Problem:
    row = {name: cells[at] if at < len(cells) else "" for name, at in columns.items()}
    start, end = _time(row["start"]), _time(row.get("end", ""))
    if start is None:
        return _problem(source, line, "start", typed=row["start"] or Phrase("nothing"))
    if row.get("end") and end is None:
        return _problem(source, line, "end", typed=row["end"])
    if not row["text"]:
        return _problem(source, line, "row-without-words")
    return ListedStep(Place(source.name, line), row["text"], start, end, row.get("recording", ""))


def _time(text: str) -> Fraction | None:
    if ":" in text:
        return parse_time(text)
    return Fraction(text) if _SECONDS.match(text) else None


def _with_ends(steps: list[ListedStep]) -> Iterator[ListedStep]:
    for step, following in zip_longest(steps, steps[1:]):
        if step.end is None and following and following.recording == step.recording:
            yield replace(step, end=following.start)
        else:
            yield step


def _problem(source: TextFile, line: int, form: str, /, **values: Value) -> Problem:
    return problem(Place(source.name, line), form, **values)
