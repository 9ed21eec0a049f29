"""Practice times in."""

from decimal import Decimal

import pytest

from procbuilder.model.origin import Place
from procbuilder.model.practice import Run
from procbuilder.publish.wording.problems import line
from procbuilder.read.practice import read_practice
from procbuilder.read.text import TextFile

EXPORTED = """\
{"format": "procbuilder times 1", "procedure": "P-014", "revision": "A", "rows": [
  {"who": "ab", "when": "2026-05-04T14:30", "step": "pin-out", "minutes": 2.5},
  {"who": "ab", "when": "2026-05-04T14:33", "step": "nut-slack", "minutes": 1}
]}
"""


LIMITS = "write minutes such as 4.5, more than 0 and at most 1440"
CELLS = "write one cell for each column; a decimal has a point: 4.5"
AGAIN = "export the times from the page once more"


def told(text: str) -> list[str]:
    return [line(problem) for problem in read_practice(TextFile("times.csv", text)).problems]


def test_table_with_its_lines() -> None:
    """Minutes stay as typed; empty lines are none; a space before the time of day becomes T."""
    found = read_practice(
        TextFile("t.csv", "who,when,step,minutes\nab,2026-05-04,pin-out,2.50\n\nc7,2026-05-04 14:30,lower,4\n")
    )
    assert found.problems == ()
    assert found.runs == (
        Run("ab", "2026-05-04", "pin-out", Decimal("2.50"), Place("t.csv", 2)),
        Run("c7", "2026-05-04T14:30", "lower", Decimal(4), Place("t.csv", 4)),
    )
    assert found.runs[0].line == "ab,2026-05-04,pin-out,2.50"


@pytest.mark.parametrize("sign", [";", "\t"])
def test_other_delimiters_and_another_order_of_columns(sign: str) -> None:
    text = "step,minutes,who,when\nlower,4,ab,2026-05-04\n".replace(",", sign)
    assert read_practice(TextFile("t.csv", text)).runs == (
        Run("ab", "2026-05-04", "lower", Decimal(4), Place("t.csv", 2)),
    )


def test_exported_file_with_its_lines() -> None:
    found = read_practice(TextFile("times.json", EXPORTED))
    assert (found.problems, found.procedure) == ((), "P-014")
    assert found.runs == (
        Run("ab", "2026-05-04T14:30", "pin-out", Decimal("2.5"), Place("times.json", 2)),
        Run("ab", "2026-05-04T14:33", "nut-slack", Decimal(1), Place("times.json", 3)),
    )


@pytest.mark.parametrize(
    ("row", "problem"),
    [
        ("Anna Berger,2026-05-04,lower,4", "Anna Berger is no initials – write initials or a code of up to 12 signs"),
        ("=1+1,2026-05-04,lower,4", "=1+1 is no initials – write initials or a code of up to 12 signs"),
        (",2026-05-04,lower,4", "nothing is no initials – write initials or a code of up to 12 signs"),
        ("ab,4.5.2026,lower,4", "4.5.2026 is no date – write 2026-05-04, or 2026-05-04T14:30"),
        ("ab,2026-02-30,lower,4", "2026-02-30 is no date – write 2026-05-04, or 2026-05-04T14:30"),
        ("ab,2026-05-04T25:00,lower,4", "2026-05-04T25:00 is no date – write 2026-05-04, or 2026-05-04T14:30"),
        ("ab,2026-05-04,Lower it,4", "Lower it is no step id – write what stands in {#…} at the step"),
        ("ab,2026-05-04,lower,0", f"0 is no number of minutes – {LIMITS}"),
        ("ab,2026-05-04,lower,-4", f"-4 is no number of minutes – {LIMITS}"),
        ("ab,2026-05-04,lower,nan", f"nan is no number of minutes – {LIMITS}"),
        ("ab,2026-05-04,lower,1441", f"1441 is no number of minutes – {LIMITS}"),
        ("ab,2026-05-04,lower,4,5", f"the row has 5 cells, the first line 4 – {CELLS}"),
        ("ab,2026-05-04,lower", f"the row has 3 cells, the first line 4 – {CELLS}"),
    ],
)  # fmt: skip
def test_a_row_that_is_wrong_in_one_way_is_named_with_its_line(row: str, problem: str) -> None:
    text = f"who,when,step,minutes\nab,2026-05-04,lower,4\n{row}\nab,2026-05-05,lower,4\n"
    assert told(text) == [f"times.csv:3: {problem}"]


@pytest.mark.parametrize("header", ["who,when,step", "who,when,step,minutes,note", "wer,wann,schritt,minuten", ""])
def test_other_columns_are_refused(header: str) -> None:
    instead = "write the columns who,when,step,minutes there, in any order"
    assert told(f"{header}\nab,2026-05-04,lower,4\n") == [
        f"times.csv:1: the first line is {header or 'empty'} – {instead}"
    ]


def test_every_fault_of_a_file_is_told() -> None:
    text = "who,when,step,minutes\nab,yesterday,lower,4\nab,2026-05-04,lower,long\n"
    assert [line.split(": ")[0] for line in told(text)] == ["times.csv:2", "times.csv:3"]


@pytest.mark.parametrize(
    ("old", "new", "problem"),
    [
        ("]}\n", "]\n", f"times.csv:5: the file breaks off or was changed – {AGAIN}"),
        ("times 1", "times 2", f"times.csv:1: the file is not procbuilder times 1 – {AGAIN}"),
        ('"minutes": 1}', '"minutes": "1e3"}', "times.csv:3: 1e3 is no number of minutes – "
         f"{LIMITS}"),
        (', "minutes": 1}', "}", "times.csv:3: the row does not have just who, when, step, minutes – "
         f"{AGAIN}"),
        ('{"who": "ab", "when": "2026-05-04T14:33", "step": "nut-slack", "minutes": 1}', "7",
         f"times.csv:3: the row does not have just who, when, step, minutes – {AGAIN}"),
    ],
)  # fmt: skip
def test_an_exported_file_that_is_wrong_in_one_way_is_named_with_its_line(old: str, new: str, problem: str) -> None:
    assert told(EXPORTED.replace(old, new)) == [problem]


def test_a_cell_without_end_is_no_traceback() -> None:
    text = "who,when,step,minutes\nab,2026-05-04,lower,4\n" + "x" * 140_000
    assert told(text) == ["times.csv:3: a cell is far too long – take out what is not a time"]
