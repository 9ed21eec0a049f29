"""Fields as the statements that an edition holds."""

from collections.abc import Iterable
from dataclasses import replace

from procbuilder.infer.signs import worn_signs
from procbuilder.model.edition import FrontList, Statement
from procbuilder.model.fields import Field
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.procedure import Procedure

FRONT_LISTS = (
    "Condition", "Wear", "Document", "Included", "Not included", "People", "Note", "Dangers confirmed", "Downgraded",
)  # fmt: skip
"""Lists of what must be known or ready before the start, in the order in which they are shown."""

ASKED_FOR = ("Condition", "Wear")
"""Those that are shown even when nothing was typed: then they say that nothing is known."""

COUNTED = ("Tool", "Supply", "Part")
"""Lists with quantities, which stand apart; here only for the word ``none``."""


def statements(fields: Iterable[Field]) -> tuple[Statement, ...]:
    """One a field, with all that it says."""
    return tuple(_statement(entry) for entry in fields)


def items(fields: Iterable[Field]) -> tuple[Statement, ...]:
    """One a thing of fields that list things."""
    whole = (statement for statement in statements(fields) if statement.items)
    return tuple(replace(each, items=(item,)) for each in whole for item in each.items)


def worn(fields: Iterable[Field], lexicon: Lexicon) -> tuple[Statement, ...]:
    """What is worn, with its safety signs."""
    return tuple(replace(each, signs=worn_signs(each.items[0].words, lexicon)) for each in items(fields))


def _statement(entry: Field) -> Statement:
    """What stands as things in the record is not told a second time as text."""
    things = {*(entry.kind.parts[:1] if entry.items else ()), *(("by",) if entry.fasteners else ())}
    parts = tuple((name, text) for name, text in entry.parts if text and name not in things)
    return Statement(entry.name, parts, entry.items, entry.fasteners, entry.none, entry.origin, refers=entry.step_id)


def front_lists(procedure: Procedure, lexicon: Lexicon) -> tuple[FrontList, ...]:
    """The lists without quantities that stand before the steps, and those of which there is explicitly nothing."""
    lists = []
    for name in FRONT_LISTS:
        entries = procedure.listed(name)
        told = [entry for entry in entries if not entry.none]
        lines = worn(told, lexicon) if name == "Wear" else statements(told)
        if entries or name in ASKED_FOR:
            lists.append(FrontList(name, lines, any(entry.none for entry in entries)))
    lists += [FrontList(name, (), True) for name in COUNTED if _nothing(procedure, name)]
    if any(entry.none for entry in procedure.listed("Danger")):
        lists.append(FrontList("Danger", (), True))
    return tuple(lists)


def _nothing(procedure: Procedure, name: str) -> bool:
    entries = procedure.everywhere(name)
    return any(entry.none for entry in entries) and not any(entry.items for entry in entries)
