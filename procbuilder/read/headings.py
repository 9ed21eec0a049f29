"""Step headings: spans of footage, the command, the id.

heading = [span {"," span}] command [" {#" id "}"]
span    = [name] time ("-" | "–" | " to ") time
"""

import re
from dataclasses import dataclass

from procbuilder.model.facts import Blank
from procbuilder.model.timecode import Span
from procbuilder.read.flaws import Flaw, Flaws, flaw
from procbuilder.read.mistimed import mistimed, sign_behind
from procbuilder.read.spans import ONE_TIME, SPAN, take_spans

_ID = re.compile(r"\s*\{#(?P<id>[^}]*)\}\s*\Z")
_EMPTY = re.compile(r"\(\s*\)|\[\s*\]")
"""Brackets in which nothing but a time stood."""
_GOOD_ID = re.compile(r"[a-z0-9][a-z0-9-]*\Z")


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading cut into its parts."""

    command: str
    spans: tuple[Span, ...] = ()
    id: str = ""
    flaws: tuple[Flaw, ...] = ()
    better: str = ""
    """The whole heading with its times put right; empty where that is not needed, or nobody can tell."""


def read_heading(text: str, recordings: tuple[str, ...]) -> Heading:
    """Cut the text of a third-level heading into spans, command and id.

    ``recordings`` are the names in the front matter: a span without a name belongs to the only one.
    """
    flaws: Flaws = []
    whole = text.strip()
    text, step_id = _take_id(whole, flaws)
    spans, rest = take_spans(text, recordings, flaws)
    better = ""
    glued = text.removesuffix(rest)[-1:].isdecimal()
    if spans and (sign := sign_behind(rest, glued=glued)):
        rest = rest.removeprefix(sign)
        better = f"{text.removesuffix(sign + rest).strip()} {rest}"
        flaws.append(flaw("sign-behind", sign=sign.strip()))
    elif not spans and (wrong := mistimed(rest, recordings)):
        better = wrong.good
        form = "mistimed" if wrong.certain else "maybe-a-time"
        flaws.append(flaw(form if better else "mistimed-unclear", time=wrong.typed))
    elif not spans and (match := ONE_TIME.match(rest)):
        flaws.append(flaw("no-end", start=match["time"], end=Blank("end")))
        rest = rest[match.end() :].strip()
    elif match := SPAN.search(rest):
        at = match.start() if match["name"] in recordings else match.start("start")
        time, others = rest[at : match.end()], " ".join(_EMPTY.sub("", rest[:at] + rest[match.end() :]).split())
        flaws.append(flaw("time-inside", time=time, others=others))
    if not rest:
        flaws.append(flaw("no-command"))
    mark = whole.removeprefix(text)
    return Heading(rest, spans, step_id, tuple(flaws), f"{better}{mark}" if better else "")


def _take_id(text: str, flaws: Flaws) -> tuple[str, str]:
    match = _ID.search(text)
    if not match:
        return text, ""
    step_id, text = match["id"].strip(), text[: match.start()].rstrip()
    if _GOOD_ID.match(step_id):
        return text, step_id
    flaws.append(flaw("id", id=step_id, good=slug(step_id)))
    return text, ""


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
