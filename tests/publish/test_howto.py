"""The page for machines: a schema.org HowTo."""

import json
import re
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Basis, Estimate, StepTime
from procbuilder.publish.howto import duration
from procbuilder.publish.html import page, phone
from tests.publish.blocks import TEMPLATES
from tests.publish.sample_words import SCRIPT

ISO_8601 = re.compile(r"PT(?:(\d+)H)?(?:(\d+)M)?")


def told(html: str) -> dict[str, Any]:
    """What a machine reads on the page."""
    (block,) = re.findall(r'<script type="application/ld\+json">(.*?)</script>', html, re.DOTALL)
    data: dict[str, Any] = json.loads(block)
    return data


def minutes(text: str) -> int:
    """Minutes of an ISO 8601 duration, read by its own rules."""
    match = ISO_8601.fullmatch(text)
    assert match is not None
    assert text != "PT"
    return int(match[1] or 0) * 60 + int(match[2] or 0)


def timed(edition: Edition) -> Edition:
    """Every step has minutes: 7 each; waiting 10."""
    seven = Decimal(7)
    steps = tuple(
        StepTime(step.id, Basis.TYPED, seven, seven, seven, step.footage, extra=bool(step.only_if))
        for step in edition.steps
    )
    return replace(edition, estimate=Estimate(steps, likely=Decimal("1.2"), waiting=Decimal(10)))


@pytest.fixture(scope="module")
def data(edition: Edition) -> dict[str, Any]:
    return told(page(timed(edition), templates=TEMPLATES))


def test_howto_names_the_job(data: dict[str, Any]) -> None:
    facts = ("@context", "@type", "name", "identifier", "version", "inLanguage", "creativeWorkStatus")
    assert [data[name] for name in facts] == [
        "https://schema.org", "HowTo", "Trailer wheel hub – renew the bearings", "P-014", "B", "en-GB",
        "DRAFT – not approved",
    ]  # fmt: skip


def test_howto_total_time_is_preparing_and_performing(data: dict[str, Any]) -> None:
    """schema.org: totalTime includes the preparing, performTime does not."""
    preparing, performing, total = (minutes(data[name]) for name in ("prepTime", "performTime", "totalTime"))
    assert (preparing, performing, total) == (14, 66, 80)  # two steps before the first comes off; a branch is left out
    assert preparing + performing == total


def test_howto_gives_no_time_where_a_step_has_none(edition: Edition) -> None:
    assert not {"prepTime", "performTime", "totalTime"} & told(page(edition, templates=TEMPLATES)).keys()


@pytest.mark.parametrize(
    ("count", "text"), [(0, "PT0M"), (5, "PT5M"), (90, "PT1H30M"), (102, "PT1H42M"), (120, "PT2H"), (6, "PT6M")]
)
def test_durations_are_those_of_iso_8601(count: int, text: str) -> None:
    """ISO 8601: 1.7 h is PT1H42M, 0.1 h is PT6M; ``PT`` alone is not a duration."""
    assert duration(count) == text
    assert minutes(text) == count


def test_howto_tools_are_apart_from_what_is_used_up(data: dict[str, Any]) -> None:
    """schema.org: a tool is not consumed, a supply is."""
    assert [entry["name"] for entry in data["tool"]] == ["axle stand", "flat bar", "torque wrench"]
    assert data["tool"][0] == {"@type": "HowToTool", "name": "axle stand", "requiredQuantity": "2 x"}
    assert [entry["name"] for entry in data["supply"]] == ["bearing and seal kit", "split pin", "bearing grease"]


def test_howto_steps_come_in_order_with_clip_and_picture(data: dict[str, Any]) -> None:
    sections = data["step"]
    assert [section["name"] for section in sections] == ["Strip", "Refit"]
    steps = [step for section in sections for step in section["itemListElement"]]
    assert [step["position"] for step in steps] == list(range(1, 12))
    assert (steps[2]["name"], steps[2]["url"]) == ("Prise off the dust cap", "#dust-cap")
    assert steps[2]["image"]["contentUrl"] == "media/dust-cap.jpg"
    assert steps[2]["video"] == {
        "@type": "VideoObject", "name": "Prise off the dust cap", "contentUrl": "media/dust-cap.mp4",
        "thumbnailUrl": "media/dust-cap.jpg", "duration": "PT2S", "width": 320, "height": 180,
    }  # fmt: skip


def test_howto_of_a_reserved_step_tells_who_and_not_how(data: dict[str, Any]) -> None:
    gas = data["step"][1]["itemListElement"][3]
    assert gas["text"] == "Stop: done by a licensed gas fitter"
    assert "ecret" not in json.dumps(data)


def test_howto_typed_text_cannot_end_the_data(edition: Edition) -> None:
    hostile = replace(edition, title=f"</script>{SCRIPT}", item="<!-- <script>")
    html = page(hostile, templates=TEMPLATES)
    assert told(html)["name"] == f"</script>{SCRIPT}"
    assert html.count("</script>") == 4


def test_howto_in_one_file_does_not_hold_the_media_twice(edition: Edition, media: Path) -> None:
    data = told(phone(edition, templates=TEMPLATES, media=media).decode())
    assert "data:" not in json.dumps(data)
    assert len(data["step"]) == 2
