"""Times of a heading that are typed wrong: what was meant is proposed where it is certain enough, else asked."""

import re
from dataclasses import dataclass
from fractions import Fraction

from procbuilder.model.timecode import format_time, parse_time
from procbuilder.read.spans import ONE_TIME, SPAN, TIME

_PIECE = r"[\dOo]{1,4}(?:[:.;,hH][\dOo]{1,2}){0,3}[a-z]?(?![\w%])"
_JOINT = r"\s*(?:[-–—−~/_|]+>?|=>|→|\.{2,3}|…)\s*|\s+[a-z]{2,5}\s+|\s+"
_START = r"[^\w\s]*\s*(?:(?P<name>[A-Za-z][\w-]*)\s*[:.,]?\s+)?[^\w\s]*"
"""Signs, and the name of a recording."""
_RANGE = re.compile(rf"{_START}(?P<start>{_PIECE})(?P<joint>{_JOINT})(?P<end>{_PIECE})[\W_]*(?P<rest>.*)\Z", re.S)
_HALF = re.compile(rf"{_START}(?P<start>{TIME})(?!\w)(?P<rest>.*)\Z")
_SIGN = re.compile(r"(?:[:;.|]+|[–—~-]+(?=\s))\s*(?=\w)")
_GLUED = re.compile(r"[–—~-]+(?=\w)")
_LINE = re.compile(r"\s{0,3}(?P<signs>#{0,6})(?P<gap>\s*)[*_]*(?P<text>\S.*?)[*_]*\s*\Z")


@dataclass(frozen=True, slots=True)
class Mistimed:
    """The beginning of a heading that looks like times and is none."""

    typed: str
    good: str
    """The heading as it was meant; empty when nobody can tell."""
    certain: bool
    """It can hardly be anything but a time."""


def mistimed(text: str, recordings: tuple[str, ...]) -> Mistimed | None:
    """The times at the beginning of a heading that cannot be read; None when there are none."""
    match = _RANGE.match(text)
    if match and _is_range(match, recordings):
        typed = text[: match.start("rest")].strip()
        return Mistimed(typed, _meant(match), certain=_has_colon(match))
    half = None if ONE_TIME.match(text) else _HALF.match(text)
    if half and (not half["name"] or half["name"].lower() in recordings):
        return Mistimed(text[: half.start("rest")].strip(), "", certain=True)
    return None


def sign_behind(rest: str, *, glued: bool) -> str:
    """The sign between times and command that belongs to neither: the colon of ``0:48-0:58: Put``.

    ``glued``: nothing stands between the times and what follows. A dash before a word may belong to it otherwise.
    """
    match = _SIGN.match(rest) or (_GLUED.match(rest) if glued else None)
    return match[0] if match else ""


def find_heading(line: str) -> str:
    """The heading that a line of text was meant to be: ``###Put``, or times with a command; else empty."""
    match = _LINE.match(line)
    if not match:
        return ""
    signs, text = match["signs"], match["text"]
    span = SPAN.match(text)
    if span and re.match(r"\W*[^\W\d_]", text[span.end() :]):
        return f"### {text}"
    return f"{signs[:3]} {text}" if len(signs) > 1 and not match["gap"] and text[0].isalnum() else ""


def _has_colon(match: re.Match[str]) -> bool:
    return any(sign in match[part] for part in ("start", "end") for sign in ":;hH")


def _is_range(match: re.Match[str], recordings: tuple[str, ...]) -> bool:
    """Two numbers are taken for times when they are written so, or when a capital letter follows them."""
    start, end, rest = match["start"], match["end"], match["rest"]
    named = not match["name"] or match["name"].lower() in recordings
    if not named or not all(re.search(r"\d", part) for part in (start, end)):
        return False
    if _has_colon(match):
        return True
    joint = match["joint"].strip()
    joined = joint not in ("", "/") and not joint.isalpha()
    long = all(len(re.sub(r"\D", "", part)) > 1 for part in (start, end))
    return joined and long and (rest[:1].isupper() or bool(match["name"]))


def _meant(match: re.Match[str]) -> str:
    """The heading with its times as minutes and seconds; empty when they are none, or do not rise."""
    start, end = (_read(match[part]) for part in ("start", "end"))
    if ":" in start and end.isdecimal():
        end = f"{start.rpartition(':')[0]}:{end}"
    first, last = (Fraction(int(text)) if text.isdecimal() else parse_time(text) for text in (start, end))
    if first is None or last is None or not first < last or not match["rest"]:
        return ""
    name = (match["name"] or "").lower()
    return f"{name} {format_time(first)}-{format_time(last)} {match['rest']}".strip()


def _read(text: str) -> str:
    """A time with the signs that were struck for others: ``0.48`` and ``O:48`` are 0:48, ``48s`` is 48."""
    plain = re.sub(r"[.;,hH]", ":", text.translate(str.maketrans("Oo", "00")))
    return plain.removesuffix("s")
