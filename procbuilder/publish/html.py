"""The apprentice's page: an edition as one HTML document, with its media beside it or inside it."""

import re
from collections import Counter
from collections.abc import Callable, Container, Iterable
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from types import ModuleType
from typing import Any
from urllib.parse import quote

from markupsafe import Markup

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.footage import Clip
from procbuilder.model.ledger import Balance
from procbuilder.model.problem import worst_first
from procbuilder.model.questions import about
from procbuilder.model.signal import Signal
from procbuilder.publish import csp, pagewords, words
from procbuilder.publish.howto import howto
from procbuilder.publish.language import Language, language_of, words_in
from procbuilder.publish.pagefiles import data_address, environment, first_script, page_script, page_style
from procbuilder.publish.phoneaway import phone_away
from procbuilder.publish.quotation import quotation
from procbuilder.publish.selftest import selftest
from procbuilder.publish.sheets.every import sheets
from procbuilder.publish.signs import drawings, used
from procbuilder.publish.speaker import spoken
from procbuilder.publish.spoken import Spoken
from procbuilder.publish.told import ToldEntry
from procbuilder.publish.wording.topics import topics

LONGEST_CLIP_INSIDE = 20
"""Seconds of a clip that may be carried inside ``phone.html``."""
CLIP_BYTES_INSIDE = 25_000_000
"""Bytes of all clips inside ``phone.html`` together."""
PROBLEMS_IN_SIGHT = 5
"""Further ones are folded away."""

_PLACE = re.compile(r"\0([^\0]+)\0")
"""Where a file goes into the page."""
_INSIDE = {".jpg": "image/jpeg", ".png": "image/png", ".mp4": "video/mp4"}


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


def phone(edition: Edition, *, templates: Path, media: Path) -> bytes:
    """``phone.html``: the same page in one file, with stills and short clips inside."""
    clips = _clips_inside(edition.steps, media)
    inside: set[str] = set()

    def place(file: str) -> str:
        inside.add(file)
        return f"\0{file}\0"

    html = _render(
        edition, templates, _Media(place, lambda clip: place(clip.file) if clip.file in clips else "", inside=True)
    )
    return _filled(html, inside, media)


def quotation_page(edition: Edition, *, templates: Path) -> str:
    """``quotation.html``: what an office quotes and books from; it has no script."""
    folder = templates / "html"
    language = language_of(edition.language)
    style = page_style(templates, language)
    return (
        environment(folder)
        .get_template("quotation.html")
        .render(
            edition=spoken(edition),
            quote=quotation(edition),
            **_said(pagewords, language),
            style=Markup(style),
            policy=csp.policy(style=style),
        )
    )


def sheets_page(edition: Edition, *, templates: Path) -> str:
    """``sheets.html``: all sheets to print, each at its own anchor; it has no script."""
    folder = templates / "html"
    language = language_of(edition.language)
    style = page_style(templates, language, "sheets.css")
    made = sheets(edition)
    signs = dict.fromkeys(sign.number for sheet in made for sign in sheet.signs)
    return (
        environment(folder)
        .get_template("sheets.html")
        .render(
            edition=spoken(edition),
            sheets=made,
            **_said(words, language),
            style=Markup(style),
            policy=csp.policy(style=style),
            drawings=Markup(drawings(signs, templates)) if signs else "",
        )
    )


def _said(module: ModuleType, language: Language) -> dict[str, Any]:
    """What a template speaks with: words, terms of the records, and the language of each."""
    return {
        "words": words_in(module, language),
        "language": language,
        "term": language.text,
        "own_lang": Markup(f' lang="{language.own}"') if language.foreign else "",
    }


def _beside(file: str) -> str:
    return "media/" + quote(file)


def _filled(html: str, files: Container[str], media: Path) -> bytes:
    """The page with these files in their places; as text, clips would take many times their size in memory."""
    whole, begin = BytesIO(), 0
    for place in filter(lambda place: place[1] in files, _PLACE.finditer(html)):
        whole.write(html[begin : place.start()].encode())
        whole.write(data_address(_INSIDE[Path(place[1]).suffix], (media / place[1]).read_bytes()).encode())
        begin = place.end()
    whole.write(html[begin:].encode())
    return whole.getvalue()


def _clips_inside(steps: Iterable[EditionStep], media: Path) -> set[str]:
    """The clips that are short enough, in order of the steps, until no bytes are left."""
    inside: set[str] = set()
    left = CLIP_BYTES_INSIDE
    for clip in (step.clip for step in steps if step.clip and not step.reserved):
        size = (media / clip.file).stat().st_size
        if clip.seconds <= LONGEST_CLIP_INSIDE and size <= left and clip.file not in inside:
            inside.add(clip.file)
            left -= size
    return inside


def _render(edition: Edition, templates: Path, media: _Media) -> str:
    folder = templates / "html"
    first, script = first_script(folder), page_script(folder)
    told = spoken(edition)
    language = told.language
    style = page_style(templates, language)
    return (
        environment(folder)
        .get_template("page.html")
        .render(
            edition=told,
            media=media,
            **_said(pagewords, language),
            first_script=Markup(first),
            script=Markup(script),
            style=Markup(style),
            policy=csp.policy(first, script, style=style),
            ids={step.number: step.id for step in edition.steps},
            questions=selftest(edition),
            howto=_howto(edition, media),
            ledger=_ledger(told),
            problems_in_sight=PROBLEMS_IN_SIGHT,
            folded=_folded(edition, language),
            signals=Signal,
            drawings=Markup(drawings(used(edition), templates)),
            phone_away=phone_away(edition),
        )
    )


def _howto(edition: Edition, media: _Media) -> dict[str, Any]:
    """For machines; what lies inside the page is not told to them a second time."""
    if media.inside:
        return howto(edition, still=lambda _: "", clip=lambda _: "")
    return howto(edition, still=media.still, clip=_beside)


def _ledger(edition: Spoken) -> dict[str, tuple[ToldEntry, ...]]:
    having = edition.having
    return {
        "open": having(Balance.OPEN, Balance.NEVER_OPENED),
        "assumed": having(Balance.ASSUMED),
        "left": having(Balance.LEFT_OPEN),
        "closed": having(Balance.CLOSED),
    }


def _folded(edition: Edition, language: Language) -> str:
    """What the problems that are folded away are about: ``7 about sizes, 2 about torques``."""
    counts = Counter(map(about, worst_first(edition.problems)[PROBLEMS_IN_SIGHT:]))
    return topics(counts.items(), language)
