"""A technician's prose as HTML that can neither run, load nor send anything."""

import nh3
from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from markdown_it.utils import OptionsDict
from markupsafe import Markup, escape

TAGS = {"a", "blockquote", "br", "code", "em", "hr", "li", "ol", "p", "pre", "strong", "ul"}
ATTRIBUTES = {"a": {"href"}, "ol": {"start"}}
SCHEMES = {"http", "https"}


def html(text: str) -> Markup:
    """CommonMark as safe HTML: no raw HTML, no pictures, links only to the web or within the page."""
    return Markup(_CLEANER.clean(_MARKDOWN.render(text)))


def _within_the_page(address: str) -> str | None:
    return address if address.startswith("#") else None


def _picture_words(
    _renderer: RendererHTML, tokens: list[Token], index: int, _options: OptionsDict, _env: object
) -> str:
    return str(escape(tokens[index].content))


def _heading(_renderer: RendererHTML, tokens: list[Token], index: int, _options: OptionsDict, _env: object) -> str:
    """A heading inside prose must not break the outline of the page: it becomes a bold line."""
    return "<p><strong>" if tokens[index].nesting == 1 else "</strong></p>\n"


def _reader() -> MarkdownIt:
    reader = MarkdownIt("commonmark", {"html": False})
    reader.add_render_rule("image", _picture_words)
    reader.add_render_rule("heading_open", _heading)
    reader.add_render_rule("heading_close", _heading)
    return reader


_MARKDOWN = _reader()
_CLEANER = nh3.Cleaner(
    tags=TAGS,
    attributes=ATTRIBUTES,
    url_schemes=SCHEMES,
    url_relative=_within_the_page,
    link_rel="noopener noreferrer",
)
