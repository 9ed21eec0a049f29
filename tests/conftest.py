"""What many tests share: one browser, one wheel, and the demo built once from that wheel."""

import os
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser

# Threads that wait for work of linear algebra use processor time, and cost is told in processor time.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

CHROMIUM = Path("/usr/bin/chromium")
ROOT = Path(__file__).parent.parent

_RUN = (
    "import sys; sys.path.insert(0, sys.argv.pop(1)); import procbuilder; print(procbuilder.__file__);"
    "from procbuilder.cli import main; main()"
)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The demo first, which takes longest: on several cores it is then not waited for at the end."""
    items.sort(key=lambda item: "demo_run" not in getattr(item, "fixturenames", ()))


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


@pytest.fixture(scope="session")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of this clone, built without isolation so that no network is needed."""
    pytest.importorskip("hatchling", reason="hatchling builds the wheel")
    target = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(target), str(ROOT)]
    subprocess.run(command, check=True, capture_output=True)
    return next(target.glob("*.whl"))


@dataclass(frozen=True, slots=True)
class DemoRun:
    """What the installed program said and made of the demo."""

    program: Path
    """Where the wheel was installed."""
    folder: Path
    code: int
    told: list[str]
    """The file of the program, then its lines on stdout."""
    messages: str


@pytest.fixture(scope="session")
def demo_run(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> DemoRun:
    """The demo built outside the clone by the program from the wheel alone: it takes a minute, so only once."""
    home = tmp_path_factory.mktemp("outside")
    inside = home / "inside"
    install = [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-index", "--target", str(inside)]
    subprocess.run([*install, str(wheel)], check=True, capture_output=True)
    command = [sys.executable, "-P", "-c", _RUN, str(inside), "demo", str(home / "demo")]
    result = subprocess.run(command, cwd=home, capture_output=True, text=True, check=False)
    return DemoRun(inside, home / "demo", result.returncode, result.stdout.splitlines(), result.stderr)
