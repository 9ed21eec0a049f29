"""All that the page says by itself stands in one place, so that it can be said in another language."""

import re
from html.parser import HTMLParser
from itertools import accumulate
from pathlib import Path

import pytest
from jinja2 import Environment

from procbuilder.publish import pagewords as words
from procbuilder.publish import printwords
from procbuilder.publish.pagefiles import FIRST_SCRIPT, SCRIPTS
from tests.publish.blocks import TEMPLATES

HTML = TEMPLATES / "html"
PAGE = sorted(HTML.glob("*.html"))
SPOKEN_ATTRIBUTES = {"alt", "aria-label", "label", "placeholder", "title"}
WORD = re.compile(r"[A-Za-z]{2,}")


class _Words(HTMLParser):
    """Text and spoken attributes of a template without its expressions."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.inside = tag
        self.found += [value or "" for name, value in attrs if name in SPOKEN_ATTRIBUTES]

    def handle_endtag(self, tag: str) -> None:
        self.inside = "" if self.inside == tag else self.inside

    def handle_data(self, data: str) -> None:
        if self.inside not in ("style", "script"):
            self.found.append(data)


def own_words(template: str) -> list[str]:
    """Words that a template says without taking them from the list of words."""
    tokens = Environment(trim_blocks=True, lstrip_blocks=True).lex(template)
    reader = _Words()
    reader.feed("".join(text for _, kind, text in tokens if kind == "data"))
    return [text.strip() for text in reader.found if WORD.search(text)]


@pytest.mark.parametrize("path", PAGE, ids=lambda path: path.stem)
def test_templates_have_no_words_of_their_own(path: Path) -> None:
    assert own_words(path.read_text(encoding="utf-8")) == []


def test_words_in_a_template_would_be_found() -> None:
    assert own_words('<p class="lead">{{ step }}</p><button>Next</button>') == ["Next"]
    assert own_words('{% if a %}<img src="x" alt="a hub">{% endif %}') == ["a hub"]


PRINT = sorted((TEMPLATES / "pdf").glob("*.typ"))


def printed_words(source: str) -> list[str]:
    """Words that a print template says itself: text between brackets, and strings that read as words."""
    plain = re.sub(r"//[^\n]*", "", source)
    strings = re.findall(r'"([^"\n]*)"', plain)
    said = [text for text in strings if (" " in text.strip() and WORD.search(text)) or re.match(r"[A-Z][a-z]+\Z", text)]
    blocks = re.findall(r"\[([^\[\]\n]*)\]", plain)
    return [text for text in said + [text for text in blocks if WORD.search(_bare(text))] if text not in NAMES]


def _bare(text: str) -> str:
    """A text without what stands behind #: names and what is called with them."""
    said, *calls = text.split("#")
    return said + "".join(call[_end(call) :] for call in calls)


def _end(call: str) -> int:
    """Where ``name.name(…).name(…)`` ends."""
    at = 0
    while match := re.compile(r"[\w\-]+|\.(?=\w)").match(call, at):
        at = match.end()
        if call[at : at + 1] == "(":
            depths = list(accumulate({"(": 1, ")": -1}.get(letter, 0) for letter in call[at:]))
            at += depths.index(0) + 1
    return at


NAMES = {
    "Source Sans Pro", "DejaVu Sans Mono", "before you start", "Included", "Not included", "Tool", "Tools", "Supply",
    "Supplies", "Part", "Parts", "Derived", "still open", "closed but never opened", "closed, only assumed",
    "left open on purpose",
}  # fmt: skip
"""Typefaces, and terms of the data that are compared, never shown."""


@pytest.mark.parametrize("path", PRINT, ids=lambda path: path.stem)
def test_print_templates_have_no_words_of_their_own(path: Path) -> None:
    assert printed_words(path.read_text(encoding="utf-8")) == []


def test_print_templates_use_every_word_of_theirs() -> None:
    source = "\n".join(path.read_text(encoding="utf-8") for path in PRINT)
    used = set(re.findall(r"\bwords\.(\w+)", source)) | {"status_words", "untitled", "numbered"}
    known = {name.lower() for name in vars(printwords) if name.isupper()}
    assert known <= used
    assert used - known <= {"first", "slice"}


def test_words_in_a_print_template_would_be_found() -> None:
    assert printed_words('par[Nothing is opened.]\nruled(("What", "Line"), rows)\npar[*#words.none* #it.text]') == [
        "What", "Line", "Nothing is opened.",
    ]  # fmt: skip


def test_scripts_say_only_what_is_listed_and_all_of_it() -> None:
    script = "\n".join((HTML / name).read_text(encoding="utf-8") for name in SCRIPTS)
    said = set(re.findall(r'say\("(\w+)"', script))
    said |= {name for pair in re.findall(r'say\([^()]*\? "(\w+)" : "(\w+)"', script) for name in pair}
    said |= set(re.findall(r'"(note_\w+)"', script))
    assert said == set(words.SCRIPT)


def test_scripts_fill_every_gap() -> None:
    """Each gap of a sentence is named where the sentence is said."""
    script = "\n".join((HTML / name).read_text(encoding="utf-8") for name in SCRIPTS)
    for name, sentence in words.SCRIPT.items():
        calls = re.findall(rf'say\([^;]*?"{name}"[^;]*', script)
        for gap in re.findall(r"\{(\w+)\}", sentence):
            assert any(re.search(rf"\b{gap}\b", call) for call in calls), (name, gap)


def test_every_script_of_the_page_is_joined() -> None:
    assert sorted((FIRST_SCRIPT, *SCRIPTS)) == sorted(path.name for path in HTML.glob("*.js"))


def test_styles_say_nothing() -> None:
    """What stands at the edge of a printed page comes from the list of words."""
    styles = "\n".join(path.read_text(encoding="utf-8") for path in HTML.glob("*.css"))
    assert re.findall(r'content: "[^"]*[A-Za-z][^"]*"', styles) == []
