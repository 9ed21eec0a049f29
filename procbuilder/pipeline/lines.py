"""Fields as the lines that a reader gets."""

from collections.abc import Iterable
from dataclasses import replace

from procbuilder.infer.signs import worn_signs
from procbuilder.model.edition import FrontList, Line, Named
from procbuilder.model.fields import Field
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.procedure import Procedure

FRONT_LISTS = {
    "Condition": "Conditions", "Wear": "Wear", "Document": "Documents", "Included": "Included",
    "Not included": "Not included", "People": "People", "Note": "Notes", "Dangers confirmed": "Dangers confirmed",
    "Downgraded": "Dangers made lower or left out",
}  # fmt: skip
"""Lists of what must be known or ready before the start, in the order in which they are shown, with their titles."""

ASKED_FOR = ("Condition", "Wear")
"""Those that are shown even when nothing was typed: then they say that nothing is known."""

COUNTED = ("Tool", "Supply", "Part")
"""Lists with quantities, which stand apart; here only for the word ``none``."""


def items(fields: Iterable[Field]) -> tuple[Line, ...]:
    """One line a thing of fields that list things."""
    return tuple(Line(item.words, origin=entry.origin.words) for entry in fields for item in entry.items)


def worn(fields: Iterable[Field], lexicon: Lexicon) -> tuple[Line, ...]:
    """What is worn, with its safety signs."""
    return tuple(replace(line, signs=worn_signs(line.text, lexicon)) for line in items(fields))


def reasoned(fields: Iterable[Field], main: str, extra: str) -> tuple[Line, ...]:
    """Fields of two parts, such as a key point and its reason."""
    return tuple(Line(entry.part(main), entry.part(extra), entry.origin.words) for entry in fields)


def named(fields: Iterable[Field]) -> tuple[Named, ...]:
    """Fields shown under their own name with all their parts."""
    return tuple(_named(entry) for entry in fields)


def _named(entry: Field) -> Named:
    first = entry.kind.parts[0]
    text = "; ".join(item.words for item in entry.items) or ("none" if entry.none else _part(entry, first))
    by_place = [_part(entry, name) for name in entry.kind.parts[1:]]
    by_word = [f"{word}: {entry.part(word)}" for word in entry.kind.words if entry.part(word)]
    return Named(entry.name, text, tuple(filter(None, [*by_place, *by_word])), entry.origin.words)


def _part(entry: Field, name: str) -> str:
    """A part as shown: minutes get their unit."""
    text = entry.part(name)
    return f"{text} min" if name == "minutes" and text[-1:].isdigit() else text


def front_lists(procedure: Procedure, lexicon: Lexicon) -> tuple[FrontList, ...]:
    """The lists without quantities that stand before the steps, and those of which there is explicitly nothing."""
    lists = []
    for name, title in FRONT_LISTS.items():
        entries = procedure.listed(name)
        lines = tuple(line for entry in entries if not entry.none for line in _lines(entry, lexicon))
        if entries or name in ASKED_FOR:
            lists.append(FrontList(title, lines, any(entry.none for entry in entries)))
    lists += [FrontList(name, (), True) for name in COUNTED if _nothing(procedure, name)]
    if any(entry.none for entry in procedure.listed("Danger")):
        lists.append(FrontList("Dangers", (), True))
    return tuple(lists)


def _nothing(procedure: Procedure, name: str) -> bool:
    entries = procedure.everywhere(name)
    return any(entry.none for entry in entries) and not any(entry.items for entry in entries)


def _lines(entry: Field, lexicon: Lexicon) -> tuple[Line, ...]:
    if entry.items:
        return worn([entry], lexicon) if entry.name == "Wear" else items([entry])
    shown = _named(entry)
    return (Line(shown.text, ", ".join(shown.extra), shown.origin),)
