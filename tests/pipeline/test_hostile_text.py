"""Text is data: whatever is typed, and wherever, it never becomes markup, and a cell never a formula."""

from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from procbuilder.model.edition import Edition
from procbuilder.model.practice import WHO
from procbuilder.pipeline.build import build
from procbuilder.pipeline.new import new
from procbuilder.publish.wording.problems import line, said
from procbuilder.read.procedure import read_procedure, read_text
from tests.pipeline.conftest import film
from tests.pipeline.every_field import every_field, fixed

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Dialog, Request

HOSTILE = (
    "\"'><script>alert(1)</script><img src=x onerror=alert(2)><a href=javascript:alert(3) onclick=alert(4)>x</a>"
    "<svg/onload=alert(5)></style></title></textarea><!--{{ 7*7 }}{% raw %} [x](javascript:alert(6))"
)
HARMLESS = str.maketrans("<>\"'", "‹›“’")
"""The same words without the signs of markup: the page must have the same shape with them."""
PAGES = ("index.html", "phone.html", "quotation.html", "sheets.html")

Shape = list[tuple[str, tuple[str, ...]]]


class _Shape(HTMLParser):
    """Every tag of a page with the names of its attributes, and every address that it names."""

    def __init__(self) -> None:
        super().__init__()
        self.shape: Shape = []
        self.addresses: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.shape.append((tag, tuple(name for name, _ in attrs)))
        self.addresses += [value or "" for name, value in attrs if name in ("href", "src", "action", "poster", "data")]


def parsed(page: str) -> _Shape:
    reader = _Shape()
    reader.feed(page)
    reader.close()
    return reader


def written(folder: Path, text: str, said: str) -> Path:
    """A procedure folder with a recording and its narration."""
    film(folder / "recordings" / "strip.mp4")
    (folder / "procedure.md").write_text(text, encoding="utf-8")
    (folder / "strip.srt").write_text(f"1\n00:00:00,600 --> 00:00:01,900\n{said}\n", encoding="utf-8")
    return folder


@pytest.fixture(scope="module", params=["words", "all"])
def twins(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The output of a hostile procedure and of the same one without signs of markup.

    Hostile are all words, or also the parts that should hold times, numbers and shapes.
    """
    outs = []
    for name, text in (("hostile", HOSTILE), ("harmless", HOSTILE.translate(HARMLESS))):

        def words(_field: str, _part: str, text: str = text) -> str:
            return text

        procedure = every_field(fixed(words) if request.param == "words" else words)
        home = written(tmp_path_factory.mktemp(name) / "hub", procedure, text)
        build(home)
        outs.append(home / "out")
    return outs[0], outs[1]


@pytest.mark.parametrize("page", PAGES)
def test_hostile_words_leave_the_shape_of_the_page_as_it_is(twins: tuple[Path, Path], page: str) -> None:
    hostile, harmless = (parsed((out / page).read_text(encoding="utf-8")) for out in twins)
    assert hostile.shape == harmless.shape
    assert len(hostile.shape) > 30
    names = {name for _, names in hostile.shape for name in names}
    assert [name for name in names if name.startswith("on")] == []
    assert [address for address in hostile.addresses if "javascript:" in address.casefold()] == []


def test_every_hostile_word_is_shown_as_typed(twins: tuple[Path, Path]) -> None:
    """Nothing is thrown away on the way either: it stands in the page, escaped."""
    page = (twins[0] / "index.html").read_text(encoding="utf-8")
    assert page.count("&lt;script&gt;alert(1)&lt;/script&gt;") > 60
    assert "49" not in page.split("<h1")[1].split("</h1>")[0]


@pytest.mark.parametrize("page", PAGES)
def test_hostile_words_do_nothing_in_a_browser(twins: tuple[Path, Path], browser: "Browser", page: str) -> None:
    """No dialog, no line in the console, nothing asked for from elsewhere; each view is opened once."""
    faults: list[str] = []
    context = browser.new_context()
    window = context.new_page()

    def dialog(shown: "Dialog") -> None:
        faults.append(f"dialog {shown.message}")
        shown.dismiss()

    def asked(request: "Request") -> None:
        if not request.url.startswith(("file:", "data:")):
            faults.append(request.url)

    window.on("dialog", dialog)
    window.on("request", asked)
    window.on("console", lambda message: faults.append(f"{message.type} {message.text}"))
    window.on("pageerror", lambda error: faults.append(str(error)))
    window.goto((twins[0] / page).as_uri())
    for number in range(window.locator(".view").count()):
        window.evaluate("number => { location.hash = document.querySelectorAll('.view')[number].id; }", number)
        window.wait_for_timeout(30)
    assert window.locator("script").count() == (twins[1] / page).read_text(encoding="utf-8").count("<script")
    context.close()
    assert faults == []


def test_a_hostile_id_or_heading_is_refused_and_kept_as_words() -> None:
    procedure, problems = read_text('# T\n\n## S\n\n### Turn {#"onclick=alert(1)}\n')
    assert [(step.command, step.id) for step in procedure.steps] == [("Turn", "turn")]
    assert said(problems[0]).instead == "write small letters, digits and -: {#onclick-alert-1}"


@pytest.mark.parametrize("sign", list("=+-@"))
def test_a_cell_that_looks_like_a_formula_is_read_as_words(tmp_path: Path, sign: str) -> None:
    cell = f'{sign}HYPERLINK("http://x","cap off")'
    quoted = cell.replace('"', '""')
    (tmp_path / "list.csv").write_text(f'start,end,step\n0:00,0:01,"{quoted}"\n{sign}1,0:01,pin out\n')
    made = new(tmp_path / "job", [film(tmp_path / "strip.mp4")], tmp_path / "list.csv", [], lambda *_: None)
    told = [line(problem) for problem in made.problems]
    assert told == [f"list.csv:3: {sign}1 is no start – write 1:15 or seconds such as 75.5"]
    assert [step.command for step in read_procedure(made.folder)[0].steps] == [cell]


@pytest.mark.parametrize("sign", list("=+-@"))
def test_no_cell_that_is_written_can_begin_with_such_a_sign(sign: str) -> None:
    """The practice log holds initials, a date, the id of a step and minutes."""
    assert not WHO.match(f"{sign}AB")
    procedure, problems = read_text(f"# T\n\n## S\n\n### Turn {{#{sign}turn}}\n")
    assert procedure.steps[0].id == "turn"
    assert "is not allowed" in said(problems[0]).what


def test_a_build_writes_no_table(folder: Callable[[str], Path]) -> None:
    home = folder(every_field(fixed(lambda name, part: f"={name} {part}")))
    edition: Edition = build(home).edition
    assert edition.title == "=title"
    assert [path.name for path in (home / "out").rglob("*.csv")] == []
