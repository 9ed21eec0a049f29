"""Tools, supplies and parts of the whole job, with the steps that use them."""

from collections.abc import Iterable
from dataclasses import replace

from procbuilder.model.edition import ItemLine
from procbuilder.model.procedure import Procedure
from procbuilder.model.quantity import Item, most, totals
from procbuilder.model.words import Words


def tools(procedure: Procedure, words: Words) -> tuple[ItemLine, ...]:
    """In order of first use in a step; those that no step names stand behind. The largest count of any mention."""
    named = _listed(procedure, "Tool")
    used = _used(procedure, "Tool")
    ordered = [item for item, _ in used] + list(named)
    lines = most(_one_name(_counted_first(ordered, words), words))
    return tuple(_line(item, used, words) for item in lines)


def supplies(procedure: Procedure, words: Words) -> tuple[ItemLine, ...]:
    """In order of first mention. The total of the front list or of the steps, whichever is more."""
    return _amounts(procedure, "Supply", words)


def parts(procedure: Procedure, words: Words) -> tuple[ItemLine, ...]:
    """As for supplies; a new part and a used one of the same name are two lines."""
    return _amounts(procedure, "Part", words)


def _listed(procedure: Procedure, name: str) -> tuple[Item, ...]:
    return tuple(item for entry in procedure.listed(name) for item in entry.items)


def _used(procedure: Procedure, name: str) -> list[tuple[Item, int]]:
    """Things that steps name, with the number of the step."""
    return [
        (item, number)
        for number, step in enumerate(procedure.steps, 1)
        for entry in step.all(name)
        for item in entry.items
    ]


def _amounts(procedure: Procedure, name: str, words: Words) -> tuple[ItemLine, ...]:
    used = _used(procedure, name)
    listed = _listed(procedure, name)
    together = _one_name([*listed, *(item for item, _ in used)], words)
    in_list, in_steps = totals(together[: len(listed)]), totals(together[len(listed) :])
    return tuple(_line(item, used, words) for item in _larger(in_list, in_steps))


def _larger(listed: Iterable[Item], used: Iterable[Item]) -> list[Item]:
    """One line a thing and unit: the larger of both totals."""
    lines: dict[tuple[str, bool, str], Item] = {}
    for item in (*listed, *used):
        unit = item.quantity.unit if item.quantity else ""
        key = (item.name, item.new, unit)
        known = lines.setdefault(key, item)
        if item.quantity and known.quantity and item.quantity.number > known.quantity.number:
            lines[key] = replace(known, quantity=item.quantity)
    measured = {(name, new) for name, new, unit in lines if unit}
    return [item for (name, new, unit), item in lines.items() if unit or (name, new) not in measured]


def _one_name(items: Iterable[Item], words: Words) -> list[Item]:
    """The same items, each thing under the name of its first mention: ``axle stands`` as ``axle stand``."""
    names: dict[str, str] = {}
    return [replace(item, name=names.setdefault(words.thing(item.name), item.name)) for item in items]


def _counted_first(items: list[Item], words: Words) -> list[Item]:
    """Each thing's first name is one with a count where there is one, so that ``2 x`` never stands before a plural."""
    counted = {words.thing(item.name): item.name for item in reversed(items) if item.quantity}
    return [replace(item, name=counted.get(words.thing(item.name), item.name)) for item in items]


def _line(item: Item, used: Iterable[tuple[Item, int]], words: Words) -> ItemLine:
    name = words.thing(item.name)
    steps = {number: None for other, number in used if words.thing(other.name) == name and other.new is item.new}
    return ItemLine(item.name, item.quantity, item.new, tuple(steps), item.origin)
