"""Caption files read by a browser: what it shows is what was said, at the time at which it was said."""

import base64
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue
from procbuilder.publish.captions import readable, webvtt

if TYPE_CHECKING:
    from playwright.sync_api import Browser

SAID = [
    ("0", "0.9", "nuts & bolts &amp; &lt; &copy"),
    ("0.5", "1.4996", "<i>left</i> <script>alert(1)</script> <00:00:01.000>"),
    ("2", "3", "left --> right\n00:00.000 --> 00:01.000"),
    ("59.999", "60.001", "first line\nsecond line"),
    ("3599.5", "3600.25", "NOTE this is said"),
    ("3661", "7322.001", "past the hour – 15 N·m"),
    ("363600", "363601", "STYLE\nREGION\nWEBVTT"),
    ("363602", "363603", "{b} 7 < 8 > 6 \u202bשמן\u202c 油"),
]
READ = """text => new Promise((done, failed) => {
    const video = document.createElement("video"), track = document.createElement("track");
    track.kind = "captions";
    track.addEventListener("load", () => done(Array.from(track.track.cues, cue =>
        [cue.startTime, cue.endTime, cue.getCueAsHTML().textContent, cue.getCueAsHTML().childElementCount])));
    track.addEventListener("error", () => failed(new Error("the file is refused")));
    video.append(track);
    document.body.append(video);
    track.track.mode = "hidden";
    track.src = "data:text/vtt;base64," + text;
})"""


def read_by_browser(browser: "Browser", file: bytes) -> list[list[object]]:
    """Start, end, words and number of markup elements of each cue."""
    page = browser.new_page()
    try:
        cues: list[list[object]] = page.evaluate(READ, base64.b64encode(file).decode())
    finally:
        page.close()
    return cues


def test_captions_are_read_by_a_browser_as_they_were_meant(browser: "Browser") -> None:
    """Chromium's reader follows the W3C standard; times are compared to the thousandth."""
    cues = [Cue(Place("strip.srt", 1), Fraction(start), Fraction(end), text) for start, end, text in SAID]
    meant = [[round(float(cue.start), 3), round(float(cue.end), 3), cue.text, 0] for cue in readable(cues)]
    assert read_by_browser(browser, webvtt(cues).encode()) == meant


def test_captions_without_escaping_would_be_misread(browser: "Browser") -> None:
    """The comparison can fail: the same words written raw are markup to the browser."""
    raw = "WEBVTT\n\n00:00:00.000 --> 00:00:01.000\n<i>left</i>\nleft --> right\n"
    assert read_by_browser(browser, raw.encode()) == [[0, 1, "left", 1]]


@pytest.mark.parametrize("time", ["00:00:0.000", "00:00:00.00", "0:00.000", "00:60:00.000", "00:00:60.000"])
def test_the_browser_drops_the_times_that_we_report(browser: "Browser", time: str) -> None:
    text = f"WEBVTT\n\n{time} --> 99:00:01.000\nCap off\n\n00:01.000 --> 00:02.000\nPin out\n"
    assert [cue[2] for cue in read_by_browser(browser, text.encode())] == ["Pin out"]


def test_the_browser_reads_a_whole_page_of_captions(browser: "Browser", tmp_path: Path) -> None:
    """Two thousand cues, from a file on disk, none lost and none moved."""
    cues = [Cue(Place("a.srt", n), Fraction(n * 7, 10), Fraction(n * 7 + 6, 10), f"line {n}") for n in range(2000)]
    path = tmp_path / "long.vtt"
    path.write_text(webvtt(cues), encoding="utf-8")
    read = read_by_browser(browser, path.read_bytes())
    assert [cue[:3] for cue in read] == [
        [round(float(cue.start), 3), round(float(cue.end), 3), cue.text] for cue in cues
    ]
