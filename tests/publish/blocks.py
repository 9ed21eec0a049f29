"""What a person reads on a page, block by block, from its HTML."""

from html.parser import HTMLParser
from pathlib import Path

from procbuilder.model.edition import Edition
from procbuilder.publish.html import page

TEMPLATES = Path(__file__).parents[2] / "templates"

BLOCKS = {
    "article", "body", "button", "dd", "details", "div", "dl", "dt", "figcaption", "figure", "form", "h1", "h2", "h3",
    "h4", "header", "label", "li", "main", "nav", "ol", "p", "pre", "section", "summary", "table", "tbody", "td", "th",
    "thead", "title", "tr", "ul",
}  # fmt: skip
UNREAD = {"style", "script", "tspan"}
"""The last are the labels over a picture: its alternative text and the words below it say them."""


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.parts: dict[str, list[str]] = {"": []}
        self.words = ""
        self.part = ""
        self.unread = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        facts = dict(attrs)
        if tag in BLOCKS:
            self.close_block()
        if tag == "article":
            self.part = facts["id"] or ""
            self.parts[self.part] = []
        if tag == "br":
            self.words += " "
        if tag == "img":
            self.close_block()
            self.parts[self.part].append(f"[picture: {facts['alt']}]")
        if tag == "video":
            self.parts[self.part].append(f"[clip: {facts['src']}]")
        self.unread = tag in UNREAD

    def handle_endtag(self, tag: str) -> None:
        if tag in BLOCKS:
            self.close_block()
        if tag == "article":
            self.part = ""
        self.unread = False

    def handle_data(self, data: str) -> None:
        if not self.unread:
            self.words += data

    def close_block(self) -> None:
        text = " ".join(self.words.split())
        if text:
            self.parts[self.part].append(text)
        self.words = ""


def read(html: str) -> dict[str, list[str]]:
    """Blocks of text by the id of the view that holds them; those outside any view under the empty id."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader.parts


def views(edition: Edition) -> dict[str, list[str]]:
    """What is read on the page of an edition."""
    return read(page(edition, templates=TEMPLATES))


def after(blocks: list[str], title: str, count: int) -> list[str]:
    """The blocks that follow a title."""
    at = blocks.index(title) + 1
    return blocks[at : at + count]
