"""Captions: the words said during a clip, as W3C WebVTT, in pieces that can be read while the clip runs."""

import textwrap
from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction

from procbuilder.model.procedure import Cue

LINES = 2
WIDTH = 42
"""Characters of a line."""
SPEED = 20
"""Characters a second that people can read beside a picture. All three are common practice of subtitling."""


def webvtt(cues: Iterable[Cue]) -> str:
    """The text of a caption file, in order of time, split as ``readable`` does.

    A cue without words, or one that does not last, is left out: the format has no place for it.
    """
    blocks = ["WEBVTT"]
    for cue in readable(cues):
        lines = [_escaped(line) for line in cue.text.splitlines()]
        blocks.append("\n".join((f"{_stamp(cue.start)} --> {_stamp(cue.end)}", *lines)))
    return "\n\n".join(blocks) + "\n"


def readable(cues: Iterable[Cue]) -> tuple[Cue, ...]:
    """The cues in pieces of at most two lines of 42 characters, each long enough to be read.

    A piece that is said faster than it can be read stays longer, and later ones wait for it. No word is lost: at the
    end of a clip the last pieces may come after it has ended.
    """
    shown: list[Cue] = []
    for piece in (piece for cue in _in_time(cues) for piece in _pieces(cue)):
        start = max(piece.start, shown[-1].end) if shown else piece.start
        end = max(piece.end, start + _reading_time(piece.text))
        shown.append(replace(piece, start=start, end=end))
    return tuple(shown)


def _in_time(cues: Iterable[Cue]) -> Iterator[Cue]:
    for cue in sorted(cues, key=lambda cue: (cue.start, cue.end)):
        lasts = cue.start >= 0 and round(cue.start * 1000) < round(cue.end * 1000)
        if lasts and cue.text.strip():
            yield cue


def _pieces(cue: Cue) -> Iterator[Cue]:
    """The parts of a cue; its time is shared out by their length."""
    texts = _texts(cue.text)
    whole = sum(map(len, texts))
    start = cue.start
    for text in texts:
        end = start + (cue.end - cue.start) * len(text) / whole
        yield replace(cue, start=start, end=end, text=text)
        start = end


def _texts(text: str) -> list[str]:
    lines = [" ".join(line.split()) for line in text.splitlines() if line.strip()]
    if len(lines) <= LINES and all(len(line) <= WIDTH for line in lines):
        return ["\n".join(lines)]
    lines = textwrap.wrap(" ".join(lines), WIDTH, break_on_hyphens=False)
    return ["\n".join(lines[at : at + LINES]) for at in range(0, len(lines), LINES)]


def _reading_time(text: str) -> Fraction:
    return Fraction(len(text), SPEED)


def _escaped(line: str) -> str:
    """Text that a reader cannot take for markup or for the line of times."""
    return line.replace("\0", "\ufffd").replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def _stamp(seconds: Fraction) -> str:
    """Hours, minutes, seconds and thousandths: ``00:01:15.250``."""
    whole, thousandths = divmod(round(seconds * 1000), 1000)
    minutes, second = divmod(whole, 60)
    hours, minute = divmod(minutes, 60)
    return f"{hours:02}:{minute:02}:{second:02}.{thousandths:03}"
