"""The drawings of the safety signs that an edition shows."""

import shutil
from collections.abc import Iterable
from pathlib import Path
from xml.etree import ElementTree

from procbuilder.model.edition import Edition

_SVG = "http://www.w3.org/2000/svg"


def used(edition: Edition) -> tuple[str, ...]:
    """The number of every sign that the edition shows, once, in order."""
    lines = [
        *(line for each in edition.lists for line in each.lines),
        *(w for step in edition.steps for w in step.wear),
    ]
    return tuple(sorted({*of_dangers(edition), *(sign.number for line in lines for sign in line.signs)}))


def of_dangers(edition: Edition) -> tuple[str, ...]:
    """The numbers of the signs of its dangers alone."""
    steps = edition.steps
    dangers = [*edition.hazards, *(danger for step in steps for danger in (*step.hazards, *step.standing.hazards))]
    return tuple(sorted({sign.number for danger in dangers for sign in danger.signs}))


def drawing(number: str, templates: Path) -> Path:
    """The file of a sign's drawing."""
    return templates / "signs" / f"{number}.svg"


def place(number: str, templates: Path, folder: Path) -> None:
    """Copy the drawing of a sign to a folder."""
    folder.mkdir(exist_ok=True)
    shutil.copy(drawing(number, templates), folder)


def drawings(numbers: Iterable[str], templates: Path) -> str:
    """One SVG that is not seen, with a symbol for each sign: the page draws them by ``#_sign-W019``."""
    symbols = "".join(_symbol(number, drawing(number, templates)) for number in numbers)
    return f'<svg xmlns="{_SVG}" width="0" height="0" aria-hidden="true" class="drawings">{symbols}</svg>'


def _symbol(number: str, path: Path) -> str:
    root = ElementTree.fromstring(path.read_text(encoding="utf-8"))
    ElementTree.register_namespace("", _SVG)
    shapes = (element for element in root if not element.tag.endswith("title"))
    inner = "".join(ElementTree.tostring(shape, encoding="unicode").strip() for shape in shapes)
    inner = inner.replace(f' xmlns="{_SVG}"', "")
    return f'<symbol id="_sign-{number}" viewBox="{root.get("viewBox")}">{inner}</symbol>'
