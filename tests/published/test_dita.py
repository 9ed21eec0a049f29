"""The DITA task against the standard.

The order of the elements: OASIS DITA 1.3, part 3 (all-inclusive), strict task body, step, hazard statement. The whole
file: the document type definition of the strict task that Debian packages with its DITA toolkit, where it is at hand
(``apt-get install dita-ot``, or DITA_DTD set to its folder ``dtd``). It is that of version 1.2: 1.3 adds elements, and
takes none away that the export uses.
"""

import os
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

import pytest

from procbuilder.model.edition import Edition
from procbuilder.publish.dita import HEAD, dita
from tests.publish.sample import sample_edition
from tests.publish.sheet import with_step
from tests.published import validxml

DTD = Path(os.environ.get("DITA_DTD", "/usr/share/dita-ot/dtd")) / "technicalContent" / "dtd" / "task.dtd"
needs_dtd = pytest.mark.skipif(
    not DTD.is_file() or bool(validxml.missing()), reason="the document type definition of DITA is not at hand"
)

BODY = ["prereq", "context", "steps", "result", "example", "postreq"]
BEFORE_CMD = {"note", "hazardstatement"}


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return sample_edition(tmp_path_factory.mktemp("media"))


@pytest.fixture(scope="module")
def task(edition: Edition) -> Element:
    return ElementTree.fromstring(dita(edition))


def _tags(parent: Element | None) -> list[str]:
    assert parent is not None
    return [child.tag for child in parent]


def _words(element: Element) -> str:
    return " ".join("".join(element.itertext()).split())


def test_task_and_body_have_their_parts_in_the_order_of_the_standard(task: Element) -> None:
    assert _tags(task) == ["title", "shortdesc", "prolog", "taskbody"]
    body = _tags(task.find("taskbody"))
    assert body == sorted(body, key=BODY.index) == ["prereq", "context", "steps", "postreq"]


def test_each_step_has_dangers_first_then_one_command(task: Element, edition: Edition) -> None:
    steps = task.findall("taskbody/steps/step")
    assert [step.findtext("cmd") for step in steps][2] == "Prise off the dust cap"
    for step, told in zip(steps, edition.steps, strict=True):
        tags = _tags(step)
        assert tags.count("cmd") == 1
        at = tags.index("cmd")
        assert set(tags[:at]) <= BEFORE_CMD
        assert [tag for tag in tags[at + 1 :] if tag not in ("info", "stepresult")] == []
        assert tags.count("hazardstatement") == len(told.hazards) + len(told.standing.hazards)


def test_a_hazard_statement_has_type_hazard_consequence_avoidance_and_symbols(task: Element) -> None:
    statement = task.findall("taskbody/steps/step")[1].findall("hazardstatement")[1]
    assert statement.get("type") == "danger"
    assert _tags(statement) == ["messagepanel", "hazardsymbol", "hazardsymbol"]
    panel = statement.find("messagepanel")
    assert _tags(panel) == ["typeofhazard", "consequence", "howtoavoid"]
    assert _words(statement).startswith("the trailer can drop off the stands (while trailer raised) crushed, will kill")
    assert [symbol.get("href") for symbol in statement.findall("hazardsymbol")] == ["signs/W019.svg", "signs/P024.svg"]


def test_every_step_command_and_torque_is_told(task: Element, edition: Edition) -> None:
    told = _words(task)
    assert [step.command for step in edition.steps if step.command not in told] == []
    assert (
        "Torque: keeper bolts – 15 N·m then 30 N·m (11 lbf·ft then 22 lbf·ft) – cross · dry threads (from D1 p. 4)"
        in told
    )
    assert "Torque: hub nut – No value given. D1, section 3 – weight on wheels · stage 1" in told


def test_none_is_said_and_what_nobody_said_too(task: Element) -> None:
    prereq = _words(task.find("taskbody/prereq") or Element("none"))
    assert "Not included None." in prereq
    assert "Supplies bearing grease – 60 g" in prereq


def test_the_method_of_a_reserved_step_is_not_told(task: Element) -> None:
    assert "secret" not in _words(task).casefold()
    assert "Stop: done by a licensed gas fitter" in _words(task)


def test_nothing_typed_can_act_as_markup(edition: Edition) -> None:
    odd = with_step(replace(edition, title="a < b & <task>\x0c"), 6, prose=("[x](javascript:alert(1)) <b>\x07",))
    root = ElementTree.fromstring(dita(odd))
    assert root.findtext("title") == "a < b & <task>□"
    assert [link.get("href") for link in root.iter("xref") if "javascript" in (link.get("href") or "")] == []
    assert "<b>□" in "".join(root.itertext())


def test_same_edition_gives_the_same_bytes(edition: Edition) -> None:
    assert dita(edition) == dita(edition)


def _faults(text: str, folder: Path) -> list[str]:
    """What the definition has against the file."""
    file = folder / "procedure.dita"
    file.write_text(text.replace(HEAD, f'<!DOCTYPE task SYSTEM "{DTD.as_uri()}">'), encoding="utf-8")
    return validxml.faults(file)


@needs_dtd
@pytest.mark.parametrize("filled", [True, False], ids=["sample", "almost empty"])
def test_the_file_is_valid_by_the_document_type_definition(edition: Edition, tmp_path: Path, *, filled: bool) -> None:
    bare = replace(edition, item="", author="", intro=(), hazards=(), lists=(), tools=(), sections=(), closing=())
    assert _faults(dita(edition if filled else bare).decode(), tmp_path) == []


@needs_dtd
@pytest.mark.parametrize(
    ("old", "new", "element"),
    [
        ("<cmd>Prise off", "<cmd>Take</cmd><cmd>Prise off", "step"),
        ("<messagepanel>", "<messagepanel><howtoavoid>x</howtoavoid>", "messagepanel"),
    ],
)
def test_the_document_type_definition_notices_what_is_wrong(
    edition: Edition, tmp_path: Path, old: str, new: str, element: str
) -> None:
    text = dita(edition).decode()
    assert old in text
    [fault] = _faults(text.replace(old, new, 1), tmp_path)
    assert fault.startswith(f'The content of element type "{element}" must match')
