"""Small wordings of facts that page and self-test share."""

import re
from collections.abc import Iterable

from markupsafe import Markup, escape

from procbuilder.model.edition import Named
from procbuilder.model.ledger import Moment
from procbuilder.model.timecode import format_time
from procbuilder.model.worked import TorqueRow
from procbuilder.publish.language import Language
from procbuilder.publish.pagewords import AT_STEP, FROM_DOCUMENT, NO_SOURCE
from procbuilder.publish.terms import origin

_MEASURED = re.compile(
    r"\bM\d+(?:x[\d.]+)?\b|\b\d[\d.]*(?:[–/-]\d[\d.]*)? ?(?:x|mm|cm|m|g|kg|ml|l|N·m|bar|V|A|°)(?!\w)"
)


def torque_source(row: TorqueRow, language: Language) -> str:
    """Where a torque value comes from; the document counts when the value itself names none."""
    if row.origin.words:
        return origin(row.origin.words, language)
    return language.text(FROM_DOCUMENT, document=row.look_in) if row.look_in else language.text(NO_SOURCE)


def fasteners(moves: Iterable[Named]) -> list[tuple[str, str]]:
    """Count and size of what holds a thing, with the thing: the ``by:`` parts of Off and On."""
    return [(part.removeprefix("by: "), move.text) for move in moves for part in move.extra if part.startswith("by: ")]


def moments(several: Iterable[Moment], language: Language) -> str:
    """``step 3 (strip 1:09)``, more than one joined by commas."""
    return ", ".join(f"{language.text(AT_STEP, number=each.number)}{_on_film(each)}" for each in several)


def moment_words(moment: Moment, language: Language) -> str:
    """``step 3, strip 1:09``."""
    step = language.text(AT_STEP, number=moment.number)
    return step if moment.time is None else f"{step}, {_film(moment)}"


def _on_film(moment: Moment) -> str:
    return "" if moment.time is None else f" ({_film(moment)})"


def _film(moment: Moment) -> str:
    return "" if moment.time is None else f"{moment.recording} {format_time(moment.time)}".strip()


def measured(text: str) -> Markup:
    """The text with its sizes, counts and amounts marked, to be set in large type."""
    parts, at = [], 0
    for match in _MEASURED.finditer(text):
        parts += [escape(text[at : match.start()]), Markup('<b class="figure">{}</b>').format(match[0])]
        at = match.end()
    return Markup("").join([*parts, escape(text[at:])])
