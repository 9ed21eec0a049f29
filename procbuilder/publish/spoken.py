"""Small wordings of facts that page and self-test share."""

import re
from collections.abc import Iterable

from markupsafe import Markup, escape

from procbuilder.model.edition import Named
from procbuilder.model.ledger import Moment
from procbuilder.model.timecode import format_time
from procbuilder.model.worked import TorqueRow
from procbuilder.publish.pagewords import AT_STEP, FROM_DOCUMENT, NO_SOURCE

_MEASURED = re.compile(
    r"\bM\d+(?:x[\d.]+)?\b|\b\d[\d.]*(?:[–/-]\d[\d.]*)? ?(?:x|mm|cm|m|g|kg|ml|l|N·m|bar|V|A|°)(?!\w)"
)


def torque_source(row: TorqueRow) -> str:
    """Where a torque value comes from; the document counts when the value itself names none."""
    return row.origin.words or (FROM_DOCUMENT.format(document=row.look_in) if row.look_in else NO_SOURCE)


def fasteners(moves: Iterable[Named]) -> list[tuple[str, str]]:
    """Count and size of what holds a thing, with the thing: the ``by:`` parts of Off and On."""
    return [(part.removeprefix("by: "), move.text) for move in moves for part in move.extra if part.startswith("by: ")]


def moments(several: Iterable[Moment]) -> str:
    """``step 3 (strip 1:09)``, more than one joined by commas."""
    return ", ".join(f"{AT_STEP.format(number=moment.number)}{_on_film(moment)}" for moment in several)


def _on_film(moment: Moment) -> str:
    return "" if moment.time is None else f" ({' '.join((moment.recording, format_time(moment.time))).strip()})"


def measured(text: str) -> Markup:
    """The text with its sizes, counts and amounts marked, to be set in large type."""
    parts, at = [], 0
    for match in _MEASURED.finditer(text):
        parts += [escape(text[at : match.start()]), Markup('<b class="figure">{}</b>').format(match[0])]
        at = match.end()
    return Markup("").join([*parts, escape(text[at:])])
