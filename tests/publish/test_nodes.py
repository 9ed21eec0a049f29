"""Prose as nodes."""

from typing import Any

import pytest

from procbuilder.publish.nodes import DEEPEST, prose_nodes


def _text(words: str) -> dict[str, Any]:
    return {"kind": "text", "text": words}


def _par(*children: dict[str, Any]) -> dict[str, Any]:
    return {"kind": "par", "children": list(children)}


@pytest.mark.parametrize(
    ("prose", "nodes"),
    [
        ("plain", [_par(_text("plain"))]),
        ("one\ntwo", [_par(_text("one"), _text(" "), _text("two"))]),
        ("one\\\ntwo", [_par(_text("one"), {"kind": "break"}, _text("two"))]),
        ("**now**", [_par({"kind": "strong", "children": [_text("now")]})]),
        ("*now*", [_par({"kind": "em", "children": [_text("now")]})]),
        ("`M8`", [_par({"kind": "code", "text": "M8"})]),
        ("# Big", [{"kind": "bold-par", "children": [_text("Big")]}]),
        ("```\n#eval\n```", [{"kind": "pre", "text": "#eval\n"}]),
        ("- a", [{"kind": "list", "children": [{"kind": "item", "children": [_par(_text("a"))]}]}]),
        ("3. a", [{"kind": "numbers", "children": [{"kind": "item", "children": [_par(_text("a"))]}], "start": 3}]),
        ("> a", [{"kind": "quote", "children": [_par(_text("a"))]}]),
        ("[a](b.md)", [_par({"kind": "link", "children": [_text("a")], "address": "b.md"})]),
        ("a\n\n---\n\nb", [_par(_text("a")), _par(_text("b"))]),
        ("![the hub](../../secret.png)", [_par(_text("the hub"))]),
        ("<script>x</script>", [_par(_text("<script>x</script>"))]),
        ("[a](javascript:x)", [_par(_text("[a](javascript:x)"))]),
        ('#import "x" and $a$', [_par(_text('#import "x" and $a$'))]),
    ],
)
def test_each_form_of_prose_becomes_its_node(prose: str, nodes: list[dict[str, Any]]) -> None:
    assert prose_nodes((prose,)) == nodes


def test_several_pieces_follow_each_other() -> None:
    assert prose_nodes(("a", "b")) == [_par(_text("a")), _par(_text("b"))]


def _depth(nodes: list[dict[str, Any]]) -> int:
    return max((_depth(node.get("children", [])) + (node["kind"] == "quote") for node in nodes), default=0)


def test_quotes_within_quotes_end_at_a_depth_that_can_be_printed_and_keep_their_words() -> None:
    nodes = prose_nodes(("> " * 15 + "deep",))
    assert _depth(nodes) == DEEPEST
    assert "deep" in str(nodes)


def test_items_that_lie_too_deep_stay_paragraphs_of_their_own() -> None:
    [node] = prose_nodes(("\n".join("  " * level + f"- level {level}" for level in range(9)),))
    for _ in range(DEEPEST - 1):
        [_own, node] = node["children"][0]["children"]
    assert node["children"][0]["children"] == [_par(_text(f"level {level}")) for level in (5, 6, 7, 8)]
