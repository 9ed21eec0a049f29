"""What a page is made of: the templates with their filters, and the one script and style inside it."""

import base64
import json
import re
from collections.abc import Iterable
from fractions import Fraction
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup, escape

from procbuilder.model.procedure import Cue
from procbuilder.model.timecode import format_time
from procbuilder.publish import markdown, tokens, words
from procbuilder.publish.captions import webvtt
from procbuilder.publish.language import Language
from procbuilder.publish.overlay import drawing, outline, units
from procbuilder.publish.told import ToldHazard

STYLES = ("base.css", "page.css", "figure.css", "print.css")
_SIZE = re.compile(r"\bM\d+(?:x[\d.]+)?\b|\b\d[\d.]*(?:[–/-]\d[\d.]*)? ?(?:x|mm|cm|m|g|kg|ml|l|N·m|bar|V|A|°)(?!\w)")
FIRST_SCRIPT = "first.js"
SCRIPTS = (
    "common.js", "views.js", "clips.js", "job.js", "handover.js", "study.js", "screen.js", "stopwatch.js", "start.js",
)  # fmt: skip
"""The parts of the page's one script, in order: one function around them all keeps their names from the browser's."""


def first_script(folder: Path) -> str:
    """What must run before anything is painted."""
    return _joined(folder, [FIRST_SCRIPT])


def page_script(folder: Path) -> str:
    """All scripts as one."""
    return f'"use strict";\n(function () {{\n{_joined(folder, SCRIPTS)}}})();'


def page_style(templates: Path, language: Language, *more: str) -> str:
    """The tokens and the joined styles, with more of them behind, and what every printed page says at its edge."""
    before, between = map(language.text, words.PAGE_OF)
    edges = [f'@page {{ @bottom-center {{ content: "{before}" counter(page) "{between}" counter(pages); }} }}']
    edges += [
        f'@page {status} {{ @top-center {{ content: "{language.text(said)}"; font-weight: bold; }} }}'
        for status, said in words.STATUS_WORDS.items()
    ]
    return "\n".join((tokens.style(templates), _joined(templates / "html", (*STYLES, *more)), *edges))


def _joined(folder: Path, names: Iterable[str]) -> str:
    return "\n".join((folder / name).read_text(encoding="utf-8") for name in names)


@cache
def environment(folder: Path) -> Environment:
    """The templates of a folder: a word they ask for and do not get is an error."""
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
        measured=_measured,
        json=_json,
        worst_signal_first=_worst_signal_first,
        captions=_captions,
        drawing=drawing,
        outline=outline,
        units=units,
    )
    return environment


def data_address(kind: str, content: bytes) -> str:
    """Content inside the page, as an address."""
    return f"data:{kind};base64,{base64.b64encode(content).decode()}"


def _length_on_film(seconds: Fraction) -> str:
    return format_time(Fraction(round(seconds)))


def _measured(text: str) -> Markup:
    """The text with its sizes, counts and amounts marked, to be set in large type."""
    parts, at = [], 0
    for match in _SIZE.finditer(text):
        parts += [escape(text[at : match.start()]), Markup('<b class="figure">{}</b>').format(match[0])]
        at = match.end()
    return Markup("").join([*parts, escape(text[at:])])


def _worst_signal_first(hazards: Iterable[ToldHazard]) -> list[ToldHazard]:
    return sorted(hazards, key=lambda hazard: hazard.signal.rank)


def _captions(cues: Iterable[Cue]) -> str:
    """A caption file inside the page: browsers refuse one that lies beside it on ``file://``."""
    return data_address("text/vtt", webvtt(cues).encode())


def _json(data: object) -> Markup:
    """Data inside a script element: without ``<`` nothing in it can end the element."""
    return Markup(json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c"))
