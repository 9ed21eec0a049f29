"""Which turns a typed order of tightening means: a star over a circle, or a spiral over rows."""

import re
from collections.abc import Iterator
from contextlib import suppress

from procbuilder.model.fields import Field
from procbuilder.model.lexicon import Lexicon, Patterns
from procbuilder.model.moves import HANDLED
from procbuilder.model.phrases import mentioned
from procbuilder.model.procedure import Procedure
from procbuilder.model.sequence import Sequence, spiral, star
from procbuilder.model.words import Words


def sequence(entry: Field, procedure: Procedure, lexicon: Lexicon) -> Sequence | None:
    """The turns of a Torque field; None where its order, number or rows are not known."""
    order, patterns, words = entry.part("order"), lexicon.patterns, lexicon.words
    with suppress(ValueError):
        if mentioned(order, patterns.spiral, words) and (rows := _rows(order, patterns)):
            return spiral(int(rows[1]), int(rows[2]))
        if mentioned(order, patterns.star, words) and (count := _count(entry, procedure, words)):
            return star(count)
    return None


def _rows(order: str, patterns: Patterns) -> re.Match[str] | None:
    """How many rows, and how many in a row: ``2 x 5``."""
    of = "|".join(("[x×]", *patterns.rows))
    return re.search(rf"\b(\d{{1,2}})\s*(?:{of})\s*(\d{{1,2}})\b", order, re.IGNORECASE)


def _count(entry: Field, procedure: Procedure, words: Words) -> int:
    """How many there are: as typed with the torque, else the one number typed where the thing comes off or goes on."""
    if not entry.items:
        return 0
    item = entry.item
    if item.count is not None:
        return int(item.count)
    name = words.thing(item.name)
    counts = {count for count, counted in _counted(procedure) if words.thing(counted) == name}
    return counts.pop() if len(counts) == 1 else 0


def _counted(procedure: Procedure) -> Iterator[tuple[int, str]]:
    for entry in procedure.everywhere(*HANDLED):
        for item in (*entry.items, *entry.fasteners):
            if item.count is not None:
                yield int(item.count), item.head
