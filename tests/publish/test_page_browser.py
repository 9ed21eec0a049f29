"""The page in a real browser, opened from the disk as an apprentice would open it."""

import json
import re
import time
from pathlib import Path

import pytest

from procbuilder.publish import words
from tests.publish.sample_words import SCRIPT

pytest.importorskip("playwright.sync_api", reason="the browser tests need playwright")

from playwright.sync_api import Browser

from tests.publish.visit import TARGETS, WIDTHS, Visit, breaches, name_job, onward, overflow, shown, until

STEPS = ["chock", "raise", "dust-cap", "keeper", "hub-off", "clean", "bearings", "keeper-on", "gas", "lower", "drive"]
JOB = "Job 4711. Ticked: 2 of 11. First without a tick: step 2."


both_widths = pytest.mark.parametrize(
    "visit", [{"viewport": size} for size in WIDTHS.values()], ids=WIDTHS, indirect=True
)


@both_widths
def test_page_nothing_sticks_out_sideways(visit: Visit) -> None:
    page = visit.open()
    assert overflow(page) == 0
    for step in STEPS:
        onward(page)
        assert (shown(page), overflow(page)) == ([step], 0)


@both_widths
def test_page_facts_line_up_beside_their_names(visit: Visit) -> None:
    """Every tool, size and thing to wear begins at one edge, to the right of the word that says what it is."""
    page = visit.open("index.html#dust-cap")
    edges = page.evaluate(
        """() => Array.from(document.querySelectorAll("#dust-cap .facts > div"), fact => [
            fact.querySelector("dt").getBoundingClientRect().right,
            ...Array.from(fact.querySelectorAll("dd"), one => one.getBoundingClientRect().left)])"""
    )
    assert [len(fact) for fact in edges] == [3, 2]
    assert all(fact[0] < min(fact[1:]) == max(fact[1:]) for fact in edges)
    weight = page.eval_on_selector("#dust-cap .facts dt", "name => getComputedStyle(name).fontWeight")
    assert weight == "700"


@pytest.mark.parametrize("visit", [{"viewport": WIDTHS["phone"]}], indirect=True)
def test_page_twice_the_type_still_fits_a_phone(visit: Visit) -> None:
    page = visit.open()
    page.evaluate("document.documentElement.style.fontSize = '225%'")
    assert overflow(page) == 0
    for step in STEPS:
        onward(page)
        assert (shown(page), overflow(page)) == ([step], 0)


def test_page_arrow_page_and_home_keys_turn_the_steps(visit: Visit) -> None:
    page = visit.open()
    assert shown(page) == ["_overview"]
    for key, expected in [
        ("ArrowRight", "chock"), ("PageDown", "raise"), ("ArrowRight", "raise"), ("PageDown", "dust-cap"),
        ("PageUp", "raise"),
        ("ArrowLeft", "chock"), ("ArrowLeft", "_overview"), ("ArrowLeft", "_overview"), ("PageDown", "chock"),
        ("Home", "_overview"),
    ]:  # fmt: skip
        page.keyboard.press(key)
        assert shown(page) == [expected]
    visit.open("index.html#drive").keyboard.press("PageDown")
    assert shown(page) == ["drive"]
    assert page.is_disabled("#_next")


def test_page_two_quick_presses_turn_two_steps(visit: Visit) -> None:
    """A foot pedal can be quicker than the browser's own notice that the address changed."""
    page = visit.open()
    page.evaluate(
        """() => ["PageDown", "PageDown"].forEach(
            key => document.body.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true })))"""
    )
    assert shown(page) == ["raise"]
    until(page, "location.hash === '#raise'")


def test_page_keys_leave_typing_and_browser_shortcuts_alone(visit: Visit) -> None:
    page = visit.open()
    page.focus("#_job-label")
    for key in ("ArrowRight", "PageDown", "Home"):
        page.keyboard.press(key)
        assert shown(page) == ["_overview"]
    page.focus("#_next")
    page.keyboard.press("Shift+PageDown")
    page.keyboard.press("Control+ArrowRight")
    assert shown(page) == ["_overview"]


def test_page_focus_goes_to_the_step_heading_at_the_top(visit: Visit) -> None:
    page = visit.open()
    page.click("#_next")
    page.evaluate("window.scrollTo(0, 9999)")
    page.click("#_next")
    assert page.evaluate("document.activeElement.textContent") == "Step 2 of 11 · Strip · 1 still open"
    assert page.evaluate("window.scrollY") == 0
    assert page.title() == "Step 2 of 11 · Strip · 1 still open – P-014 – Trailer wheel hub – renew the bearings"
    page.keyboard.press("Home")
    until(page, "document.activeElement.textContent === 'Overview'")


def test_page_links_and_the_back_button_find_their_step(visit: Visit) -> None:
    page = visit.open("index.html#keeper-on")
    assert shown(page) == ["keeper-on"]
    page.click("#keeper-on .found .jump")
    until(page, "!document.getElementById('keeper').hidden")
    assert shown(page) == ["keeper"]
    page.go_back()
    until(page, "!document.getElementById('keeper-on').hidden")
    assert shown(page) == ["keeper-on"]
    assert shown(visit.open("index.html#not-there")) == ["_overview"]


def test_page_ticks_are_kept_by_job_procedure_and_revision(visit: Visit) -> None:
    page = visit.open()
    name_job(page, " 4711 ")
    for step in ("chock", "dust-cap"):
        page.goto(page.url.partition("#")[0] + "#" + step)
        page.check(f"#{step} .tick input")
    page.keyboard.press("Home")
    assert page.inner_text("#_job-words") == JOB
    assert page.locator(".step-list .done:visible").count() == 2

    page = visit.open()
    assert page.locator(".step-list .done:visible").count() == 0
    name_job(page, "4711")
    assert page.inner_text("#_job-words") == JOB
    page.click("#_job-change")
    name_job(page, "4712")
    assert page.inner_text("#_job-words").startswith("Job 4712. Ticked: 0 of 11.")
    name_job(visit.open("revised.html"), "4711")
    assert page.inner_text("#_job-words").startswith("Job 4711. Ticked: 0 of 11.")


def test_page_a_skipped_job_keeps_nothing(visit: Visit) -> None:
    page = visit.open()
    page.click("#_job-skip")
    page.click("#_next")
    page.check("#chock .tick input")
    assert page.inner_text("#chock .tick .small") == f"No job named: ticks are not kept. {words.RECORD}"
    assert page.evaluate("localStorage.length") == 0
    page.keyboard.press("Home")
    page.click("#_job-change")
    name_job(page, "late")
    assert page.inner_text("#_job-words").startswith("Job late. Ticked: 1 of 11.")
    assert json.loads(page.evaluate("Object.values(localStorage)[0]")) == {
        "ticks": ["chock"],
        "checked": {},
        "at": "chock",
    }


def test_page_going_on_without_an_answer_takes_what_was_typed(visit: Visit) -> None:
    page = visit.open()
    page.fill("#_job-label", "4711")
    page.click("#_next")
    assert not page.is_visible("#_job-form")
    assert page.inner_text("#chock .tick .small") == f"Job 4711. {words.RECORD}"


def test_page_works_where_nothing_can_be_kept(visit: Visit) -> None:
    """A browser that refuses to store, or holds rubbish, costs the ticks but not the page."""
    visit.context.add_init_script("Storage.prototype.setItem = () => { throw new Error('full'); }")
    visit.context.add_init_script("Storage.prototype.getItem = () => '{rubbish'")
    page = visit.open()
    name_job(page, "4711")
    assert page.inner_text("#_job-words").startswith("Job 4711: ticks cannot be kept here. Ticked: 0 of 11.")


def test_page_clip_of_the_shown_step_plays_with_its_captions(visit: Visit) -> None:
    page = visit.open("index.html#dust-cap")
    until(page, "document.querySelector('#dust-cap video').currentTime > 0.1")
    facts = page.eval_on_selector(
        "#dust-cap video",
        "v => [v.muted, v.loop, v.controls, v.playsInline, v.paused, v.videoWidth, v.poster.split('/').pop()]",
    )
    assert facts == [True, True, True, True, False, 320, "dust-cap.jpg"]
    until(page, "document.querySelector('#dust-cap track').readyState === 2")
    cues = page.eval_on_selector(
        "#dust-cap video",
        "v => [...v.textTracks[0].cues].map(c => [c.startTime, c.endTime, c.getCueAsHTML().textContent])",
    )
    assert cues == [[0, 0.9, "a little at a time"], [1, 3.1, f"nuts & bolts --> {SCRIPT}"]]
    assert not page.is_visible("#dust-cap .with-clip > .picture")
    page.click("#dust-cap .swap")
    assert page.is_visible("#dust-cap .with-clip > .picture")
    assert page.eval_on_selector("#dust-cap video", "v => v.paused")
    page.click("#dust-cap .swap")
    page.click("#_next")
    assert page.eval_on_selector("#dust-cap video", "v => v.paused")


@pytest.mark.parametrize("visit", [{"reduced_motion": "reduce"}], indirect=True)
def test_page_reduced_motion_begins_with_the_still(visit: Visit) -> None:
    page = visit.open("index.html#dust-cap")
    assert page.is_visible("#dust-cap .with-clip > .picture")
    assert page.eval_on_selector("#dust-cap video", "v => v.paused")
    assert page.inner_text("#dust-cap .swap") == "Show clip"


def test_page_a_clip_that_cannot_be_played_leaves_the_still(visit: Visit) -> None:
    page = visit.open("broken.html#dust-cap")
    page.wait_for_selector("#dust-cap .swap:disabled")
    assert page.inner_text("#dust-cap .swap") == "The clip cannot be shown here"
    assert page.is_visible("#dust-cap .with-clip > .picture")
    assert not page.is_visible("#dust-cap video")


@pytest.mark.parametrize("visit", [{"java_script_enabled": False, "viewport": WIDTHS["phone"]}], indirect=True)
@pytest.mark.parametrize("name", ["index.html", "phone.html"])
def test_page_without_scripts_every_step_and_danger_is_readable(visit: Visit, name: str) -> None:
    page = visit.open(name)
    assert page.locator(".view:visible").count() == len(STEPS) + 2  # with overview and study; no handover note
    for step in STEPS:
        assert page.is_visible(f"#{step} .command")
    texts = page.locator(".signal:visible").all_inner_texts()
    assert texts.count("DANGER") == 3  # one in the key, two in steps
    assert page.locator(".standing:visible").count() == 8
    assert page.is_visible("#dust-cap .with-clip > .picture")
    assert page.locator("button:visible, form:visible, input:not([type=radio]):visible").count() == 0
    assert page.locator(".question details:visible").count() > 5
    assert overflow(page) == 0


def test_phone_file_alone_shows_pictures_and_clip(visit: Visit, tmp_path: Path) -> None:
    (tmp_path / "phone.html").write_bytes((visit.site / "phone.html").read_bytes())
    visit.site = tmp_path
    page = visit.open("phone.html#dust-cap")
    until(page, "document.querySelector('#dust-cap video').currentTime > 0.1")
    broken = page.evaluate("[...document.images].filter(image => !image.naturalWidth).length")
    assert (page.locator("img").count(), broken) == (27, 0)


@both_widths
def test_page_breaks_no_accessibility_rule(visit: Visit) -> None:
    assert breaches(visit.open(), "_overview", "dust-cap", "keeper-on", "_study", "_handover") == []


@pytest.mark.parametrize("visit", [{"viewport": WIDTHS["phone"]}], indirect=True)
def test_phone_breaks_no_accessibility_rule(visit: Visit) -> None:
    assert breaches(visit.open("phone.html"), "dust-cap") == []


@pytest.mark.parametrize("visit", [{"color_scheme": "dark"}], indirect=True)
def test_page_breaks_no_accessibility_rule_in_the_dark(visit: Visit) -> None:
    page = visit.open()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(21, 21, 21)"
    assert breaches(page, "raise", "gas", "_study") == []


@both_widths
def test_page_targets_are_big_enough_for_gloves(visit: Visit) -> None:
    page = visit.open()
    spare: list[float] = page.evaluate(TARGETS)
    for _ in STEPS:
        onward(page)
        spare += page.evaluate(TARGETS)
    assert len(spare) > 70
    assert min(spare) >= 0


def test_page_print_shows_everything_and_no_controls(visit: Visit) -> None:
    page = visit.open("index.html#dust-cap")
    until(page, "!document.querySelector('#dust-cap video').paused")
    page.emulate_media(media="print", color_scheme="light")
    for step in STEPS:
        assert page.is_visible(f"#{step} .command")
        assert page.inner_text(f"#{step} .running") == "P-014 · revision B · DRAFT – not approved"
    assert page.inner_text(".state") == "DRAFT – not approved 2 problems must be settled before it may be approved"
    assert page.is_visible("#dust-cap .with-clip > .picture")
    assert page.is_visible("details li >> nth=1")
    assert page.locator("button:visible, input:visible, video:visible, nav:visible").count() == 0


def test_page_hostile_words_are_only_words(visit: Visit) -> None:
    page = visit.open("index.html#keeper")
    dialogs: list[str] = []
    page.on("dialog", lambda dialog: dialogs.append(dialog.message))
    note = f'Note: hostile {SCRIPT} #import "x" $a$ [link](javascript:alert(1))'
    assert page.inner_text("#keeper .rest > ul:last-of-type li:last-child") == note
    assert page.locator("script").count() == 4
    assert dialogs == []


def test_page_policy_blocks_what_is_not_its_own(browser: Browser, site: Path) -> None:
    """The policy is in force: a script, a style or a remote picture put into the page does nothing."""
    context = browser.new_context()
    visit = Visit(context, site)
    page = visit.open()
    page.evaluate(
        """() => {
            const script = document.createElement("script");
            script.textContent = "window.intruder = true";
            document.body.append(script);
            document.body.setAttribute("style", "color: red");
            new Image().src = "http://127.0.0.1:9/x.png";
        }"""
    )
    assert page.evaluate("window.intruder || null") is None
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(17, 17, 17)"
    blocked: set[str] = set()
    end = time.monotonic() + 5
    while len(blocked) < 3 and time.monotonic() < end:
        page.wait_for_timeout(20)
        blocked = {re.findall(r"(?:script|style|img)-src", fault)[0] for fault in visit.faults}
    assert blocked == {"img-src", "script-src", "style-src"}
    context.close()
