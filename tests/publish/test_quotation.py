"""Quotation and booking: page and PDF say the same, and nothing that is not in the edition."""

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.estimate import Extra, Price
from procbuilder.publish.html import page, phone, quotation_page
from procbuilder.publish.quotation import NO_PRICE, quotation
from tests.publish.blocks import TEMPLATES, after, read
from tests.publish.sheet import pages, sheet, solid
from tests.publish.typed import typed


@pytest.fixture(scope="module")
def priced(edition: Edition) -> Edition:
    estimate = replace(
        edition.estimate,
        extras=(Extra("a stud breaks", "30"), Extra("the bore is worn", "")),
        price=Price(Decimal("62.00"), "EUR", Decimal("24.80"), Decimal("43.40")),
    )
    finding = typed("Finding: tyre worn to 1 mm | unsafe | driver told, declined")
    return replace(edition, estimate=estimate, closing=(finding, typed("Later: nuts | after 50 km")))


def blocks(edition: Edition) -> list[str]:
    return read(quotation_page(edition, templates=TEMPLATES))[""]


def test_page_says_what_is_quoted(priced: Edition) -> None:
    told = blocks(priced)
    assert told[1:4] == [
        "Quotation and booking: Trailer wheel hub – renew the bearings",
        "P-014 revision B Check the current revision before use",
        "DRAFT – not approved 2 problems must be settled before it may be approved",
    ]
    assert after(told, "Labour", 2) == [
        "Hands-on at least 0.5 h (a lower bound: not every step has a time of its own), waiting 10 min, one person, "
        "third time or later; from typed times (4 steps), 2 films (2 steps; a lower bound if cut) "
        "and no time known (5 steps).",
        "Labour at 62.00 EUR an hour (workshop file): 24.80–43.40 EUR.",
    ]
    assert after(told, "Included", 1) == ["one hub, both bearings"]
    assert after(told, "Extras: only after approval", 7) == [
        "If", "More time", "Approved by, date", "a stud breaks", "30 min", "the bore is worn", "not known",
    ]  # fmt: skip
    assert quotation(priced).findings == (("tyre worn to 1 mm", "unsafe; driver told, declined"),)
    assert after(told, "Findings on the item, outside this job", 5) == [
        "Finding", "On record", "Approved by, date", "tyre worn to 1 mm", "unsafe; driver told, declined",
    ]  # fmt: skip


def test_every_part_and_supply_has_its_quantity_or_says_that_it_is_not_known(priced: Edition) -> None:
    rows = quotation(priced).items
    assert len(rows) == len(priced.parts) + len(priced.supplies)
    assert ("Part", "bearing and seal kit, new", "1 x") in rows
    none = replace(priced, parts=(replace(priced.parts[0], quantity=None),), supplies=())
    assert quotation(none).items[0][2] == "not known"


def test_without_a_rate_there_is_no_price(edition: Edition) -> None:
    assert quotation(edition).labour[1] == NO_PRICE
    assert NO_PRICE in blocks(edition)


def test_printed_page_says_the_same(priced: Edition, media: Path) -> None:
    last = solid(pages(sheet(priced, media))[-1])
    assert solid("Quotation and booking") in last
    told = quotation(priced)
    rows = [*told.labour, *told.included, *(" ".join(row) for row in (*told.items, *told.extras, *told.findings))]
    assert [row for row in rows if solid(row) not in last] == []


def test_nothing_typed_can_act_on_the_page(edition: Edition) -> None:
    html = quotation_page(replace(edition, item="<script>alert(1)</script>"), templates=TEMPLATES)
    assert "<script" not in html
    assert "&lt;script&gt;alert(1)" in html


def test_the_page_leads_to_it_and_the_single_file_does_not(edition: Edition, media: Path) -> None:
    assert page(edition, templates=TEMPLATES).count('href="quotation.html"') == 1
    assert "quotation.html" not in phone(edition, templates=TEMPLATES, media=media).decode()
