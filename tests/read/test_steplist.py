"""Rough step lists as people have them."""

from textwrap import dedent

import pytest

from procbuilder.model.procedure import ListedStep
from procbuilder.publish.wording.problems import line
from procbuilder.read.steplist import read_step_list
from procbuilder.read.text import TextFile

ACCEPTED = "write 0:42 Prise off the dust cap, or 0:42-1:15 Prise off the dust cap"


def read(text: str, name: str = "list.txt") -> tuple[list[tuple[float, float | None, str]], list[str]]:
    steps, problems = read_step_list(TextFile(name, dedent(text)))
    return [_short(step) for step in steps], [line(problem) for problem in problems]


def _short(step: ListedStep) -> tuple[float, float | None, str]:
    return float(step.start), None if step.end is None else float(step.end), step.text


def test_a_step_ends_where_the_next_begins_and_a_dash_closes_the_one_before() -> None:
    assert read("0:42 dust cap off\n1:15 -\n1:30 split pin out\n2:00.5 castle nut off\n") == (
        [(42, 75, "dust cap off"), (90, 120.5, "split pin out"), (120.5, None, "castle nut off")],
        [],
    )


@pytest.mark.parametrize(
    ("line", "step"),
    [
        ("0:42-1:15 dust cap off", (42, 75, "dust cap off")),
        ("0:42 – 1:15 dust cap off", (42, 75, "dust cap off")),
        ("0:42 to 1:15 dust cap off", (42, 75, "dust cap off")),
        ("- 0:42-1:15 dust cap off", (42, 75, "dust cap off")),
        ("3. 0:42-1:15 dust cap off", (42, 75, "dust cap off")),
        ("0:42 - dust cap off", (42, None, "dust cap off")),
        ("0:42: dust cap off", (42, None, "dust cap off")),
        ("[0:42] dust cap off", (42, None, "dust cap off")),
        ("1:02:15 4 wheel nuts off", (3735, None, "4 wheel nuts off")),
        ("0:42 2 to 3 turns back", (42, None, "2 to 3 turns back")),
    ],
)
def test_lines_with_a_time_in_front(line: str, step: tuple[float, float | None, str]) -> None:
    assert read(line) == ([step], [])


def test_a_recording_may_stand_before_the_time() -> None:
    steps, problems = read_step_list(TextFile("list.txt", "strip 0:42 cap off\nrefit 0:05 cap on\n"))
    assert problems == ()
    assert [(step.recording, step.start, step.end) for step in steps] == [("strip", 42, None), ("refit", 5, None)]


def test_bare_seconds_when_every_line_begins_with_them() -> None:
    assert read("42 cap off\n75.5-80 pin out\n90 nuts off\n") == (
        [(42, 75.5, "cap off"), (75.5, 80, "pin out"), (90, None, "nuts off")],
        [],
    )


def test_a_count_is_no_bare_second_when_another_line_has_a_time() -> None:
    assert read("0:42 cap off\n4 wheel nuts off\n") == (
        [(42, None, "cap off")],
        [f"list.txt:2: no time at the beginning: 4 wheel nuts off – {ACCEPTED}"],
    )


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("dust cap off", f"list.txt:2: no time at the beginning: dust cap off – {ACCEPTED}"),
        ("75 dust cap off", f"list.txt:2: no time at the beginning: 75 dust cap off – {ACCEPTED}"),
        ("1:75 dust cap off",
         "list.txt:2: 1:75 is not a time – seconds go up to 59, thousandths behind a point: 1:15.250"),
        ("1:15,5 dust cap off",
         "list.txt:2: 1:15,5 is not a time – seconds go up to 59, thousandths behind a point: 1:15.250"),
        ("0:43", f"list.txt:2: 0:43 has no words – {ACCEPTED}"),
    ],
)  # fmt: skip
def test_every_rejected_line_is_reported_with_what_would_be_taken(line: str, message: str) -> None:
    steps, problems = read(f"0:42 cap off\n{line}\n2:00 nut off\n")
    assert [step[2] for step in steps] == ["cap off", "nut off"]
    assert problems == [message]


def test_steps_without_length_are_kept_and_reported() -> None:
    steps, problems = read("0:42-0:42 cap off\n0:50-0:45 pin out\n")
    assert [step[2] for step in steps] == ["cap off", "pin out"]
    assert problems == [
        "list.txt:1: cap off: the step has no length – correct its start or its end",
        "list.txt:2: pin out: the step ends at 0:45, before it starts – correct its start or its end",
    ]


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("a.csv", "start,end,step\n0:42,1:15,dust cap off\n90,120.5,split pin out\n"),
        ("a.csv", "Start;End;Step\n0:42;1:15;dust cap off\n90;120.5;split pin out\n"),
        ("a.tsv", "time\tuntil\tdescription\n0:42\t1:15\tdust cap off\n90\t120.5\tsplit pin out\n"),
        ("a.csv", 'command,end,start\n"dust cap off",1:15,0:42\nsplit pin out,120.5,90\n'),
        (
            "a.srt",
            "1\n00:00:42,000 --> 00:01:15,000\ndust cap off\n\n2\n00:01:30,000 --> 00:02:00,500\nsplit pin out\n",
        ),
        ("a.vtt", "WEBVTT\n\n00:42.000 --> 01:15.000\ndust cap off\n\n01:30.000 --> 02:00.500\nsplit pin out\n"),
    ],
)
def test_tables_and_subtitles_are_step_lists_too(name: str, text: str) -> None:
    assert read(text, name) == ([(42, 75, "dust cap off"), (90, 120.5, "split pin out")], [])


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("end,step\n1:15,cap off\n",
         "a.csv:1: the header has no column for the start – give the columns names in the first line: start,end,step"),
        ("start,end\n0:42,1:15\n",
         "a.csv:1: the header has no column for the words – give the columns names in the first line: start,end,step"),
        ("start,step\nsoon,cap off\n", "a.csv:2: soon is no start – write 1:15 or seconds such as 75.5"),
        ("start,step\n-4,cap off\n", "a.csv:2: -4 is no start – write 1:15 or seconds such as 75.5"),
        ("start,end,step\n1,later,cap off\n", "a.csv:2: later is no end – write 1:15 or seconds such as 75.5"),
        ("start,step\n1,\n", "a.csv:2: the row has no words – write what is done"),
    ],
)  # fmt: skip
def test_table_with_one_fault_says_what_to_write_instead(text: str, message: str) -> None:
    assert read(text, "a.csv")[1] == [message]


def test_a_quoted_cell_of_several_lines_does_not_shift_the_line_numbers() -> None:
    assert read('start,step\n1,"cap\noff"\nsoon,pin\n', "a.csv")[1] == [
        "a.csv:4: soon is no start – write 1:15 or seconds such as 75.5"
    ]
