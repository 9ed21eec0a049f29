"""A further format of step lists or subtitles is one more reader of a tuple."""

import re
from fractions import Fraction

import pytest

from procbuilder.model.origin import Place
from procbuilder.model.procedure import ListedStep
from procbuilder.read import steplist, subtitles
from procbuilder.read.cues import Cues, Format, read_cues
from procbuilder.read.listed import Listed, odd_steps, problem
from procbuilder.read.steplist import read_step_list
from procbuilder.read.subtitles import is_subtitles, read_subtitles
from procbuilder.read.text import TextFile


def _signed(source: TextFile) -> Listed:
    """``Prise off the dust cap @42``: the words first."""
    found = [(number, re.fullmatch(r"(.+) @(\d+)", line)) for number, line in enumerate(source.lines, 1) if line]
    steps = tuple(ListedStep(Place(source.name, at), one[1], Fraction(one[2]), None) for at, one in found if one)
    wrong = (problem(Place(source.name, at), "no-time", typed=source.lines[at - 1]) for at, one in found if not one)
    return steps, (*wrong, *odd_steps(steps))


def _dotted(source: TextFile) -> Cues:
    """``00.01.02.500 --> 00.01.05.000`` above the words."""
    time = re.compile(r"(\d\d)\.(\d\d)\.(\d\d)\.(\d{3})\Z")
    return read_cues(source, Format("dotted", time, lambda line: "-->" in line, "\n".join))


def test_a_list_in_a_new_format_is_read_by_its_reader(monkeypatch: pytest.MonkeyPatch) -> None:
    added = steplist.Reader(lambda name: name.endswith(".at"), _signed)
    monkeypatch.setattr(steplist, "READERS", (added, *steplist.READERS))
    steps, problems = read_step_list(TextFile("list.at", "Prise off the dust cap @42\nlate\nTurn it @75\n"))
    assert [(step.text, step.start, step.place.line) for step in steps] == [
        ("Prise off the dust cap", 42, 1),
        ("Turn it", 75, 3),
    ]
    assert [(str(one.place), one.form) for one in problems] == [("list.at:2", "no-time")]
    assert read_step_list(TextFile("list.txt", "0:42 Turn it\n"))[0][0].start == 42


def test_subtitles_in_a_new_format_serve_as_narration_and_as_steps(monkeypatch: pytest.MonkeyPatch) -> None:
    added = subtitles.Reader(".dot", lambda source: source.name.endswith(".dot"), _dotted)
    monkeypatch.setattr(subtitles, "READERS", (added, *subtitles.READERS))
    source = TextFile("a.dot", "00.00.01.500 --> 00.00.04.000\nTurn it\nslowly\n\n00:05 --> 00:06\nAnd on.\n")
    cues, problems = read_subtitles(source)
    assert [(cue.start, cue.end, cue.text) for cue in cues] == [(Fraction(3, 2), 4, "Turn it\nslowly")]
    assert [(str(one.place), one.form) for one in problems] == [("a.dot:5", "times-dotted")]
    assert is_subtitles("A.DOT")
    assert [step.text for step in read_step_list(source)[0]] == ["Turn it slowly"]


@pytest.mark.parametrize("name", ["a.srt", "a.vtt", "a.txt"])
def test_a_file_is_read_as_what_it_is_whatever_it_is_called(name: str) -> None:
    cues, _ = read_subtitles(TextFile(name, "WEBVTT\n\n00:01.000 --> 00:02.000\nA &amp; B\n"))
    assert [cue.text for cue in cues] == ["A & B"]
