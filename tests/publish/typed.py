"""Fields as they are typed, read into the statements of an edition."""

from typing import Any

from procbuilder.infer.lexicon import load
from procbuilder.model.edition import Statement
from procbuilder.model.origin import Place
from procbuilder.pipeline.lines import items, statements, worn
from procbuilder.read.fields import read_field
from procbuilder.read.names import find_kind


def typed(line: str, **more: Any) -> Statement:
    """One field: ``Off: keeper | by: 2 x M8 bolt (seen strip 1:21)``."""
    [statement] = statements([_field(line)])
    return Statement(**{name: getattr(statement, name) for name in Statement.__slots__} | more)


def listed(line: str) -> tuple[Statement, ...]:
    """One a thing of a field that lists things."""
    return worn([_field(line)], load()) if line.startswith("Wear") else items([_field(line)])


def _field(line: str) -> Any:
    kind, value = find_kind(line)
    assert kind, line
    faults: list[Any] = []
    field = read_field(kind, value, Place("procedure.md", 1), faults)
    assert not faults, (line, faults)
    return field
