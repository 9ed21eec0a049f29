"""The edition as a DITA 1.3 task topic, with hazard statements and the elements in the order of the strict task.

OASIS, Darwin Information Typing Architecture 1.3, part 3: the task body holds prerequisites, context, steps and what
comes after them, in this order; within a step, notes and hazard statements come first, then exactly one command.
"""

import re
from collections.abc import Iterable, Iterator
from typing import Any
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from procbuilder.model.edition import Edition
from procbuilder.publish import words as in_english
from procbuilder.publish.language import Words, words_in
from procbuilder.publish.nodes import Node, prose_nodes
from procbuilder.publish.printable import SIGN
from procbuilder.publish.speaker import spoken
from procbuilder.publish.spoken import Spoken, SpokenSection, SpokenStep
from procbuilder.publish.terms import Source
from procbuilder.publish.told import Told, ToldFigure, ToldHazard, ToldItem, ToldTorque

HEAD = """<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE task PUBLIC "-//OASIS//DTD DITA 1.3 Task//EN" "task.dtd">
"""

_NO_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_ADDRESS = re.compile(r"(?:https?|mailto):")
_TAGS = {
    "par": "p", "bold-par": "p", "strong": "b", "em": "i", "code": "codeph", "pre": "codeblock", "list": "ul",
    "numbers": "ol", "item": "li", "quote": "lq",
}  # fmt: skip


def dita(edition: Edition) -> bytes:
    """``procedure.dita``: the same bytes for the same edition."""
    told = spoken(edition)
    language, words = told.language, words_in(in_english, told.language)
    task = Element("task", {"id": "procedure", "xml:lang": language.tag})
    _add(task, "title", edition.title or edition.number or words.UNTITLED)
    if edition.item:
        _add(task, "shortdesc", edition.item)
    _prolog(task, edition)
    body = SubElement(task, "taskbody")
    _prerequisites(body, told, words)
    _context(body, told, words)
    if told.steps:
        steps = SubElement(body, "steps")
        for section in told.sections:
            _section(steps, section, words)
    _afterwards(body, told, words)
    indent(task)
    return (HEAD + tostring(task, encoding="unicode") + "\n").encode()


def _add(parent: Element, tag: str, text: str = "", **attributes: str) -> Element:
    """A child with text; what XML cannot hold is shown as a sign."""
    child = SubElement(parent, tag, {name.rstrip("_"): _NO_XML.sub(SIGN, value) for name, value in attributes.items()})
    child.text = _NO_XML.sub(SIGN, text) or None
    return child


def _prolog(task: Element, edition: Edition) -> None:
    prolog = SubElement(task, "prolog")
    if edition.author:
        _add(prolog, "author", edition.author)
    metadata = SubElement(prolog, "metadata")
    told = (("number", edition.number), ("revision", edition.revision), ("status", edition.status))
    for name, content in told:
        if content:
            _add(metadata, "othermeta", name=name, content=content)


def _prerequisites(body: Element, edition: Spoken, words: Words) -> None:
    """Dangers first, then every list: an explicit none is not the same as an empty one."""
    prereq = SubElement(body, "prereq")
    for hazard in edition.hazards:
        _hazard(prereq, hazard, words)
    for each in edition.lists:
        _list(
            prereq,
            each.title,
            [_line(line) for line in each.lines],
            words.NONE if each.none else words.NOT_STATED,
        )
    titles = (words.TOOLS_ALONE, words.SUPPLIES, words.PARTS)
    for title, items in zip(titles, (edition.tools, edition.supplies, edition.parts), strict=True):
        _list(prereq, title, [_item(item, words) for item in items], words.NONE_LISTED)


def _context(body: Element, edition: Spoken, words: Words) -> None:
    context = SubElement(body, "context")
    for text in (words.PRIORITY, words.QUALIFIED):
        _add(context, "note", text, type="important")
    told = ((words.APPLIES_TO, edition.applies_to), (words.NOT_FOR, edition.not_for), (words.ASK, edition.ask))
    for label, text in told:
        if text:
            _add(context, "p", f"{label}: {text}")
    _prose(context, edition.intro)
    for sentence in edition.sentences:
        _add(context, "p", sentence)


def _section(steps: Element, section: SpokenSection, words: Words) -> None:
    """Its title stands between the steps; steps have no sections of their own."""
    if not section.steps:
        return
    head = _add(steps, "stepsection", section.title)
    _prose(head, section.prose)
    for note in section.notes:
        _add(head, "p", _named(note))
    for step in section.steps:
        _step(steps, step, words)


def _step(steps: Element, step: SpokenStep, words: Words) -> None:
    made = SubElement(steps, "step", {"id": f"step-{step.id}"} | ({"importance": "optional"} if step.only_if else {}))
    for hazard in (*step.standing.hazards, *step.hazards):
        _hazard(made, hazard, words)
    if step.standing.protections:
        _add(made, "note", f"{words.LEAVE_IN_PLACE}: {'; '.join(step.standing.protections)}", type="danger")
    if step.no_phone:
        _add(made, "note", f"{words.CARD_USE} ({step.no_phone})", type="restriction")
    if step.withheld:
        _add(made, "note", step.withheld, type="restriction")
    for hold in step.holds:
        _add(made, "note", words.HOLD_POINT.format(text=_named(hold, label=False)), type="restriction")
    _add(made, "cmd", step.command if not step.only_if else f"{words.ONLY_IF} {step.only_if}: {step.command}")
    if step.reserved:
        _add(SubElement(made, "info"), "p", f"{words.STOP_DONE_BY} {step.reserved}")
    else:
        _method(made, step, words)
    if step.checks:
        result = SubElement(made, "stepresult")
        for check in step.checks:
            _add(result, "p", _named(check))


def _method(made: Element, step: SpokenStep, words: Words) -> None:
    info = Element("info")
    _prose(info, step.prose)
    kinds = ((words.WEAR, step.wear), (words.TOOL, step.tools), (words.PART, step.parts), (words.SUPPLY, step.supplies))
    told = [f"{label}: {_line(line)}" for label, lines in kinds for line in lines]
    told += [f"{words.TORQUE}: {_torque(row, words)}" for row in step.torques]
    told += [f"{words.KEY_POINT}: {_line(line)}" for line in step.key_points]
    told += [_named(entry) for entry in (*step.moves, *step.notes)]
    if told:
        _points(info, told)
    for figure in step.figures:
        _figure(info, figure)
    if step.as_found:
        _add(info, "p", f"{words.AS_FOUND} ({words.STEP} {step.as_found_step})")
        _figure(info, step.as_found)
    if len(info):
        made.append(info)


def _afterwards(body: Element, edition: Spoken, words: Words) -> None:
    postreq = SubElement(body, "postreq")
    _add(postreq, "p", words.COUNT_TOOLS)
    if edition.closing:
        _list(postreq, words.FINDINGS, [_named(entry) for entry in edition.closing], "")


def _hazard(parent: Element, hazard: ToldHazard, words: Words) -> None:
    """In the standard's order: what, consequences, how to avoid it, symbols."""
    statement = SubElement(parent, "hazardstatement", {"type": hazard.signal.value.lower()})
    panel = SubElement(statement, "messagepanel")
    what = f"{hazard.hazard} ({words.WHILE} {hazard.state})" if hazard.state else hazard.hazard
    _add(panel, "typeofhazard", what or words.NOT_STATED)
    if hazard.consequence:
        _add(panel, "consequence", hazard.consequence)
    _add(panel, "howtoavoid", hazard.avoid or words.NOT_STATED)
    for sign in hazard.signs:
        _add(
            SubElement(statement, "hazardsymbol", {"href": f"signs/{sign.number}.svg"}),
            "alt",
            str(sign),
        )


def _figure(parent: Element, figure: ToldFigure) -> None:
    made = SubElement(parent, "fig")
    if figure.caption:
        _add(made, "title", figure.caption)
    image = _add(made, "image", href=f"media/{figure.shown.file}", placement="break")
    _add(image, "alt", figure.alt or figure.caption)
    if figure.labels:
        _points(made, list(figure.labels))


def _list(parent: Element, title: str, lines: list[str], empty: str) -> None:
    _add(_add(parent, "p"), "b", title)
    if lines:
        _points(parent, lines)
    else:
        _add(parent, "p", empty)


def _points(parent: Element, lines: Iterable[str]) -> None:
    points = SubElement(parent, "ul")
    for line in lines:
        _add(points, "li", line)


def _line(line: Told) -> str:
    return _from(line.joined(), line.source)


def _item(item: ToldItem, words: Words) -> str:
    name = f"{item.name}, {words.NEW}" if item.new else item.name
    return _from(" – ".join(filter(None, (name, item.quantity))), item.source)


def _named(entry: Told, label: bool = True) -> str:
    return _from(f"{entry.label}: {entry.joined()}" if label else entry.joined(), entry.source)


def _torque(row: ToldTorque, words: Words) -> str:
    value = row.both or f"{words.NO_VALUE}. {row.look_in or words.LOOK_UP}"
    terms = " · ".join(filter(None, (row.order, row.when, row.stage)))
    return _from(" – ".join(filter(None, (row.item, value, terms))), row.source)


def _from(text: str, source: Source) -> str:
    return f"{text} ({source.words})" if source.words else text


def _prose(parent: Element, paragraphs: Iterable[str]) -> None:
    for node in prose_nodes(paragraphs):
        _node(parent, node)


def _node(parent: Element, node: Node) -> None:
    kind = node["kind"]
    if kind == "text" or kind == "break":
        _text(parent, node.get("text", " "))
    elif kind == "link":
        outside = _ADDRESS.match(node["address"])
        target = _add(parent, "xref", href=node["address"], scope="external", format="html") if outside else parent
        _nodes(target, node)
    elif kind == "bold-par":
        _nodes(_add(_add(parent, "p"), "b"), node)
    else:
        _nodes(_add(parent, _TAGS[kind], node.get("text", "")), node)


def _nodes(parent: Element, node: Node) -> None:
    for child in _children(node):
        _node(parent, child)


def _children(node: Node) -> Iterator[dict[str, Any]]:
    yield from node.get("children", ())


def _text(parent: Element, text: str) -> None:
    """Text behind whatever the parent has so far."""
    clean = _NO_XML.sub(SIGN, text)
    if len(parent):
        parent[-1].tail = (parent[-1].tail or "") + clean
    else:
        parent.text = (parent.text or "") + clean
