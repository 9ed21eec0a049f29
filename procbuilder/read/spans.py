"""Spans of footage as they are typed: ``[name] time ("-" | "–" | " to ") time``."""

import re

from procbuilder.model.timecode import Span, parse_time
from procbuilder.read.flaws import Flaws, flaw

TIME = r"\d+:\d+(?::\d+)?(?:\.\d+)?"
SPAN = re.compile(
    rf"(?:(?<![a-z0-9_-])(?P<name>[a-z][a-z0-9_-]*)\s+)?(?<!\d)(?P<start>{TIME})(?:\s*[-–]\s*|\s+to\s+)(?P<end>{TIME})(?!\w)"
)
ONE_TIME = re.compile(rf"(?:[a-z][a-z0-9_-]*\s+)?(?P<time>{TIME})(?!\w)")
_COMMA = re.compile(r"\s*,\s*")


def take_spans(text: str, recordings: tuple[str, ...], flaws: Flaws) -> tuple[tuple[Span, ...], str]:
    """The spans at the beginning of a text, and what follows them."""
    spans: list[Span] = []
    name = recordings[0] if len(recordings) == 1 else ""
    rest = text
    while match := SPAN.match(rest):
        name = match["name"] or name
        if span := _span(name, match, flaws):
            spans.append(span)
            if not name:
                flaws.append(flaw("which-recording", time=match[0], names=recordings or ("strip",)))
        rest = rest[match.end() :]
        comma = _COMMA.match(rest)
        if not comma or not SPAN.match(rest[comma.end() :]):
            return tuple(spans), rest.lstrip(" \t,").strip() if spans else rest.strip()
        rest = rest[comma.end() :]
    return tuple(spans), rest.strip()


def _span(name: str, match: re.Match[str], flaws: Flaws) -> Span | None:
    start, end = parse_time(match["start"]), parse_time(match["end"])
    for text, seconds in ((match["start"], start), (match["end"], end)):
        if seconds is None:
            flaws.append(flaw("no-time", time=text))
    if start is None or end is None:
        return None
    return Span(name, start, end)
