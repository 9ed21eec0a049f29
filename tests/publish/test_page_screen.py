"""The screen: light and dark, kept on, no shifting, quick, alone in a folder, on paper."""

import io
import re
from dataclasses import replace
from pathlib import Path
from unicodedata import normalize

import pytest
from pypdf import PdfReader

from procbuilder.publish.html import page as page_of
from tests.publish.blocks import TEMPLATES
from tests.publish.sample import sample_edition

pytest.importorskip("playwright.sync_api", reason="the browser tests need playwright")

from playwright.sync_api import Browser

from tests.publish.visit import WIDTHS, Visit, breaches, name_job, onward, until

PAPER = "getComputedStyle(document.body).backgroundColor"
WAKE = """
window.asked = [];
const lock = { release() { window.asked.push("released"); } };
const request = async (what) => { window.asked.push(what); return lock; };
Object.defineProperty(navigator, "wakeLock", { value: { request } });
"""
SHIFTS = """
window.shifts = [];
new PerformanceObserver((list) => list.getEntries().forEach((one) => {
    const own = one.sources.filter((source) => source.node);
    if (own.length) window.shifts.push([one.value, ...own.map((source) => source.node.nodeName)]);
})).observe({ type: "layout-shift", buffered: true });
"""
"""The browser's own captions move with its controls; they are no part of the page."""


@pytest.mark.parametrize("visit", [{"color_scheme": "dark"}], indirect=True)
def test_the_light_follows_the_device_or_its_switch_and_is_remembered(visit: Visit) -> None:
    page = visit.open()
    assert page.evaluate(PAPER) == "rgb(21, 21, 21)"
    page.click(".screen summary")
    page.check("input[value=bright]")
    assert page.evaluate(PAPER) == "rgb(255, 255, 255)"
    page.reload()
    assert page.evaluate(PAPER) == "rgb(255, 255, 255)"
    assert page.is_checked("input[value=bright]")
    assert breaches(page, "raise") == []
    page.emulate_media(color_scheme="light")
    page.evaluate("location.hash = ''")
    page.click(".screen summary")
    page.check("input[value=dark]")
    assert page.evaluate(PAPER) == "rgb(21, 21, 21)"
    assert breaches(page, "_overview", "keeper-on") == []


def test_the_screen_is_kept_on_while_the_page_is_in_sight(visit: Visit) -> None:
    visit.context.add_init_script(WAKE)
    page = visit.open()
    page.click(".screen summary")
    assert page.evaluate("window.asked") == []
    page.check("#_awake")
    until(page, "window.asked.length === 1")
    assert page.inner_text("#_awake-words") == "The screen stays on while this page is in sight."
    hide = "value => { Object.defineProperty(document, 'hidden', { value, configurable: true }); }"
    for hidden in (True, False):
        page.evaluate(hide, hidden)
        page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    until(page, "window.asked.length === 3")
    assert page.evaluate("window.asked") == ["screen", "released", "screen"]
    page.uncheck("#_awake")
    assert page.evaluate("window.asked") == ["screen", "released", "screen", "released"]
    assert page.inner_text("#_awake-words") == ""


def test_a_browser_that_cannot_keep_the_screen_on_says_so(visit: Visit) -> None:
    visit.context.add_init_script("Object.defineProperty(navigator, 'wakeLock', { value: undefined })")
    page = visit.open()
    page.click(".screen summary")
    page.click("#_awake")
    until(page, "document.getElementById('_awake-words').textContent !== ''")
    assert page.inner_text("#_awake-words") == "This browser does not keep the screen on."
    assert not page.is_checked("#_awake")


def test_a_clip_runs_slowly_and_picture_by_picture(visit: Visit) -> None:
    """The clip of the sample has 15 pictures a second, and the page finds that out by itself."""
    page = visit.open("index.html#dust-cap")
    until(page, "Number(document.querySelector('#dust-cap video').dataset.picture) > 0")
    assert page.eval_on_selector("#dust-cap video", "v => Math.round(1 / v.dataset.picture)") == 15
    page.click("#dust-cap .slower")
    assert page.eval_on_selector("#dust-cap video", "v => v.playbackRate") == 0.25
    assert page.inner_text("#dust-cap .slower") == "Full speed"
    page.click("#dust-cap .frame-on")
    assert page.eval_on_selector("#dust-cap video", "v => v.paused")
    page.eval_on_selector("#dust-cap video", "v => { v.currentTime = 1; }")
    page.click("#dust-cap .frame-on")
    page.click("#dust-cap .frame-on")
    assert page.eval_on_selector("#dust-cap video", "v => Math.round(v.currentTime * 15)") == 17
    page.click("#dust-cap .frame-back")
    assert page.eval_on_selector("#dust-cap video", "v => Math.round(v.currentTime * 15)") == 16


@pytest.mark.parametrize("visit", [{"viewport": size} for size in WIDTHS.values()], ids=WIDTHS, indirect=True)
def test_nothing_shifts_when_pictures_and_clips_come_in(visit: Visit) -> None:
    visit.context.add_init_script(SHIFTS)
    page = visit.open()
    page.wait_for_timeout(200)
    name_job(page, "4711")
    for _ in range(8):
        onward(page)
        page.wait_for_timeout(60)
    page.evaluate("window.shifts.length = 0")
    visit.open("index.html#dust-cap")
    until(page, "document.querySelector('#dust-cap video').currentTime > 0.1")
    assert page.evaluate("window.shifts") == []


def test_the_first_step_can_be_read_within_a_third_of_a_second(visit: Visit) -> None:
    """The best of five visits, so that a busy machine is not measured."""
    times = []
    for _ in range(5):
        page = visit.open("index.html#chock")
        times.append(page.evaluate("performance.timing.domContentLoadedEventEnd - performance.timing.navigationStart"))
    assert page.is_visible("#chock .command")
    assert min(times) <= 300


def test_forty_steps_stay_below_350_kilobytes(tmp_path: Path) -> None:
    """Without the media; with the fullest step of the sample forty times."""
    edition = sample_edition(tmp_path)
    full = [one for one in edition.steps if one.id in ("raise", "dust-cap", "keeper", "bearings", "keeper-on")]
    steps = tuple(replace(full[at % 5], id=f"step-{at}", number=at + 1) for at in range(40))
    sections = (replace(edition.sections[1], steps=steps),)
    html = page_of(replace(edition, sections=sections), templates=TEMPLATES)
    assert html.count('class="view step"') == 40
    assert len(html.encode()) <= 350_000


def test_the_page_alone_in_a_folder_can_still_be_read(browser: Browser, site: Path, tmp_path: Path) -> None:
    (tmp_path / "index.html").write_bytes((site / "index.html").read_bytes())
    context = browser.new_context(viewport={"width": 360, "height": 740})
    visit = Visit(context, tmp_path)
    page = visit.open("index.html#dust-cap")
    page.wait_for_selector("#dust-cap .swap:disabled")
    assert page.inner_text("#dust-cap .swap") == "The clip cannot be shown here"
    assert page.inner_text("#dust-cap .command") == "Prise off the dust cap"
    assert page.is_visible("#dust-cap .standing")
    assert visit.asked <= {"the site", "data", "about"}
    assert all(fault.endswith("net::ERR_FILE_NOT_FOUND") for fault in visit.faults)
    context.close()


@pytest.mark.parametrize("visit", [{"served": True}], indirect=True)
def test_over_http_the_page_asks_only_for_its_own_media(visit: Visit) -> None:
    page = visit.open("index.html#dust-cap")
    until(page, "document.querySelector('#dust-cap video').currentTime > 0.1")
    assert page.evaluate("performance.getEntriesByType('resource').every(one => /\\/media\\//.test(one.name))")
    assert page.eval_on_selector("#dust-cap video", "v => v.textTracks[0].cues.length") == 2


def test_on_paper_every_step_stands_whole_on_few_pages(visit: Visit) -> None:
    """A4. Steps may share a page, none loses its danger or its command to the page before."""
    page = visit.open("index.html#dust-cap")
    sheets = PdfReader(io.BytesIO(page.pdf(format="A4", prefer_css_page_size=True))).pages
    texts = [normalize("NFKC", re.sub(r"\s+", " ", sheet.extract_text())) for sheet in sheets]
    assert 12 <= len(texts) <= 16
    assert all("DRAFT – not approved" in text for text in texts)
    assert [f"Page {number} of {len(texts)}" in text for number, text in enumerate(texts, 1)] == [True] * len(texts)
    whole = " ".join(texts)
    assert whole.count("because a bent cap lets water in") == 1
    (sheet,) = (text for text in texts if "the bar can slip" in text)
    assert "Prise off the dust cap" in sheet
    assert "Self-test" not in whole


def test_a_script_that_breaks_leaves_the_page_readable(visit: Visit) -> None:
    """The words of the scripts are damaged here, as if a part of the file had been lost."""
    html = (visit.site / "index.html").read_text(encoding="utf-8")
    (visit.site / "hurt.html").write_text(html.replace('id="_words">{', 'id="_words">{{'), encoding="utf-8")
    page = visit.open("hurt.html")
    assert page.is_visible("#_overview")
    assert page.is_visible("#drive .command")
    assert page.locator("button:visible").count() == 0
    assert len(visit.faults) == 1
    assert "JSON" in visit.faults.pop()
