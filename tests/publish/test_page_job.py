"""A job with gloves on: pedal, swipe, ticks, hold points, and the note for whoever takes over."""

import json

import pytest

from procbuilder.publish import pagewords as words

pytest.importorskip("playwright.sync_api", reason="the browser tests need playwright")

from playwright.sync_api import Page

from tests.publish.visit import WIDTHS, Visit, broken_rules, name_job, overflow, shown, until

STEPS = ["chock", "raise", "dust-cap", "keeper", "hub-off", "clean", "bearings", "keeper-on", "gas", "lower", "drive"]
PLACES = [{"viewport": size, "served": served} for size in WIDTHS.values() for served in (False, True)]
everywhere = pytest.mark.parametrize(
    "visit", PLACES, ids=["phone-disk", "phone-http", "desk-disk", "desk-http"], indirect=True
)
touched = pytest.mark.parametrize("visit", [{"viewport": WIDTHS["phone"], "has_touch": True}], indirect=True)


def note(page: Page) -> dict[str, str]:
    """The handover note, line by line."""
    pairs = page.eval_on_selector_all(
        "#_note dt", "names => names.map(one => [one.textContent, one.nextElementSibling.textContent])"
    )
    return dict(pairs)


def stroke(page: Page, start: tuple[int, int], end: tuple[int, int]) -> None:
    """One finger drawn over the screen, as a touch screen reports it."""
    hand = page.context.new_cdp_session(page)
    hand.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": start[0], "y": start[1]}]})
    for part in (1, 2, 3, 4):
        x, y = (a + (b - a) * part / 4 for a, b in zip(start, end, strict=True))
        hand.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [{"x": x, "y": y}]})
    hand.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    hand.detach()


@everywhere
def test_the_whole_job_is_done_by_keyboard_alone_and_its_ticks_outlive_a_reload(visit: Visit) -> None:
    page = visit.open()
    page.keyboard.press("Tab")
    page.keyboard.type("4711")
    page.keyboard.press("Enter")
    walked = []
    for _ in range(40):
        page.keyboard.press("PageDown")
        (step,) = shown(page)
        if step not in walked:
            walked.append(step)
            page.evaluate("name => document.querySelector(`#${name} .tick input`).focus()", step)
            page.keyboard.press("Space")
        if step == STEPS[-1]:
            break
    assert walked == STEPS
    page.reload()
    assert page.locator(".tick input:checked").count() == 0
    page.evaluate("document.querySelector('#_job-known button').focus()")
    assert page.evaluate("document.activeElement.textContent") == "4711: step 11"
    page.keyboard.press("Enter")
    assert page.locator(".tick input:checked").count() == len(STEPS)
    assert page.inner_text("#_job-words") == "Job 4711. Ticked: 11 of 11."


def test_the_way_with_the_tab_key_leads_through_every_control_of_a_step(visit: Visit) -> None:
    page = visit.open("index.html#keeper-on")
    page.click("#_job-skip")
    page.evaluate("document.querySelector('#_at-keeper-on').focus()")
    passed = []
    for _ in range(12):
        page.keyboard.press("Tab")
        passed.append(str(page.evaluate("document.activeElement.textContent.trim().split('\\n')[0]")))
    wanted = ["4", "", words.DIFFERS, words.OPEN_NOW.format(count=3), "Back"]
    assert [name for name in passed if name in wanted][: len(wanted)] == wanted


def test_the_work_goes_on_where_it_stopped(visit: Visit) -> None:
    page = visit.open()
    name_job(page, "4711")
    page.evaluate("location.hash = 'keeper'")
    until(page, "!document.getElementById('keeper').hidden")
    page.reload()
    visit.open()
    name_job(page, "4711")
    assert page.inner_text("#_job-resume") == "Go on at step 4"
    page.click("#_job-resume")
    assert shown(page) == ["keeper"]


@touched
def test_a_level_stroke_turns_the_step_and_any_other_does_not(visit: Visit) -> None:
    page = visit.open("index.html#chock")
    page.click("#_job-skip")
    stroke(page, (300, 400), (80, 410))
    assert shown(page) == ["raise"]
    stroke(page, (80, 400), (300, 390))
    assert shown(page) == ["chock"]
    stroke(page, (200, 600), (180, 200))
    assert shown(page) == ["chock"]
    until(page, "window.scrollY > 100")
    stroke(page, (200, 400), (170, 400))
    assert shown(page) == ["chock"]
    assert page.is_enabled("#_next")


def test_a_hold_point_reminds_once_and_keeps_the_initials(visit: Visit) -> None:
    page = visit.open("index.html#raise")
    name_job(page, "K7")
    page.keyboard.press("PageDown")
    assert shown(page) == ["raise"]
    assert page.inner_text("#raise .checker-remark") == (
        "Hold point: it must be checked before the next step. Press Next again to go on."
    )
    page.keyboard.press("PageDown")
    assert shown(page) == ["dust-cap"]
    page.keyboard.press("PageUp")
    page.fill("#raise .checker input", "k7")
    assert page.inner_text("#raise .checker-remark") == "The checker must not be the one who did it."
    page.fill("#raise .checker input", "M2")
    assert page.inner_text("#raise .checker-remark") == ""
    kept = json.loads(page.evaluate("Object.values(localStorage)[0]"))
    assert kept == {"ticks": [], "checked": {"raise": "M2"}, "at": "raise"}
    visit.open("index.html#raise")
    name_job(page, "K7")
    assert page.input_value("#raise .checker input") == "M2"
    page.keyboard.press("Tab")
    page.evaluate("document.activeElement.blur()")
    page.keyboard.press("PageDown")
    assert shown(page) == ["dust-cap"]


def test_it_does_not_look_like_this_tells_the_ways_on_and_whom_to_ask(visit: Visit) -> None:
    page = visit.open("index.html#keeper")
    assert page.locator(".step .differs").count() == len(STEPS)
    page.click("#keeper .differs summary")
    told = page.inner_text("#keeper .differs")
    for line in (
        "Stop. Leave everything as it is. Leave in place: 2 x axle stand; wheel chock.",
        "This step is only for: the hub has a keeper over the nut",
        "If: the pin is rusted in – soak it and wait",
        "Stop and ask: workshop foreman, extension 12",
    ):
        assert line in told
    page.evaluate("location.hash = 'keeper-on'")
    page.click("#keeper-on .differs summary")
    page.click("#keeper-on .differs .jump")
    assert shown(page) == ["keeper"]


def handed_over(visit: Visit) -> Page:
    """A job that stopped at step 7, with step 2 forgotten."""
    page = visit.open()
    name_job(page, "4711")
    for step in ("chock", "dust-cap", "keeper", "hub-off", "clean"):
        page.evaluate("name => { location.hash = name; }", step)
        page.check(f"#{step} .tick input")
    page.evaluate("location.hash = 'bearings'")
    until(page, "!document.getElementById('bearings').hidden")
    page.evaluate("location.hash = '_handover'")
    until(page, "!document.getElementById('_handover').hidden")
    return page


def test_the_handover_note_tells_place_open_things_and_dangers(visit: Visit) -> None:
    page = handed_over(visit)
    told = note(page)
    written = told.pop("Written")
    assert told == {
        "Procedure": "P-014 – Trailer wheel hub – renew the bearings · B · DRAFT – not approved",
        "Job": "4711",
        "Stopped at": "step 7 of 11: Slide the hub with its new bearings onto the stub axle. "
        "This step may be half done: look first.",
        "Ticked": "1, 3–6",
        "Before it without a tick": "2",
        "Still open": "wheel chock: fitted for now; dust cap: off, tray 3; M8 bolt: off; hub: off",
        "Dangers standing": "DANGER the trailer can drop off the stands – keep both stands under the axle, "
        "nobody underneath (while: trailer raised)",
        "Leave in place": "2 x axle stand; wheel chock",
        "Hold points passed": "step 2, no initials",
        "Whom to ask": "workshop foreman, extension 12",
        "Mind": "Made from ticks, which are a reminder; the signed sheet is the record.",
    }
    assert written.endswith(page.evaluate("new Date().toTimeString().slice(0, 3)") + written[-2:])


def test_a_ticked_last_step_hands_over_the_next_one(visit: Visit) -> None:
    page = handed_over(visit)
    page.go_back()
    until(page, "!document.getElementById('bearings').hidden")
    page.check("#bearings .tick input")
    page.evaluate("location.hash = '_handover'")
    until(page, "!document.getElementById('_handover').hidden")
    assert note(page)["Stopped at"].startswith("step 8 of 11: Fit the keeper")


def test_the_note_is_copied_or_else_marked_to_be_copied(visit: Visit) -> None:
    visit.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page = handed_over(visit)
    page.click("#_note-copy")
    until(page, "document.querySelector('#_note-words').textContent === 'Copied.'")
    text = page.evaluate("navigator.clipboard.readText()")
    assert text.startswith("Handover note\nProcedure: P-014")
    assert "\nStill open: wheel chock: fitted for now; dust cap" in text
    page.evaluate("Object.defineProperty(navigator, 'clipboard', { get: () => undefined })")
    page.click("#_note-copy")
    assert page.inner_text("#_note-words") == "It is marked: copy it with the keys of this device."
    assert "Stopped at" in page.evaluate("getSelection().toString()")


def test_the_note_is_printed_alone(visit: Visit) -> None:
    page = handed_over(visit)
    page.emulate_media(media="print", color_scheme="light")
    assert page.locator(".view:visible").count() == 1
    assert page.is_visible("#_note")
    assert page.is_visible(".signing")
    assert page.locator("button:visible").count() == 0


@pytest.mark.parametrize("visit", [{"viewport": WIDTHS["phone"]}], indirect=True)
def test_the_note_and_known_jobs_fit_a_phone_and_break_no_rule(visit: Visit) -> None:
    page = handed_over(visit)
    assert (overflow(page), broken_rules(page)) == (0, [])
    page.reload()
    assert page.is_visible("#_job-known button")
    assert (overflow(page), broken_rules(page)) == (0, [])
