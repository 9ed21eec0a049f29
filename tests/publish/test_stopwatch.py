"""The stopwatch of the page in a real browser, and its file on the way into the practice log."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from procbuilder.model.edition import Edition
from procbuilder.publish.html import page as page_of
from procbuilder.read.practice import read_practice
from procbuilder.read.text import read_file
from tests.publish.blocks import TEMPLATES, views
from tests.publish.sample import sample_edition

pytest.importorskip("playwright.sync_api", reason="the browser tests need playwright")

from playwright.sync_api import Browser, Page

from tests.publish.visit import TARGETS, Visit, breaches, name_job, overflow

TIMED = ("chock", "dust-cap", "clean")
INTERRUPTED = "Interrupted: the time stands still. Check the last step again before you go on."


def timed(edition: Edition) -> Edition:
    """The sample with a stopwatch at three steps."""
    sections = tuple(
        replace(section, steps=tuple(replace(step, timed=step.id in TIMED) for step in section.steps))
        for section in edition.sections
    )
    return replace(edition, sections=sections)


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("watch")
    edition = timed(sample_edition(folder / "media"))
    (folder / "index.html").write_text(page_of(edition, templates=TEMPLATES), encoding="utf-8")
    return folder


@pytest.fixture
def visit(browser: Browser, site: Path) -> Iterator[Visit]:
    context = browser.new_context(viewport={"width": 360, "height": 740}, locale="en-GB")
    visit = Visit(context, site)
    yield visit
    context.close()
    assert visit.faults == []
    assert visit.asked <= {"the site", "data", "about", "blob"}


def words(page: Page, step: str) -> str:
    return page.inner_text(f"#{step} .watch-words")


def press(page: Page, step: str, button: str) -> None:
    page.click(f"#{step} .watch-{button}")


def take(page: Page, step: str) -> None:
    """One time of a step."""
    page.evaluate("name => { location.hash = name; }", step)
    press(page, step, "start")
    press(page, step, "done")


def test_only_steps_that_may_be_timed_have_one_and_it_is_off(visit: Visit) -> None:
    page = visit.open("index.html#chock")
    assert page.eval_on_selector_all(".watch", "all => all.map(one => one.dataset.step)") == list(TIMED)
    assert page.eval_on_selector_all(
        "#chock .watch button", "all => all.filter(one => !one.hidden).map(one => one.textContent)"
    ) == ["Start the stopwatch"]
    assert words(page, "chock") == ""


def test_it_runs_stands_and_keeps_a_time_without_showing_a_target(visit: Visit) -> None:
    page = visit.open("index.html#chock")
    press(page, "chock", "start")
    assert words(page, "chock") == "The stopwatch runs."
    press(page, "chock", "pause")
    assert (words(page, "chock"), page.inner_text("#chock .watch-pause")) == ("The time stands still.", "Go on")
    press(page, "chock", "pause")
    assert words(page, "chock") == "The stopwatch runs."
    press(page, "chock", "done")
    assert words(page, "chock") == "0.01 min kept."
    page.click("#_home")
    assert page.inner_text("#_times-words") == "Times taken: 1."


def test_standing_still_adds_nothing(visit: Visit) -> None:
    page = visit.open("index.html#chock")
    press(page, "chock", "start")
    press(page, "chock", "pause")
    page.wait_for_timeout(1000)
    press(page, "chock", "done")
    assert words(page, "chock") == "0.01 min kept."
    press(page, "chock", "start")
    page.wait_for_timeout(1000)
    press(page, "chock", "done")
    assert words(page, "chock") == "0.02 min kept."


@pytest.mark.parametrize("how", ["another view", "another window"])
def test_an_interruption_is_a_pause_that_asks_to_check_the_last_step(visit: Visit, how: str) -> None:
    page = visit.open("index.html#chock")
    press(page, "chock", "start")
    if how == "another view":
        page.click("#_next")
        page.click("#_back")
    else:
        page.evaluate(
            "Object.defineProperty(document, 'hidden', { get: () => true });"
            "document.dispatchEvent(new Event('visibilitychange'))"
        )
    assert (words(page, "chock"), page.inner_text("#chock .watch-pause")) == (INTERRUPTED, "Go on")


def test_another_step_ends_a_time_that_was_not_kept_and_says_so(visit: Visit) -> None:
    page = visit.open("index.html#chock")
    press(page, "chock", "start")
    page.evaluate("location.hash = 'dust-cap'")
    press(page, "dust-cap", "start")
    page.evaluate("location.hash = 'chock'")
    assert words(page, "chock") == "Stopped: another step was timed. Its time was not kept."


def test_the_file_goes_into_the_practice_log(visit: Visit, tmp_path: Path) -> None:
    page = visit.open("index.html#chock")
    take(page, "chock")
    take(page, "clean")
    page.click("#_home")
    page.fill("#_times-who", "Anna Berger")
    page.click("#_times-save")
    assert page.inner_text("#_times-words") == "Write initials or a code of up to 12 signs first."
    page.fill("#_times-who", " K7 ")
    with page.expect_download() as saved:
        page.click("#_times-save")
    assert saved.value.suggested_filename == "times-P-014.json"
    saved.value.save_as(tmp_path / "times.json")
    found = read_practice(read_file(tmp_path / "times.json"))
    assert (found.problems, found.procedure) == ((), "P-014")
    assert [(run.who, run.step, str(run.minutes), run.place.line) for run in found.runs] == [
        ("K7", "chock", "0.01", 2), ("K7", "clean", "0.01", 3),
    ]  # fmt: skip
    assert found.runs[0].when == page.evaluate(
        "(new Date(Date.now() - new Date().getTimezoneOffset() * 60000)).toISOString().slice(0, 16)"
    )


def test_times_belong_to_the_named_job_and_can_be_deleted(visit: Visit) -> None:
    page = visit.open()
    name_job(page, "4711")
    take(page, "chock")
    visit.open()
    assert page.inner_text("#_times-words") == "No time has been taken."
    name_job(page, "4711")
    assert page.inner_text("#_times-words") == "Times taken: 1."
    page.click("#_times-delete")
    assert page.inner_text("#_times-delete") == "Press again to delete them"
    page.click("#_times-delete")
    assert page.inner_text("#_times-words") == "No time has been taken."
    assert page.is_disabled("#_times-save")
    visit.open()
    name_job(page, "4711")
    assert page.inner_text("#_times-words") == "No time has been taken."


def test_it_fits_a_phone_and_breaks_no_accessibility_rule(visit: Visit) -> None:
    page = visit.open("index.html#chock")
    press(page, "chock", "start")
    assert overflow(page) == 0
    assert min(page.evaluate(TARGETS)) >= 0
    assert breaches(page, "chock", "_overview") == []
    assert overflow(page) == 0


def test_the_page_says_who_will_see_the_times(edition: Edition) -> None:
    told = " ".join(views(timed(edition))["_overview"])
    assert "The workshop has not said who will then see them: ask first." in told
    assert "The workshop has not said how long they are kept." in told
    known = replace(edition, estimate=replace(edition.estimate, seen_by="the foreman", kept="24 months"))
    told = " ".join(views(timed(known))["_overview"])
    assert "Who will then see them: the foreman. They are kept for 24 months." in told


def test_without_a_step_that_may_be_timed_there_is_nothing_of_it(edition: Edition) -> None:
    text = page_of(edition, templates=TEMPLATES)
    assert 'id="_times-who"' not in text
    assert 'class="watch' not in text
