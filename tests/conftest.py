"""One browser for all tests that need one."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser

CHROMIUM = Path("/usr/bin/chromium")


@pytest.fixture(scope="session")
def browser() -> "Iterator[Browser]":
    """Debian's Chromium; the test is skipped where it or the driver is absent."""
    driving = pytest.importorskip("playwright.sync_api", reason="the browser tests need playwright")
    if not CHROMIUM.exists():
        pytest.skip("the browser tests need Debian's chromium")
    with driving.sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=str(CHROMIUM))
        yield browser
        browser.close()
