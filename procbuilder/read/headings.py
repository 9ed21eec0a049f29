"""Step headings: spans of footage, the command, the id.

heading = [span {"," span}] command [" {#" id "}"]
span    = [name] time ("-" | "–" | " to ") time
"""

import re
from dataclasses import dataclass

from procbuilder.model.timecode import Span, format_time, parse_time
from procbuilder.read.flaws import Flaw, Flaws, flaw

_TIME = r"\d+:\d+(?::\d+)?(?:\.\d+)?"
_SPAN = re.compile(
    rf"(?:(?<![a-z0-9_-])(?P<name>[a-z][a-z0-9_-]*)\s+)?(?<!\d)(?P<start>{_TIME})(?:\s*[-–]\s*|\s+to\s+)(?P<end>{_TIME})(?!\w)"
)
_COMMA = re.compile(r"\s*,\s*")
_ONE_TIME = re.compile(rf"(?:[a-z][a-z0-9_-]*\s+)?(?P<time>{_TIME})(?!\w)")
_ID = re.compile(r"\s*\{#(?P<id>[^}]*)\}\s*\Z")
_GOOD_ID = re.compile(r"[a-z0-9][a-z0-9-]*\Z")


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading cut into its parts."""

    command: str
    spans: tuple[Span, ...] = ()
    id: str = ""
    flaws: tuple[Flaw, ...] = ()


def read_heading(text: str, recordings: tuple[str, ...]) -> Heading:
    """Cut the text of a third-level heading into spans, command and id.

    ``recordings`` are the names in the front matter: a span without a name belongs to the only one.
    """
    flaws: Flaws = []
    text, step_id = _take_id(text.strip(), flaws)
    spans, rest = take_spans(text, recordings, flaws)
    if not spans and (match := _ONE_TIME.match(rest)):
        start = match["time"]
        flaws.append(flaw("no-end", start=start, end=_later(start)))
        rest = rest[match.end() :].strip()
    elif match := _SPAN.search(rest):
        at = match.start() if match["name"] in recordings else match.start("start")
        time, others = rest[at : match.end()], " ".join((rest[:at] + rest[match.end() :]).split())
        flaws.append(flaw("time-inside", time=time, others=others))
    if not rest:
        flaws.append(flaw("no-command"))
    return Heading(rest, spans, step_id, tuple(flaws))


def _later(time: str) -> str:
    seconds = parse_time(time)
    return format_time(seconds + 10) if seconds is not None else "1:15"


def _take_id(text: str, flaws: Flaws) -> tuple[str, str]:
    match = _ID.search(text)
    if not match:
        return text, ""
    step_id, text = match["id"].strip(), text[: match.start()].rstrip()
    if _GOOD_ID.match(step_id):
        return text, step_id
    flaws.append(flaw("id", id=step_id, good=slug(step_id)))
    return text, ""


def take_spans(text: str, recordings: tuple[str, ...], flaws: Flaws) -> tuple[tuple[Span, ...], str]:
    """The spans at the beginning of a text, and what follows them."""
    spans: list[Span] = []
    name = recordings[0] if len(recordings) == 1 else ""
    rest = text
    while match := _SPAN.match(rest):
        name = match["name"] or name
        if span := _span(name, match, flaws):
            spans.append(span)
            if not name:
                flaws.append(flaw("which-recording", time=match[0], names=recordings or ("strip",)))
        rest = rest[match.end() :]
        comma = _COMMA.match(rest)
        if not comma or not _SPAN.match(rest[comma.end() :]):
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


def slug(text: str) -> str:
    """An id made of the first words of a text: small letters, digits and ``-``."""
    words = re.findall(r"[a-z0-9]+", text.casefold())
    return "-".join(words[:5]) or "step"


def free_id(wanted: str, taken: dict[str, int]) -> str:
    """The wanted id, or the same with the first free number behind it; from now on it is taken.

    ``taken`` holds the last number given out behind each id, so that a thousand equal names cost no more than others.
    """
    name = wanted
    while name in taken:
        taken[wanted] += 1
        name = f"{wanted}-{taken[wanted]}"
    taken[name] = 1
    return name
