"""Captions: the words said during a clip, as W3C WebVTT."""

from collections.abc import Iterable
from fractions import Fraction

from procbuilder.model.procedure import Cue


def webvtt(cues: Iterable[Cue]) -> str:
    """The text of a caption file, in order of time.

    A cue without words, or one that does not last, is left out: the format has no place for it.
    """
    blocks = ["WEBVTT"]
    for cue in sorted(cues, key=lambda cue: (cue.start, cue.end)):
        lines = [_escaped(line.strip()) for line in cue.text.splitlines() if line.strip()]
        start, end = _stamp(cue.start), _stamp(cue.end)
        if lines and cue.start >= 0 and start < end:
            blocks.append("\n".join((f"{start} --> {end}", *lines)))
    return "\n\n".join(blocks) + "\n"


def _escaped(line: str) -> str:
    """Text that a reader cannot take for markup or for the line of times."""
    return line.replace("\0", "\ufffd").replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def _stamp(seconds: Fraction) -> str:
    """Hours, minutes, seconds and thousandths: ``00:01:15.250``."""
    whole, thousandths = divmod(round(seconds * 1000), 1000)
    minutes, second = divmod(whole, 60)
    hours, minute = divmod(minutes, 60)
    return f"{hours:02}:{minute:02}:{second:02}.{thousandths:03}"
