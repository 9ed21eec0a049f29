"""Times of subtitle files against the published formats, and against what the libraries make of them.

WebVTT: the W3C standard and the expectations of web-platform-tests, ``webvtt/parsing/file-parsing/tests``.
SubRip: the values of pysrt's own tests (``byroot/pysrt`` at 93f52f6d), and the traps found while running it.
"""

import pysrt
import pytest
import webvtt

from procbuilder.publish.wording.problems import line
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import TextFile

Read = tuple[list[tuple[float, float, str]], list[str]]


def read(name: str, text: str) -> Read:
    cues, problems = read_subtitles(TextFile(name, text))
    return [(float(cue.start), float(cue.end), cue.text) for cue in cues], [line(problem) for problem in problems]


def vtt(times: str) -> Read:
    return read("a.vtt", f"WEBVTT\n\n{times}\nCap off\n")


def srt(times: str) -> Read:
    return read("a.srt", f"1\n{times}\nCap off\n")


@pytest.mark.parametrize(
    ("times", "start", "end"),
    [
        ("00:00.000 --> 00:01.000", 0, 1),
        ("00:00:00.000 --> 00:01.000", 0, 1),
        ("00:00.000 --> 00:00:01.000", 0, 1),
        ("000:00:00.000 --> 0:00:01.000", 0, 1),
        ("60:00:00.000 --> 60:00:01.000", 216_000, 216_001),
        ("59:59.999-->60:00:00.000", 3599.999, 216_000),
    ],
)
def test_webvtt_times_that_the_standard_takes(times: str, start: float, end: float) -> None:
    assert vtt(times) == ([(start, end, "Cap off")], [])


@pytest.mark.parametrize(
    "time",
    ["00:00:000.000", "00:00:0.000", "00:00:00.00", "00:00:00.0000", "00:00:00", "0:00.000", "000:00.000",
     "00:00:00..000", "00:60:00.000", "00:00:60.000"],
)  # fmt: skip
def test_webvtt_times_that_the_standard_drops_are_reported(time: str) -> None:
    assert vtt(f"{time} --> 99:00:01.000") == (
        [],
        [f"a.vtt:3: the times cannot be read: {time} --> 99:00:01.000 – write it as 00:01:02.500 --> 00:01:05.000"],
    )


@pytest.mark.parametrize("time", ["00:00:0.000", "00:00:00.00", "0:00.000"])
def test_webvtt_times_for_which_the_library_must_be_guarded(time: str) -> None:
    """It takes what the standard drops; when this fails, the guard is no longer needed for it."""
    assert len(webvtt.from_string(f"WEBVTT\n\n{time} --> 99:00:01.000\nCap off\n").captions) == 1


@pytest.mark.parametrize(
    ("times", "start", "end", "what"),
    [
        ("00:00:01.000 --> 00:00:00.999", 1, 0.999, "the cue ends before it starts"),
        ("00:01:00.000 --> 00:00:59.999", 60, 59.999, "the cue ends before it starts"),
        ("00:00:01.000 --> 00:00:01.000", 1, 1, "the cue has no length"),
    ],
)
def test_webvtt_cues_that_end_early_are_kept_and_reported(times: str, start: float, end: float, what: str) -> None:
    assert vtt(times) == (
        [(start, end, "Cap off")],
        [f"a.vtt:3: {what} – the later time goes behind the arrow"],
    )


def test_webvtt_a_line_of_times_begins_a_cue_wherever_it_stands() -> None:
    """Behind the header, behind words or in a note, as the standard has it."""
    text = (
        "WEBVTT\n00:01.000 --> 00:02.000\nCap off\n00:03.000 --> 00:04.000\nPin out\n\n"
        "NOTE\n00:05.000 --> 00:06.000\nNut off\n"
    )
    assert read("a.vtt", text) == ([(1, 2, "Cap off"), (3, 4, "Pin out"), (5, 6, "Nut off")], [])


def test_webvtt_words_that_look_like_times_are_reported() -> None:
    """The standard lets an arrow within words end the cue; the library loses the words."""
    text = "WEBVTT\n\n00:01.000 --> 00:02.000\nCap off\nleft --> right\n"
    assert read("a.vtt", text) == (
        [(1, 2, "Cap off")],
        ["a.vtt:5: the times cannot be read: left --> right – write it as 00:01:02.500 --> 00:01:05.000"],
    )


@pytest.mark.parametrize(
    ("times", "start", "end"),
    [
        ("00:00:00,250 --> 00:00:03,673", 0.25, 3.673),
        ("01:02:03,004 --> 12:34:56,789", 3723.004, 45296.789),
        ("00:00:01.000 --> 00:00:02.500", 1, 2.5),
    ],
)
def test_subrip_times(times: str, start: float, end: float) -> None:
    assert srt(times) == ([(start, end, "Cap off")], [])


@pytest.mark.parametrize(
    ("time", "misread"),
    [("00:00:01,5", 1005), ("-00:00:01,000", 1000), ("00:61:61,1500", 3_722_500)],
)
def test_subrip_times_that_the_library_misreads_are_reported(time: str, misread: int) -> None:
    """Half a second as five thousandths, a time before the film as one in it, a minute 61."""
    assert pysrt.SubRipTime.from_string(time).ordinal == misread
    assert srt(f"{time} --> 02:00:00,000") == (
        [],
        [f"a.srt:2: the times cannot be read: {time} --> 02:00:00,000 – write it as 00:01:02,500 --> 00:01:05,000"],
    )


def test_subrip_a_cue_that_the_library_drops_in_silence_is_reported() -> None:
    text = "1\n00:00:01,000 --> 00:00,000\nCap off\n\n2\n00:00:03,000 --> 00:00:04,000\nPin out\n"
    assert len(pysrt.from_string(text)) == 1
    assert read("a.srt", text) == (
        [(3, 4, "Pin out")],
        ["a.srt:2: the times cannot be read: 00:00:01,000 --> 00:00,000 – "
         "write it as 00:01:02,500 --> 00:01:05,000"],
    )  # fmt: skip


def test_subrip_end_before_start_is_kept_as_typed() -> None:
    """The library makes its duration zero."""
    assert srt("00:00:02,000 --> 00:00:01,000") == (
        [(2, 1, "Cap off")],
        ["a.srt:2: the cue ends before it starts – the later time goes behind the arrow"],
    )


@pytest.mark.parametrize(
    "text",
    [
        "00:00:01,000 --> 00:00:02,000\nCap off\n\n00:00:03,000 --> 00:00:04,000\nPin out\n",
        "1\n00:00:01,000 --> 00:00:02,000\nCap off\n2\n00:00:03,000 --> 00:00:04,000\nPin out\n",
        "\n\n7\n00:00:01,000 --> 00:00:02,000 X1:40\nCap off\n\n\n7\n00:00:03,000 --> 00:00:04,000\nPin out",
    ],
)
def test_subrip_cues_without_number_or_blank_line_are_cues(text: str) -> None:
    assert read("a.srt", text) == ([(1, 2, "Cap off"), (3, 4, "Pin out")], [])


def test_subrip_only_markup_is_taken_out_of_the_words() -> None:
    """The library takes ``< 5 and >`` for markup."""
    words = '<i>gap</i> < 5 and > 3, <font color="red">not</font> a --> b'
    assert read("a.srt", f"1\n00:00:01,000 --> 00:00:02,000\n{words}\n") == (
        [(1, 2, "gap < 5 and > 3, not a --> b")],
        [],
    )
