"""A browser window on a published page, and what can be asked of it."""

import time
from pathlib import Path

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import BrowserContext, Page

WIDTHS = {"phone": {"width": 360, "height": 740}, "desk": {"width": 1280, "height": 800}}

TARGETS = """() => Array.from(document.querySelectorAll("a, button, input, summary"))
    .filter(e => e.checkVisibility())
    .map(e => [e.closest(".foot") ? 64 : 48, (e.closest("label") || e).getBoundingClientRect()])
    .filter(([least, box]) => box.width > 0)
    .map(([least, box]) => Math.min(box.width, box.height) - least)"""
"""How far each visible target is above the least size: 64 px for what is pressed all the time, else 48."""


class Visit:
    """A browser window on the site that remembers what went wrong and what was asked for."""

    def __init__(self, context: BrowserContext, site: Path, served: str = "") -> None:
        self.context = context
        self.site = site
        self.served = served
        """Where a server offers the site; empty: it is opened from the disk."""
        self.faults: list[str] = []
        self.asked: set[str] = set()
        self.page = context.new_page()
        self.page.set_default_timeout(5000)
        self.page.on("console", lambda message: self.faults.append(f"{message.type}: {message.text}"))
        self.page.on("pageerror", lambda error: self.faults.append(str(error)))
        self.page.on("request", lambda request: self.asked.add(self._whose(request.url)))

    def _whose(self, url: str) -> str:
        """The folder of the page, or the scheme of anything else."""
        return "the site" if url.startswith(self.served or self.site.as_uri()) else url.split(":")[0]

    def open(self, address: str = "index.html") -> Page:
        name, _, hash_ = address.partition("#")
        self.page.goto("about:blank")
        base = f"{self.served}/{name}" if self.served else (self.site / name).as_uri()
        self.page.goto(base + ("#" + hash_ if hash_ else ""))
        return self.page


def shown(page: Page) -> list[str]:
    return [str(name) for name in page.eval_on_selector_all(".view:not([hidden])", "views => views.map(v => v.id)")]


def overflow(page: Page) -> int:
    return int(page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth"))


def onward(page: Page) -> None:
    """To the next step; a hold point asks once before it lets go."""
    before = shown(page)
    page.click("#_next")
    if shown(page) == before:
        page.click("#_next")


def until(page: Page, true: str) -> None:
    """Wait for something to come true; the browser's own waiting would need what the policy forbids."""
    end = time.monotonic() + 5
    while not page.evaluate(true):
        assert time.monotonic() < end, f"never came true: {true}"
        page.wait_for_timeout(20)


def name_job(page: Page, label: str) -> None:
    page.fill("#_job-label", label)
    page.press("#_job-label", "Enter")


def breaches(page: Page, *names: str) -> list[tuple[str, str, str]]:
    """Broken accessibility rules in these views: view, rule, first element."""
    found = []
    for name in names:
        page.evaluate("name => { location.hash = name; }", name)
        until(page, f"!document.getElementById('{name}').hidden")
        found += [(name, *rest) for rest in broken_rules(page)]
    return found


def broken_rules(page: Page) -> list[tuple[str, str]]:
    """Broken accessibility rules of the page as it stands: rule, first element."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(Axe().axe_script)
    result = page.evaluate("axe.run()")
    assert len(result["passes"]) > 20
    return [(entry["id"], entry["nodes"][0]["html"]) for entry in result["violations"]]
