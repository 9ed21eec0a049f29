"""The apprentice's page: an edition as one HTML document, with its media beside it or inside it."""

import base64
import json
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import quote

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.footage import Clip
from procbuilder.model.ledger import Balance
from procbuilder.model.problem import Severity, worst_first
from procbuilder.model.procedure import Cue
from procbuilder.model.questions import about
from procbuilder.model.timecode import format_time
from procbuilder.model.worked import Hazard, Signal
from procbuilder.publish import csp, markdown, pagewords, words
from procbuilder.publish.captions import webvtt
from procbuilder.publish.cards import cards
from procbuilder.publish.howto import howto
from procbuilder.publish.opened import open_at
from procbuilder.publish.overlay import drawing, outline, units
from procbuilder.publish.quotation import quotation
from procbuilder.publish.selftest import selftest
from procbuilder.publish.sheets.every import sheets
from procbuilder.publish.signs import drawings, used
from procbuilder.publish.spoken import fasteners, measured, moments, torque_source
from procbuilder.publish.timebars import bars
from procbuilder.publish.timewords import sentences

STYLES = ("base.css", "page.css", "figure.css", "print.css")
LONGEST_CLIP_INSIDE = 20
"""Seconds of a clip that may be carried inside ``phone.html``."""
CLIP_BYTES_INSIDE = 25_000_000
"""Bytes of all clips inside ``phone.html`` together."""
PROBLEMS_IN_SIGHT = 5
"""Further ones are folded away."""
SCRIPTS = (
    "common.js", "views.js", "clips.js", "job.js", "handover.js", "study.js", "screen.js", "stopwatch.js", "start.js",
)  # fmt: skip
"""The parts of the page's one script, in order: one function around them all keeps their names from the browser's."""


@dataclass(frozen=True, slots=True)
class _Media:
    """Where the page finds its pictures and clips."""

    still: Callable[[str], str]
    clip: Callable[[Clip], str]
    """Empty when the clip is left out and the still stands alone."""
    inside: bool


def page(edition: Edition, *, templates: Path) -> str:
    """``index.html``, which refers to the files in ``media/`` beside it."""
    return _render(edition, templates, _Media(_beside, lambda clip: _beside(clip.file), inside=False))


def phone(edition: Edition, *, templates: Path, media: Path) -> str:
    """``phone.html``: the same page in one file, with stills and short clips inside."""
    clips = _clips_inside(edition.steps, media)

    def still(file: str) -> str:
        return _data("image/png" if file.endswith(".png") else "image/jpeg", (media / file).read_bytes())

    return _render(edition, templates, _Media(still, lambda clip: clips.get(clip.file, ""), inside=True))


def quotation_page(edition: Edition, *, templates: Path) -> str:
    """``quotation.html``: what an office quotes and books from; it has no script."""
    folder = templates / "html"
    style = _joined(folder, STYLES)
    return (
        _environment(folder)
        .get_template("quotation.html")
        .render(
            edition=edition,
            quote=quotation(edition),
            words=pagewords,
            style=Markup(style),
            policy=csp.policy(script="", style=style),
            status_words=words.STATUS.get(edition.status, ""),
        )
    )


def sheets_page(edition: Edition, *, templates: Path) -> str:
    """``sheets.html``: all sheets to print, each at its own anchor; it has no script."""
    folder = templates / "html"
    style = _joined(folder, (*STYLES, "sheets.css"))
    made = sheets(edition)
    signs = dict.fromkeys(sign for sheet in made for sign in sheet.signs)
    return (
        _environment(folder)
        .get_template("sheets.html")
        .render(
            edition=edition,
            sheets=made,
            words=words,
            style=Markup(style),
            policy=csp.policy(script="", style=style),
            status_words=words.STATUS.get(edition.status, ""),
            drawings=Markup(drawings(signs, templates)) if signs else "",
        )
    )


def _beside(file: str) -> str:
    return "media/" + quote(file)


def _data(kind: str, content: bytes) -> str:
    return f"data:{kind};base64,{base64.b64encode(content).decode()}"


def _clips_inside(steps: Iterable[EditionStep], media: Path) -> dict[str, str]:
    """The clips that are short enough, in order of the steps, until the room is used up."""
    inside: dict[str, str] = {}
    room = CLIP_BYTES_INSIDE
    for clip in (step.clip for step in steps if step.clip and not step.reserved):
        size = (media / clip.file).stat().st_size
        if clip.seconds <= LONGEST_CLIP_INSIDE and size <= room and clip.file not in inside:
            inside[clip.file] = _data("video/mp4", (media / clip.file).read_bytes())
            room -= size
    return inside


def _render(edition: Edition, templates: Path, media: _Media) -> str:
    folder = templates / "html"
    script = _script(folder)
    style = _joined(folder, STYLES)
    return (
        _environment(folder)
        .get_template("page.html")
        .render(
            edition=edition,
            media=media,
            words=pagewords,
            script=Markup(script),
            style=Markup(style),
            policy=csp.policy(script=script, style=style),
            status_words=words.STATUS.get(edition.status, ""),
            ids={step.number: step.id for step in edition.steps},
            open_at=open_at(edition),
            questions=selftest(edition),
            howto=_howto(edition, media),
            ledger=_ledger(edition),
            problems=worst_first(edition.problems),
            problems_in_sight=PROBLEMS_IN_SIGHT,
            folded=_folded(edition),
            severities=Severity,
            signals=Signal,
            bars=bars(edition),
            drawings=Markup(drawings(used(edition), templates)),
            cards=cards(edition),
        )
    )


def _script(folder: Path) -> str:
    return f'"use strict";\n(function () {{\n{_joined(folder, SCRIPTS)}}})();'


def _joined(folder: Path, names: Iterable[str]) -> str:
    return "\n".join((folder / name).read_text(encoding="utf-8") for name in names)


def _howto(edition: Edition, media: _Media) -> dict[str, Any]:
    """For machines; what lies inside the page is not told to them a second time."""
    if media.inside:
        return howto(edition, still=lambda _: "", clip=lambda _: "")
    return howto(edition, still=media.still, clip=_beside)


@cache
def _environment(folder: Path) -> Environment:
    environment = Environment(
        loader=FileSystemLoader(folder),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters.update(
        markdown=markdown.html,
        length_on_film=_length_on_film,
        plain=_plain,
        moments=moments,
        source=torque_source,
        fasteners=fasteners,
        measured=measured,
        json=_json,
        worst_signal_first=_worst_signal_first,
        captions=_captions,
        drawing=drawing,
        outline=outline,
        units=units,
        sentences=sentences,
    )
    return environment


def _ledger(edition: Edition) -> dict[str, tuple[object, ...]]:
    having = edition.ledger.having
    return {
        "open": having(Balance.OPEN, Balance.NEVER_OPENED),
        "assumed": having(Balance.ASSUMED),
        "left": having(Balance.LEFT_OPEN),
        "closed": having(Balance.CLOSED),
    }


def _folded(edition: Edition) -> str:
    """What the problems that are folded away are about: ``7 about sizes, 2 about torques``."""
    kinds = Counter(map(about, worst_first(edition.problems)[PROBLEMS_IN_SIGHT:]))
    return ", ".join(pagewords.KIND_OF_PROBLEM.format(count=count, kind=kind) for kind, count in kinds.items())


def _length_on_film(seconds: Fraction) -> str:
    return format_time(Fraction(round(seconds)))


def _plain(number: Decimal) -> str:
    return f"{number:f}"


def _worst_signal_first(hazards: Iterable[Hazard]) -> list[Hazard]:
    order = list(Signal)
    return sorted(hazards, key=lambda hazard: order.index(hazard.signal))


def _captions(cues: Iterable[Cue]) -> str:
    """A caption file inside the page: browsers refuse one that lies beside it on ``file://``."""
    return _data("text/vtt", webvtt(cues).encode())


def _json(data: object) -> Markup:
    """Data inside a script element: without ``<`` nothing in it can end the element."""
    return Markup(json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c"))
