"""The edition as data."""

import json
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any, cast

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.origin import Place
from procbuilder.publish.data import edition_data, edition_json
from tests.publish.sample import sample_edition


def test_data_begins_with_its_version_and_keeps_the_order_of_the_fields(edition: Edition) -> None:
    keys = list(edition_data(edition))
    assert keys[:5] == ["format", "title", "number", "revision", "status"]
    assert edition_data(edition)["format"] == "procbuilder edition 2"


def test_times_are_seconds_and_places_are_lines(edition: Edition) -> None:
    step = edition_data(edition)["sections"][1]["steps"][2]
    assert step["spans"] == [{"recording": "strip", "start": 42, "end": 75}]
    assert step["captions"][0] == {"place": "strip.srt:1", "start": 0, "end": 0.9, "text": "a little at a time"}
    assert (step["minutes"], step["footage"], step["basis"]) == (0, 33, "footage")
    assert step["hazards"][0] == {
        "signal": "CAUTION",
        "hazard": "the bar can slip",
        "consequence": "cut hand",
        "avoid": "push away from you, other hand clear",
        "state": "",
        "place": "procedure.md:50",
        "origin": {"kind": "typed", "recording": "", "time": None, "document": ""},
        "signs": [],
    }
    assert step["as_found"] is None


def test_what_a_reader_would_have_to_work_out_is_there(edition: Edition) -> None:
    data = edition_data(edition)
    assert data["estimate"]["lower_bound"] is True
    assert data["torques"][0]["sequence"]["turns"] == [1, 3, 2, 4]
    assert data["sections"][1]["steps"][1]["hazards"][1]["signs"] == ["W019", "P024"]


@pytest.mark.parametrize(
    ("seconds", "number"),
    [(Fraction(1, 3), 0.333), (Fraction(4321, 20), 216.05), (Fraction(9995, 10000), 1), (Fraction(0), 0)],
)
def test_seconds_are_rounded_to_thousandths(edition: Edition, seconds: Fraction, number: float) -> None:
    data = edition_data(replace(edition, recordings=(replace(edition.recordings[0], duration=seconds),)))
    assert data["recordings"][0]["duration"] == number


@pytest.mark.parametrize(("hours", "text"), [("0.5", "0.5"), ("2", "2"), ("2.0", "2"), ("1.10", "1.1")])
def test_hours_are_plain_numbers(edition: Edition, hours: str, text: str) -> None:
    data = edition_data(replace(edition, estimate=replace(edition.estimate, likely=Decimal(hours))))
    assert json.dumps(data["estimate"]["likely"]) == text


@pytest.mark.parametrize(
    ("path", "given"),
    [
        ("recordings/hub.mp4", "recordings/hub.mp4"),
        ("../shared/hub.mp4", "../shared/hub.mp4"),
        ("/home/shop/films/hub.mp4", "hub.mp4"),
        ("C:\\films\\hub.mp4", "hub.mp4"),
    ],
)
def test_a_path_from_the_root_of_a_disk_gives_only_its_name(edition: Edition, path: str, given: str) -> None:
    recording = replace(edition.recordings[0], path=path)
    problem = replace(edition.problems[0], place=Place(path, 7))
    data = edition_data(replace(edition, recordings=(recording,), problems=(problem,)))
    assert data["recordings"][0]["path"] == given
    assert data["problems"][0]["place"] == f"{given}:7"


def test_json_is_the_data_in_utf8_with_a_newline_at_its_end(edition: Edition) -> None:
    written = edition_json(edition)
    assert json.loads(written) == edition_data(edition)
    assert written.endswith(b"}\n")
    assert "Trailer wheel hub – renew".encode() in written


def test_json_has_the_same_bytes_for_the_same_edition(edition: Edition, tmp_path: Path) -> None:
    assert edition_json(edition) == edition_json(sample_edition(tmp_path))


def test_half_a_surrogate_pair_survives(edition: Edition) -> None:
    written = edition_json(replace(edition, title="hub \ud83d"))
    assert json.loads(written)["title"] == "hub \ud83d"


def test_a_value_that_no_reader_could_know_is_refused(edition: Edition) -> None:
    odd = replace(edition, title=cast("Any", {1, 2}))
    with pytest.raises(TypeError) as refused:
        edition_data(odd)
    assert str(refused.value) == "an edition cannot hold a set"
