"""The self-test and the dates of re-checks, in a browser."""

import pytest

pytest.importorskip("playwright.sync_api", reason="the browser tests need playwright")

from playwright.sync_api import Page

from procbuilder.publish.html import page as page_of
from procbuilder.publish.selftest import selftest
from tests.publish.blocks import TEMPLATES
from tests.publish.sample import changed_step, sample_edition
from tests.publish.typed import listed
from tests.publish.visit import WIDTHS, Visit, broken_rules, overflow, until


def choose(page: Page, number: int, right: str) -> str:
    """Choose the first option that is right, or that is not; returns the verdict."""
    page.click(f".question:nth-of-type({number}) [data-right={right}] >> nth=0")
    return page.inner_text(f".question:nth-of-type({number}) .verdict")


def test_answers_are_told_at_once_with_the_way_to_the_step(visit: Visit) -> None:
    page = visit.open("index.html#_study")
    assert page.locator(".question").count() == len(selftest(sample_edition(visit.site / "media")))
    assert choose(page, 1, "yes") == "Right."
    assert choose(page, 2, "no") == "Not right: look at the answer."
    assert page.is_visible(".question:nth-of-type(2) details p >> nth=0")
    assert choose(page, 2, "yes") == "Right."
    assert page.inner_text("#_score") == "Right at the first try: 1 of 2 answered."
    page.click(".question:nth-of-type(2) details .target")
    until(page, "document.documentElement.dataset.view === 'step'")
    assert page.is_visible("#raise")


def test_pictures_to_choose_from_do_not_tell_which_is_right(visit: Visit) -> None:
    page = visit.open("index.html#_study")
    pictures = page.locator(".question .option-picture")
    assert pictures.count() == 12
    assert set(page.eval_on_selector_all(".question .option-picture", "all => all.map(one => one.alt)")) == {""}
    assert page.inner_text(".question:nth-of-type(1) .choice >> nth=0") == "Picture A"
    assert page.evaluate("[...document.querySelectorAll('.option-picture')].every(one => one.naturalWidth > 0)")


def test_a_link_leads_to_the_moment_in_the_clip(visit: Visit) -> None:
    """Here the tool was named three quarters of a second into a clip of two seconds."""
    from fractions import Fraction

    from procbuilder.model.timecode import Span

    edition = sample_edition(visit.site / "media")
    span = Span("strip", Fraction(42), Fraction(44))
    tools = listed("Tool: 22 mm bar (said strip 0:43.750)")
    edition = changed_step(edition, "dust-cap", tools=tools, spans=(span,), footage=Fraction(2))
    edition = changed_step(edition, "clean", tools=listed("Tool: brush; scraper"))
    (visit.site / "moment.html").write_text(page_of(edition, templates=TEMPLATES), encoding="utf-8")
    page = visit.open("moment.html#_study")
    page.evaluate("document.querySelector('.moment').closest('details').open = true")
    assert page.inner_text(".moment") == "See the clip of step 3 at 0:02"
    page.evaluate("HTMLMediaElement.prototype.play = () => Promise.resolve()")
    page.click(".moment")
    assert page.is_visible("#dust-cap video")
    until(page, "document.querySelector('#dust-cap video').currentTime === 1.75")


def due(page: Page, date: str) -> list[str]:
    page.fill("#_signed-off", date)
    return [str(text).replace(",", "") for text in page.locator("#_due .after").all_inner_texts()]


def test_rechecks_are_due_after_a_week_four_weeks_three_and_six_months(visit: Visit) -> None:
    """Days of the week from the Gregorian calendar; a month ends where the calendar ends it."""
    page = visit.open("index.html#_study")
    assert due(page, "2099-11-30") == [
        "Monday 7 December 2099", "Monday 28 December 2099", "Sunday 28 February 2100", "Sunday 30 May 2100",
    ]  # fmt: skip
    assert due(page, "2099-08-31")[2:] == ["Monday 30 November 2099", "Sunday 28 February 2100"]
    assert due(page, "2095-11-30")[2] == "Wednesday 29 February 2096"
    assert due(page, "2020-01-01") == [
        "Wednesday 8 January 2020 past", "Wednesday 29 January 2020 past", "Wednesday 1 April 2020 past",
        "Wednesday 1 July 2020 past",
    ]  # fmt: skip
    assert due(page, "") == ["1 week", "4 weeks", "3 months", "6 months"]


@pytest.mark.parametrize("visit", [{"viewport": WIDTHS["phone"]}], indirect=True)
def test_the_study_with_open_answers_fits_a_phone_and_breaks_no_rule(visit: Visit) -> None:
    page = visit.open("index.html#_study")
    choose(page, 1, "yes")
    page.evaluate("document.querySelectorAll('.question details').forEach(one => { one.open = true; })")
    assert (overflow(page), broken_rules(page)) == (0, [])


@pytest.mark.parametrize("visit", [{"java_script_enabled": False}], indirect=True)
def test_the_study_can_be_read_without_scripts(visit: Visit) -> None:
    page = visit.open()
    page.click(".question:nth-of-type(2) details summary")
    assert "Step 2 follows step 1." in page.inner_text(".question:nth-of-type(2)")
    assert page.locator("#_due li:visible").count() == 4
    assert not page.is_visible("#_signed-off")
