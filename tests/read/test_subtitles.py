"""SubRip and WebVTT: nothing dropped in silence, no time misread."""

import pytest

from procbuilder.publish.wording.problems import line
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import TextFile


def read(text: str, name: str) -> tuple[list[tuple[float, float, str]], list[str]]:
    cues, problems = read_subtitles(TextFile(name, text))
    return [(float(cue.start), float(cue.end), cue.text) for cue in cues], [line(problem) for problem in problems]


def srt(times: str) -> tuple[list[tuple[float, float, str]], list[str]]:
    return read(f"1\n{times}\nSplit pin's out.\n", "a.srt")


def vtt(times: str) -> tuple[list[tuple[float, float, str]], list[str]]:
    return read(f"WEBVTT\n\n{times}\nSplit pin's out.\n", "a.vtt")


def test_cues_know_their_line() -> None:
    text = "1\n00:00:00,250 --> 00:00:03,673\nSplit pin's out.\n\n2\n00:00:04,000 --> 00:00:05,000\nWasher\noff.\n"
    cues, problems = read_subtitles(TextFile("a.srt", text))
    assert problems == ()
    assert [(cue.place.line, cue.text) for cue in cues] == [(2, "Split pin's out."), (6, "Washer\noff.")]


@pytest.mark.parametrize(
    ("times", "start", "end"),
    [
        ("00:00:01,000 --> 00:00:02,500", 1, 2.5),
        ("00:00:01.000 --> 00:00:02.500", 1, 2.5),
        ("100:00:01,000 --> 100:00:02,500 X1:40 X2:600", 360001, 360002.5),
    ],
)
def test_subrip_times(times: str, start: float, end: float) -> None:
    assert srt(times) == ([(start, end, "Split pin's out.")], [])


@pytest.mark.parametrize(
    "times",
    [
        "00:00:01,5 --> 00:00:02,000",  # pysrt reads 1.005 s
        "-00:00:01,000 --> 00:00:02,000",  # pysrt drops the sign
        "00:61:61,1500 --> 02:00:00,000",  # pysrt carries over
        "00:00:01,000 --> ",
        "0:01,000 --> 0:02,000",
    ],
)
def test_subrip_times_that_would_be_misread_are_reported(times: str) -> None:
    cues, problems = srt(times)
    assert cues == []
    assert problems == [
        f"a.srt:2: the times cannot be read: {times.strip()} – write it as 00:01:02,500 --> 00:01:05,000"
    ]


@pytest.mark.parametrize(
    ("times", "start", "end"),
    [
        ("00:00.000 --> 00:01.000", 0, 1),
        ("00:00:00.000 --> 00:01.000 align:start", 0, 1),
        ("000:00:00.000 --> 0:00:01.000", 0, 1),
        ("60:00:00.000 --> 60:00:01.000", 216000, 216001),
    ],
)
def test_webvtt_times_of_the_standard(times: str, start: float, end: float) -> None:
    assert vtt(times) == ([(start, end, "Split pin's out.")], [])


def test_a_cue_that_ends_early_is_kept_and_reported() -> None:
    assert vtt("00:01.000 --> 00:00.999") == (
        [(1, 0.999, "Split pin's out.")],
        ["a.vtt:3: the cue ends before it starts – the later time goes behind the arrow"],
    )


def test_header_notes_styles_and_markup_are_no_words() -> None:
    text = (
        "WEBVTT - strip\nKind: captions\n\nNOTE\nnot said\n\nSTYLE\n::cue { color: red }\n\n"
        "first\n00:01.000 --> 00:02.000\n<v Senior>Castle <b>nut</b> &amp; washer\n"
    )
    assert read(text, "a.vtt") == ([(1, 2, "Castle nut & washer")], [])


def test_text_without_times_is_reported_not_dropped() -> None:
    assert read("1\n00:00:01,000 --> 00:00:02,000\nCap off\n\nPin out\n", "a.srt")[1] == [
        "a.srt:5: no cue is read here: Pin out – a cue needs a line of times; write it as 00:01:02,500 --> 00:01:05,000"
    ]


def test_webvtt_without_its_first_line_is_reported() -> None:
    assert read("00:01.000 --> 00:02.000\nCap off\n", "a.vtt")[1][0] == (
        "a.vtt:1: the file does not begin with WEBVTT – write WEBVTT as its first line"
    )
