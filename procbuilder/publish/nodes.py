"""Prose as small nodes that a page setter can print: Markdown in, plain data out."""

from collections.abc import Iterable
from itertools import accumulate
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.token import Token
from markdown_it.tree import SyntaxTreeNode

Node = dict[str, Any]

DEEPEST = 6
"""Lists and quotes within each other; what lies deeper is printed at this depth. Emphasis within emphasis that
goes deeper is printed as typed."""

_MARKDOWN = MarkdownIt("commonmark", {"html": False})
_SAME = {
    "paragraph": "par",
    "heading": "bold-par",
    "strong": "strong",
    "em": "em",
    "link": "link",
    "bullet_list": "list",
    "ordered_list": "numbers",
    "list_item": "item",
    "blockquote": "quote",
}
"""Node kinds with children, by the parser's names. A heading in prose is a bold line: only steps and sections
belong in the outline."""
_FLAT = {"text": "text", "code_inline": "code", "fence": "pre", "code_block": "pre"}


def prose_nodes(paragraphs: Iterable[str]) -> list[Node]:
    """Nodes of several pieces of Markdown, one after the other.

    Each node has a ``kind`` and either ``text`` or ``children``; a link has an ``address``, and a numbered
    list a ``start``. Pictures give their words only, and HTML stays text.
    """
    return [node for text in paragraphs for node in _children(_tree(text), 0)]


def _tree(text: str) -> SyntaxTreeNode:
    tokens = _MARKDOWN.parse(text)
    for token in tokens:
        if max(accumulate(child.nesting for child in token.children or ()), default=0) > DEEPEST:
            token.children = [Token("text", "", 0, content=token.content)]
    return SyntaxTreeNode(tokens)


def _children(parent: SyntaxTreeNode, depth: int) -> list[Node]:
    return [node for child in parent.children for node in _nodes(child, depth)]


def _nodes(source: SyntaxTreeNode, depth: int) -> list[Node]:
    if source.type in _FLAT:
        return [{"kind": _FLAT[source.type], "text": source.content}] if source.content else []
    match source.type:
        case "softbreak":
            return [{"kind": "text", "text": " "}]
        case "hardbreak":
            return [{"kind": "break"}]
        case "image" | "inline":
            return _children(source, depth)
        case "hr":
            return []
    return _branch(source, depth)


def _branch(source: SyntaxTreeNode, depth: int) -> list[Node]:
    nests = source.type in {"bullet_list", "ordered_list", "blockquote"}
    children = _children(source, depth + nests)
    if nests and depth >= DEEPEST:
        return [inner for child in children for inner in (child["children"] if child["kind"] == "item" else [child])]
    node: Node = {"kind": _SAME[source.type], "children": children}
    if source.type == "link":
        node["address"] = str(source.attrs["href"])
    if source.type == "ordered_list":
        node["start"] = int(source.attrs.get("start", 1))
    return [node]
