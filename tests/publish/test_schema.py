"""The schema of the edition's data: it describes each key, and takes neither more nor less."""

import copy
import json
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any, get_args, get_type_hints

import pytest
from jsonschema import Draft202012Validator

import procbuilder.publish
from procbuilder.model.edition import Edition
from procbuilder.model.facts import Blank, Line, Phrase, StepRef, Term, Time, Value
from procbuilder.model.origin import Place
from procbuilder.model.sign import Sign
from procbuilder.publish.data import LEFT_OUT, WORKED_OUT, edition_data

SCHEMA: dict[str, Any] = json.loads(
    (Path(procbuilder.publish.__file__).parent / "edition.schema.json").read_text(encoding="utf-8")
)
VALIDATOR = Draft202012Validator(SCHEMA)
AS_TEXT = (Place, Sign)
"""Records that the data hold as one text."""
RECORDS: dict[str, dict[str, Any]] = {
    "Edition": SCHEMA,
    **{name: record for name, record in SCHEMA["$defs"].items() if name != "Value"},
}
FACTS = {kind.__name__: kind for kind in (StepRef, Time, Term, Blank, Line, Phrase)}
"""Records among the facts of a problem, beside those of the edition itself."""


@pytest.fixture(scope="module")
def data(edition: Edition) -> dict[str, Any]:
    return edition_data(edition)


def _records(kind: Any, known: dict[str, type]) -> dict[str, type]:
    """All record types that a type leads to, by name."""
    for part in get_args(kind):
        _records(part, known)
    if kind not in AS_TEXT and isinstance(kind, type) and is_dataclass(kind) and kind.__name__ not in known:
        known[kind.__name__] = kind
        for field, inner in get_type_hints(kind, localns={"Value": Value}).items():
            if field not in LEFT_OUT.get(kind, ()) and field != "facts":
                _records(inner, known)
    return known


def _objects(value: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """The way to each object within data."""
    if isinstance(value, dict):
        yield path
        for key, part in value.items():
            yield from _objects(part, (*path, key))
    elif isinstance(value, list):
        for index, part in enumerate(value):
            yield from _objects(part, (*path, index))


def _at(value: Any, path: tuple[Any, ...]) -> dict[str, Any]:
    for key in path:
        value = value[key]
    assert isinstance(value, dict)
    return value


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_the_sample_is_valid(data: dict[str, Any]) -> None:
    assert [error.message for error in VALIDATOR.iter_errors(data)] == []


def test_an_unknown_version_is_refused(data: dict[str, Any]) -> None:
    errors = [error.message for error in VALIDATOR.iter_errors({**data, "format": "procbuilder edition 1"})]
    assert errors == ["'procbuilder edition 2' was expected"]


def test_a_key_too_many_or_too_few_is_refused_in_each_record(data: dict[str, Any]) -> None:
    ways = {tuple("#" if isinstance(key, int) else key for key in path): path for path in _objects(data)}
    assert len(ways) > 30
    for path in ways.values():
        more, fewer = copy.deepcopy(data), copy.deepcopy(data)
        _at(more, path)["surprise"] = 1
        del _at(fewer, path)[next(iter(_at(fewer, path)))]
        assert not VALIDATOR.is_valid(more), path
        assert not VALIDATOR.is_valid(fewer), path


@pytest.mark.parametrize("name", RECORDS)
def test_each_key_is_described_and_no_other_is_allowed(name: str) -> None:
    record = RECORDS[name]
    assert record["additionalProperties"] is False
    assert record["required"] == list(record["properties"])
    assert len(record["description"]) > 20
    for key, part in record["properties"].items():
        assert part["description"].endswith("."), key


def test_each_record_and_each_field_is_in_the_schema() -> None:
    records = _records(Edition, {})
    records = _records(Edition, {}) | FACTS
    assert set(records) == set(RECORDS)
    for name, kind in records.items():
        names = [part.name for part in fields(kind) if part.name not in LEFT_OUT.get(kind, ())]
        expected = names + [key for key in WORKED_OUT.get(kind, {}) if key not in names]
        keys = [key for key in RECORDS[name]["properties"] if key != "format"]
        assert keys == expected, name
