"""The sample, its pictures, its printed sheet and its page in a browser, made once."""

import dataclasses
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING, Any

import pytest

from procbuilder.model.edition import Edition
from procbuilder.publish.html import page, phone
from tests.publish.blocks import TEMPLATES
from tests.publish.sample import sample_edition
from tests.publish.sheet import sheet, whole

if TYPE_CHECKING:
    from playwright.sync_api import Browser

    from tests.publish.visit import Visit


@pytest.fixture(scope="session")
def media(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("media")


@pytest.fixture(scope="session")
def edition(media: Path) -> Edition:
    return sample_edition(media)


@pytest.fixture(scope="session")
def printed(edition: Edition, media: Path) -> bytes:
    return sheet(edition, media)


@pytest.fixture(scope="session")
def text(printed: bytes) -> str:
    return whole(printed)


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with ``index.html``, ``phone.html``, the same with a broken clip, and ``media/``."""
    folder = tmp_path_factory.mktemp("site")
    edition = sample_edition(folder / "media")
    (folder / "index.html").write_text(page(edition, templates=TEMPLATES), encoding="utf-8")
    (folder / "phone.html").write_bytes(phone(edition, templates=TEMPLATES, media=folder / "media"))
    (folder / "media" / "broken.mp4").write_bytes(b"not a film")
    broken = page(edition, templates=TEMPLATES).replace("media/dust-cap.mp4", "media/broken.mp4")
    (folder / "broken.html").write_text(broken, encoding="utf-8")
    other = dataclasses.replace(edition, revision="C")
    (folder / "revised.html").write_text(page(other, templates=TEMPLATES), encoding="utf-8")
    return folder


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Nothing on the terminal."""


@pytest.fixture(scope="session")
def served(site: Path) -> Iterator[str]:
    """The address at which a plain server on this machine offers the site."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(site)))
    Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


@pytest.fixture
def visit(browser: "Browser", site: Path, request: pytest.FixtureRequest) -> "Iterator[Visit]":
    """A window of its own for each test: at a desk and from the disk, or as the parameter says."""
    from tests.publish.visit import WIDTHS, Visit

    options: dict[str, Any] = {"viewport": WIDTHS["desk"], "locale": "en-GB"} | getattr(request, "param", {})
    served = request.getfixturevalue("served") if options.pop("served", False) else ""
    context = browser.new_context(**options)
    visit = Visit(context, site, served)
    yield visit
    context.close()
    assert visit.faults == []
    assert visit.asked <= {"the site", "data", "about"}
