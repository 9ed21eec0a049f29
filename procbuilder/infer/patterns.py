"""Which turns a typed order of tightening means: a star over a circle, or a spiral over rows."""

import re
from collections.abc import Iterator
from contextlib import suppress

from procbuilder.infer.lexicon import word_list
from procbuilder.model.fields import Field
from procbuilder.model.moves import HANDLED
from procbuilder.model.procedure import Procedure
from procbuilder.model.sequence import Sequence, spiral, star
from procbuilder.model.words import mentioned, thing

_COUNTED = re.compile(r"(\d{1,3})\s*[x×]\s*([^,;|]+)")
_ROWS = re.compile(r"\b(\d{1,2})\s*(?:[x×]|rows? of)\s*(\d{1,2})\b")


def sequence(entry: Field, procedure: Procedure) -> Sequence | None:
    """The turns of a Torque field; None where its order, number or rows are not known."""
    order, patterns = entry.part("order"), word_list("patterns")
    with suppress(ValueError):
        if mentioned(order, patterns["spiral"]) and (rows := _ROWS.search(order)):
            return spiral(int(rows[1]), int(rows[2]))
        if mentioned(order, patterns["star"]) and (count := _count(entry, procedure)):
            return star(count)
    return None


def _count(entry: Field, procedure: Procedure) -> int:
    """How many there are: as typed with the torque, else the one number typed where the thing comes off or goes on."""
    if not entry.items:
        return 0
    item = entry.item
    if item.quantity is not None and item.quantity.unit == "x":
        return int(item.quantity.number)
    name = thing(item.name)
    counts = {count for count, counted in _counted(procedure) if counted == name}
    return counts.pop() if len(counts) == 1 else 0


def _counted(procedure: Procedure) -> Iterator[tuple[int, str]]:
    for entry in procedure.everywhere(*HANDLED):
        held = entry.part("by") if "by" in entry.kind.words else ""
        for words in (*(item.words for item in entry.items), held):
            for count, name in _COUNTED.findall(words):
                yield int(count), thing(name)
