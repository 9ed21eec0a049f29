"""CommonMark into the blocks that a procedure is made of: headings, list items, other text."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from markdown_it import MarkdownIt
from markdown_it.tree import SyntaxTreeNode


@dataclass(frozen=True, slots=True)
class HeadingBlock:
    """A heading outside lists and quotations."""

    level: int
    text: str
    line: int
    underlined: bool
    """It is written with a line of ``=`` or ``-`` below instead of ``#`` in front."""


@dataclass(frozen=True, slots=True)
class ItemBlock:
    """An item of a list with bullets, with the items below it."""

    text: str
    """Its first paragraph on one line, as typed."""
    line: int
    source: str
    """All its lines as typed."""
    head: str
    """The lines of its first paragraph as typed, with the bullet."""
    children: tuple["ItemBlock", ...] = ()
    rest: tuple["TextBlock", ...] = ()
    """What it holds besides its first paragraph and its items."""


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Any other block, as typed."""

    source: str
    line: int


_BULLET = re.compile(r"\s*[-*+]\s+\S")

Block = HeadingBlock | ItemBlock | TextBlock


def blocks(lines: list[str]) -> Iterator[Block]:
    """The blocks of a text in order; every line that is not blank stands in one of them.

    Link definitions are not read as such: they would vanish from the text. Lines that are indented so far that they
    count as program text are read without their indent when one of them is an item: nobody means program text here.
    """
    parser = MarkdownIt("commonmark", {"html": False}).disable(["reference", "html_block", "inline"])
    for node in SyntaxTreeNode(parser.parse("\n".join(lines))).children:
        if node.type == "heading":
            content = node.children[0].content if node.children else ""
            underlined = not node.markup.startswith("#")
            yield HeadingBlock(int(node.tag[1:]), " ".join(content.split()), _line(node), underlined)
        elif node.type == "bullet_list":
            yield from (_item(item, lines) for item in node.children)
        elif node.type == "code_block" and any(map(_BULLET.match, _source(node, lines).split("\n"))):
            start, end = node.map or (0, 0)
            yield from blocks([""] * start + [line.lstrip() for line in lines[start:end]])
        else:
            yield TextBlock(_source(node, lines), _line(node))


def _item(node: SyntaxTreeNode, lines: list[str]) -> ItemBlock | TextBlock:
    first = node.children[0] if node.children else None
    if first is None or first.type != "paragraph":
        return TextBlock(_source(node, lines), _line(node))
    children: list[ItemBlock] = []
    rest: list[TextBlock] = []
    for child in node.children[1:]:
        if child.type == "bullet_list":
            below = [_item(item, lines) for item in child.children]
            children += [item for item in below if isinstance(item, ItemBlock)]
            rest += [item for item in below if isinstance(item, TextBlock)]
        else:
            rest.append(TextBlock(_source(child, lines), _line(child)))
    text = " ".join(first.children[0].content.split()) if first.children else ""
    start, end = node.map[0] if node.map else 0, first.map[1] if first.map else 0
    head = "\n".join(lines[start:end]).rstrip()
    return ItemBlock(text, _line(node), _source(node, lines), head, tuple(children), tuple(rest))


def _line(node: SyntaxTreeNode) -> int:
    return (node.map[0] if node.map else 0) + 1


def _source(node: SyntaxTreeNode, lines: list[str]) -> str:
    start, end = node.map or (0, 0)
    return "\n".join(lines[start:end]).rstrip()
