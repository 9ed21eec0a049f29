"""Practice times in: ``times.csv``, a table of the same columns, or the file that the page exports."""

import csv
import json
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from typing import Any

from procbuilder.model.facts import Phrase, Value, facts
from procbuilder.model.origin import Place
from procbuilder.model.practice import HEADER, LONGEST, WHO, Run
from procbuilder.model.problem import Problem, Severity
from procbuilder.read.text import TextFile

EXPORT = "procbuilder times 1"
"""Format of the file that the page exports."""

COLUMNS = tuple(HEADER.split(","))
_WHEN = re.compile(r"\d{4}-\d\d-\d\d(?:[T ]\d\d:\d\d(?::\d\d)?)?\Z")
_STEP = re.compile(r"[a-z0-9-]+\Z")
_MINUTES = re.compile(r"\d+(?:\.\d+)?\Z")
_ROWS = re.compile(r'"rows"\s*:\s*\[')
_GAP = re.compile(r"[\s,]*")


@dataclass(frozen=True, slots=True)
class PracticeFile:
    """The rows of a file, what is wrong with the others, and for which procedure it was made."""

    runs: tuple[Run, ...] = ()
    problems: tuple[Problem, ...] = ()
    procedure: str = ""
    """Number of the procedure; empty when the file does not say."""


def read_practice(source: TextFile) -> PracticeFile:
    """Every row that can be read, and a problem with its line for every other one."""
    return _exported(source) if source.text.lstrip().startswith("{") else _table(source)


def _table(source: TextFile) -> PracticeFile:
    header = source.lines[0]
    delimiter = next((sign for sign in ",;\t" if sign in header), ",")
    names = [name.strip().casefold() for name in header.split(delimiter)]
    if sorted(names) != sorted(COLUMNS):
        typed = header.strip() or Phrase("empty-line")
        return PracticeFile(problems=(_problem(source, 1, "columns", typed=typed, columns=HEADER),))
    found: list[Run | Problem] = []
    try:
        found += (_cells(source, line, names, cells) for line, cells in _rows(source, delimiter))
    except csv.Error:
        found.append(_problem(source, len(found) + 2, "long-cell"))
    return _sorted_out(found)


def _rows(source: TextFile, delimiter: str) -> Iterator[tuple[int, list[str]]]:
    """(line, cells) below the header; empty lines are none."""
    reader = csv.reader(source.text.splitlines(keepends=True), delimiter=delimiter)
    before = 0
    for cells in reader:
        line, before = before + 1, reader.line_num
        if line > 1 and any(cell.strip() for cell in cells):
            yield line, [cell.strip() for cell in cells]


def _cells(source: TextFile, line: int, names: list[str], cells: list[str]) -> Run | Problem:
    if len(cells) != len(names):
        return _problem(source, line, "cells", cells, cells=len(cells), columns=len(names))
    return _run(source, line, dict(zip(names, cells, strict=True)))


def _exported(source: TextFile) -> PracticeFile:
    try:
        data = json.loads(source.text, parse_float=str, parse_int=str)
    except (json.JSONDecodeError, RecursionError) as error:
        line = error.lineno if isinstance(error, json.JSONDecodeError) else 1
        return PracticeFile(problems=(_problem(source, line, "broken-off"),))
    if data.get("format") != EXPORT or not isinstance(data.get("rows"), list):
        return PracticeFile(problems=(_problem(source, 1, "no-export", format=EXPORT),))
    found = [_entry(source, line, entry) for line, entry in _entries(source)]
    return _sorted_out(found, str(data.get("procedure", "")))


def _entries(source: TextFile) -> Iterator[tuple[int, Any]]:
    """(line, entry) of the rows; the text is known to be sound."""
    decoder = json.JSONDecoder(parse_float=str, parse_int=str)
    start = _ROWS.search(source.text)
    at = start.end() if start else len(source.text)
    while (gap := _GAP.match(source.text, at)) and source.text[gap.end() : gap.end() + 1] not in ("]", ""):
        entry, at = decoder.raw_decode(source.text, gap.end())
        yield source.text.count("\n", 0, gap.end()) + 1, entry


def _entry(source: TextFile, line: int, entry: Any) -> Run | Problem:
    if not isinstance(entry, dict) or sorted(entry) != sorted(COLUMNS):
        return _problem(source, line, "row", columns=COLUMNS)
    return _run(source, line, {name: str(value).strip() for name, value in entry.items()})


def _run(source: TextFile, line: int, cells: Mapping[str, str]) -> Run | Problem:
    """One row, or the first thing wrong with it."""
    who, when, step, minutes = (cells[name] for name in COLUMNS)
    if not WHO.match(who):
        return _problem(source, line, "who", cells.values(), typed=who or Phrase("nothing"))
    if not _is_date(when):
        return _problem(source, line, "when", cells.values(), typed=when or Phrase("nothing"))
    if not _STEP.match(step):
        return _problem(source, line, "step", cells.values(), typed=step or Phrase("nothing"))
    if not _MINUTES.match(minutes) or not 0 < Decimal(minutes) <= LONGEST:
        return _problem(source, line, "minutes", cells.values(), typed=minutes or Phrase("nothing"), most=LONGEST)
    return Run(who, when.replace(" ", "T"), step, Decimal(minutes), Place(source.name, line))


def _is_date(text: str) -> bool:
    if not _WHEN.match(text):
        return False
    try:
        datetime.fromisoformat(text)
    except ValueError:
        return False
    return True


def _sorted_out(found: list[Run | Problem], procedure: str = "") -> PracticeFile:
    runs = tuple(each for each in found if isinstance(each, Run))
    return PracticeFile(runs, tuple(each for each in found if isinstance(each, Problem)), procedure)


def _problem(source: TextFile, line: int, form: str, row: Iterable[str] = (), /, **values: Value) -> Problem:
    """An answer names the cells of the row as they are typed."""
    subject = ",".join(row) or source.name
    return Problem("practice-log", Severity.ASK, Place(source.name, line), facts(**values), form, subject=subject)
