"""Numbers, tables and lists that are larger or odder than anything meant: reported soon, and never misread."""

from collections.abc import Callable

import pytest

from procbuilder.model.timecode import parse_time
from procbuilder.publish.wording.problems import line, said
from procbuilder.read.procedure import read_text
from procbuilder.read.steplist import read_step_list
from procbuilder.read.text import TextFile
from tests.growth import no_blow_up

ACCEPTED = "write 0:42 Prise off the dust cap, or 0:42-1:15 Prise off the dust cap"

QUOTES = 'close each quote in the same cell; a quote within a quoted cell is written twice: ""'


def problems(name: str, text: str) -> list[str]:
    """What reading a list reports."""
    _, found = read_step_list(TextFile(name, text))
    return [line(problem) for problem in found]


@pytest.mark.parametrize("time_", ["99999:00", "9999:59:59.999"])
def test_the_longest_times_are_read(time_: str) -> None:
    assert parse_time(time_) is not None
    assert parse_time(f"1{time_}") is None


@pytest.mark.parametrize("cell", ["1e9", "1e99999999", "1e-99999999", "1_0", "nan", "inf", "1/2", "9" * 5000])
def test_only_plain_seconds_are_seconds(cell: str) -> None:
    assert problems("a.csv", f"start,step\n{cell},cap off\n") == [
        f"a.csv:2: {cell} is no start – write 1:15 or seconds such as 75.5"
    ]


def unclosed(rows: int) -> str:
    """A list whose third row opens a quote that nothing closes."""
    return 'start,step\n1,cap off\n2,"pin out\n' + "".join(f"{n},step {n}\n" for n in range(3, rows))


def test_a_quote_that_never_closes_is_reported_where_it_begins() -> None:
    assert problems("a.csv", unclosed(30_000)) == [f"a.csv:3: the quotes of this row cannot be read – {QUOTES}"]


def test_a_quote_that_never_closes_makes_nothing_blow_up() -> None:
    def prepare(rows: int) -> Callable[[], object]:
        text = TextFile("a.csv", unclosed(rows))
        return lambda: read_step_list(text)

    no_blow_up(prepare, 60_000)


def test_a_quote_within_a_quoted_cell_costs_its_row_only() -> None:
    steps, found = read_step_list(TextFile("a.csv", 'start,step\n1,"cap "off""\n2,pin out\n'))
    assert [step.text for step in steps] == ["pin out"]
    assert [line(problem) for problem in found] == [f"a.csv:2: the quotes of this row cannot be read – {QUOTES}"]


def test_bare_seconds_of_five_thousand_digits_are_no_time() -> None:
    line = f"{'9' * 5000} cap off"
    assert problems("a.txt", line) == [f"a.txt:1: no time at the beginning: {line} – {ACCEPTED}"]


@pytest.mark.parametrize(
    "value",
    ["Time: " + "9" * 400 + ".5", "Wait: 12345678 | glue", "Time: 0." + "1" * 5000],
    ids=["big", "long", "fine"],
)
def test_minutes_that_nobody_works_are_reported(value: str) -> None:
    _, found = read_text(f"# T\n\n## S\n\n### Turn it\n\n- {value}\n")
    assert [said(problem).instead for problem in found] == ["write 12, or low/likely/high such as 8/10/15"]


def test_a_count_of_five_thousand_digits_stays_a_name() -> None:
    procedure, _ = read_text(f"# T\n\n## S\n\n### Turn it\n\n- Tool: {'9' * 5000} x bar\n")
    item = procedure.steps[0].fields[0].items[0]
    assert (item.quantity, item.name) == (None, f"{'9' * 5000} x bar")
