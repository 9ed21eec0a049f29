"""Captions are W3C WebVTT, whatever was said."""

import io
from fractions import Fraction
from itertools import pairwise

import pytest
import webvtt as reader

from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue
from procbuilder.publish.captions import readable, webvtt


def cue(start: str, end: str, text: str) -> Cue:
    return Cue(Place("words.srt", 1), Fraction(start), Fraction(end), text)


def test_webvtt_two_cues_gives_the_exact_file() -> None:
    """Two decimals, hours and thousandths come out in the one form that every reader takes."""
    text = webvtt([cue("0", "3/2", "first the top"), cue("3675.25", "3678.0004", "then the sides\nslowly")])
    assert text == (
        "WEBVTT\n"
        "\n"
        "00:00:00.000 --> 00:00:01.500\n"
        "first the top\n"
        "\n"
        "01:01:15.250 --> 01:01:18.000\n"
        "then the sides\n"
        "slowly\n"
    )


def test_webvtt_without_cues_is_an_empty_caption_file() -> None:
    assert webvtt([]) == "WEBVTT\n"


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("nuts & bolts", "nuts &amp; bolts"),
        ("<i>left</i>", "&lt;i&gt;left&lt;/i&gt;"),
        ("00:01.000 --> 00:02.000", "00:01.000 --&gt; 00:02.000"),
        ("one\n\n\ntwo", "one\ntwo"),
        ("one\r\ntwo", "one\ntwo"),
        ("one\r\ntwo\rthree", "one two three"),
        ("nil \0 byte", "nil \N{REPLACEMENT CHARACTER} byte"),
    ],
)
def test_webvtt_hostile_words_stay_words(said: str, written: str) -> None:
    assert webvtt([cue("0", "2", said)]) == f"WEBVTT\n\n00:00:00.000 --> 00:00:02.000\n{written}\n"


@pytest.mark.parametrize(
    ("start", "end", "text"),
    [("1", "1", "no length"), ("2", "1", "ends first"), ("1", "1.0004", "rounds to nothing"), ("1", "2", " \n "),
     ("-1", "1", "before the clip")],
)  # fmt: skip
def test_webvtt_a_cue_that_no_reader_could_show_is_left_out(start: str, end: str, text: str) -> None:
    assert webvtt([cue(start, end, text), cue("3", "4", "stays")]) == (
        "WEBVTT\n\n00:00:03.000 --> 00:00:04.000\nstays\n"
    )


def test_webvtt_cues_come_in_order_of_time() -> None:
    text = webvtt([cue("5", "6", "late"), cue("1", "2", "early")])
    assert [line for line in text.splitlines() if line.isalpha()] == ["WEBVTT", "early", "late"]


def test_webvtt_is_read_back_by_another_reader() -> None:
    text = webvtt([cue("0.04", "1.9", "a little"), cue("60", "3599.999", "more")])
    captions = reader.from_buffer(io.StringIO(text)).captions
    assert [(one.start, one.end, one.text) for one in captions] == [
        ("00:00:00.040", "00:00:01.900", "a little"),
        ("00:01:00.000", "00:59:59.999", "more"),
    ]


LONG = (
    "turn the hub a little after each push because a bent cap lets water in and then the bearing runs dry within "
    "a week or two and you are called out on a Sunday"
)


def test_captions_have_at_most_two_lines_of_forty_two_characters() -> None:
    """The limits of the caption guides (a university's, after a streaming service's): 42 characters, two lines."""
    shown = readable([cue("0", "12", LONG), cue("12", "14", "short")])
    lines = [line for one in shown for line in one.text.split("\n")]
    assert max(len(line) for line in lines) <= 42
    assert [one.text.count("\n") + 1 for one in shown] == [2, 2, 1]
    assert " ".join(lines) == f"{LONG} short"
    assert (shown[0].start, shown[-2].end, shown[-1].start) == (0, 12, 12)


def test_captions_are_not_faster_than_twenty_characters_a_second() -> None:
    shown = readable([cue("0", "2", LONG), cue("2", "3", "next"), cue("30", "31", "a pause before")])
    assert all(len(one.text) <= 20 * (one.end - one.start) for one in shown)
    assert all(before.end <= after.start for before, after in pairwise(shown))
    assert shown[-1].start == 30


def test_captions_a_word_longer_than_a_line_is_cut_and_not_lost() -> None:
    (shown,) = readable([cue("0", "9", "x" * 50)])
    assert shown.text == "x" * 42 + "\n" + "x" * 8
