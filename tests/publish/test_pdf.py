"""The printed sheet: what stands on every page, before and after the steps."""

import io
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from procbuilder.model.edition import Edition, FrontList
from procbuilder.model.ledger import Balance, Ledger
from procbuilder.publish import words
from procbuilder.publish.filmed import remark
from procbuilder.publish.language import ENGLISH
from procbuilder.publish.pdf import pdf
from procbuilder.publish.speaker import spoken
from procbuilder.publish.terms import BALANCES, OPENINGS
from procbuilder.publish.timebars import bars
from procbuilder.publish.timewords import sentences
from procbuilder.publish.wording.problems import said
from tests.publish.sheet import EPOCH, TEMPLATES, pages, sheet, solid, whole


def _facts(edition: Edition) -> Iterator[str]:
    """Every text that must be on the sheet."""
    yield from (edition.title, edition.number, edition.item, edition.applies_to, edition.not_for, edition.ask)
    told = spoken(edition)
    for line in (*told.tools, *told.supplies, *told.parts):
        yield from (line.name, line.quantity)
    for front in told.lists:
        yield from (line.text for line in front.lines)
    for section in edition.sections:
        yield section.title
    for row in edition.torques:
        yield from (row.item.words, row.value.text, row.order, row.when, row.look_in)
    for entry in edition.ledger.entries:
        yield from (entry.item, OPENINGS[entry.opening], BALANCES[entry.balance][1:], entry.reason)
    for named in told.closing:
        yield from (named.text, *named.extra)
    for problem in edition.problems:
        yield from (str(problem.place), said(problem).what, said(problem).instead)
    for recording in edition.recordings:
        yield from (recording.name, recording.path, recording.sha256[:16])
        yield from (remark(each, ENGLISH) for each in recording.remarks)


def test_all_that_is_known_of_the_whole_job_is_printed(edition: Edition, text: str) -> None:
    assert [fact for fact in _facts(edition) if solid(fact) not in solid(text)] == []


def test_each_page_has_its_number_revision_status_and_what_comes_first(printed: bytes) -> None:
    sheets = pages(printed)
    assert len(sheets) == 10
    for number, page in enumerate(sheets, start=1):
        assert f"Page {number} of 10" in page
        assert f"{words.CHECK_REVISION} · P-014 · revision B · Draft" in page
        assert words.PRIORITY in page
        assert "DRAFT" in page


@pytest.mark.parametrize(
    ("status", "shown"), [("withdrawn", "WITHDRAWN"), ("review", "In review"), ("approved", "Approved")]
)
def test_each_page_tells_the_status(edition: Edition, media: Path, status: str, shown: str) -> None:
    sheets = pages(sheet(replace(edition, status=status, problems=()), media))
    assert [page.count("DRAFT") for page in sheets] == [0] * len(sheets)
    assert all(page.count(shown) >= 1 for page in sheets)


def test_a_draft_says_why_it_is_one(text: str) -> None:
    assert "DRAFT 2 problems must be settled before it may be approved" in text


@pytest.mark.parametrize(("status", "shown"), [("draft", True), ("review", True), ("withdrawn", False)])
def test_problems_are_printed_while_they_can_be_solved(
    edition: Edition, media: Path, status: str, *, shown: bool
) -> None:
    assert ("Problems still open" in whole(sheet(replace(edition, status=status), media))) is shown


def test_the_four_signal_words_are_explained(text: str) -> None:
    for signal, meaning in words.SIGNAL_MEANING.items():
        assert f"{signal.value} {meaning}" in text


def test_a_torque_without_a_source_says_so(edition: Edition, media: Path) -> None:
    rows = (replace(edition.torques[3], origin=edition.torques[2].origin),)
    assert "cap screw 8 4 N·m no source" in whole(sheet(replace(edition, torques=rows), media))


def test_the_head_of_a_long_table_comes_again(edition: Edition, media: Path) -> None:
    sheets = pages(sheet(replace(edition, torques=edition.torques * 20), media))
    assert sum("What Step Value Order, condition Source Initials" in page for page in sheets) >= 4


def test_the_ledger_names_what_is_open_first_with_its_moment(text: str) -> None:
    table = text[text.index("Opened and closed") :]
    assert "Not balanced. Still open, or never opened: 3 of 5" in table
    assert "dust cap tray 3 off step 3, strip 1:09 – Still open (0 of 1 closed)" in table
    assert "M8 bolt off step 4 step 8 Still open (1 of 2 closed)" in table
    items = ["dust cap tray", "M8 bolt off", "hub nut slackened", "wheel chock fitted", "hub off"]
    assert [table.index(item) for item in items] == sorted(table.index(item) for item in items)


def test_a_balanced_ledger_says_so(edition: Edition, media: Path) -> None:
    closed = Ledger(edition.ledger.having(Balance.CLOSED, Balance.LEFT_OPEN))
    text = whole(sheet(replace(edition, ledger=closed), media))
    assert "Balanced: everything that was opened is closed, or left open with a reason." in text


def test_the_estimate_tells_its_range_and_what_it_rests_on(text: str, edition: Edition) -> None:
    for sentence in sentences(edition.estimate):
        assert sentence in text
    assert "Hands-on at least 0.5 h (a lower bound: not every step has a time of its own), waiting 10 min" in text
    assert "Step Minutes From Low to high, mark: likely" in text


def test_each_step_of_the_estimate_has_a_row(edition: Edition, text: str) -> None:
    for bar in bars(edition):
        assert solid(f"{bar.number} {bar.command} {bar.minutes} {bar.source}") in solid(text)


def test_steps_on_a_condition_are_kept_out_of_the_count(edition: Edition, media: Path) -> None:
    steps = tuple(replace(time, extra=time.step in {"keeper", "lower"}) for time in edition.estimate.steps)
    text = whole(sheet(replace(edition, estimate=replace(edition.estimate, steps=steps)), media))
    assert "from typed times (2 steps)" in text
    assert solid("4–7, likely 5 time typed; only if : not in the total") in solid(text)


def test_an_explicit_none_is_said(edition: Edition, media: Path) -> None:
    lists = (
        FrontList("Condition", (), none=True),
        FrontList("Wear", (), none=False),
        FrontList("Tool", (), none=True),
    )
    text = whole(sheet(replace(edition, lists=lists, tools=()), media))
    assert "Conditions None. Wear not stated Tools None. Supplies" in text


def test_the_outline_has_each_section_and_each_step(edition: Edition, printed: bytes) -> None:
    def titles(outline: Any) -> Iterator[str]:
        for entry in outline:
            if isinstance(entry, list):
                yield from titles(entry)
            else:
                yield entry.title

    found = list(titles(PdfReader(io.BytesIO(printed)).outline))
    assert found[0] == edition.title
    for step in edition.steps:
        assert f"{step.number} {step.command}" in found
    sections = ["Strip", "Refit", "Tightening table", "Opened and closed", "Time"]
    assert [title for title in found if title in sections] == sections


def test_same_edition_gives_the_same_bytes(edition: Edition, media: Path, printed: bytes) -> None:
    assert sheet(edition, media) == printed
    assert pdf(edition, templates=TEMPLATES, media=media, epoch=EPOCH + 86_400).data != printed
