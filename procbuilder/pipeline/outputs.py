"""Everything that a build publishes beside pictures, clips and film: one function an output."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from procbuilder.model.edition import Edition
from procbuilder.model.facts import facts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.read.procedure import FILE_NAME

if TYPE_CHECKING:
    from procbuilder.publish.pdf import Printed

TASK = "procedure.dita"


@dataclass(frozen=True, slots=True)
class Given:
    """What outputs are made of."""

    edition: Edition
    media: Path
    """The folder with the published pictures, clips and film."""
    epoch: int
    """Seconds since 1970 that is shown where there must be a date."""
    templates: Path


@dataclass(frozen=True, slots=True)
class Files:
    """The files of an output."""

    content: Mapping[str, bytes]
    """By path below the output folder."""
    unprintable: tuple[str, ...] = ()
    """Characters that it shows as an empty box."""
    problems: tuple[Problem, ...] = ()
    """Why it could not be made; then it has no files."""


@dataclass(frozen=True, slots=True)
class Output:
    """Something that is published."""

    name: str
    """Its file; of one with many files, their folder."""
    make: Callable[[Given], Files]
    folder: str = ""
    """A folder with files of this output alone: what else lies there is taken away."""
    on_request: bool = False
    """It is made when somebody asks for it, and renewed when it is there, so that none grows old."""


def _print(given: Given) -> Files:
    from procbuilder.publish.pdf import pdf

    return printed("procedure.pdf", pdf, given)


def _printed_sheets(given: Given) -> Files:
    from procbuilder.publish.pdf import sheets_pdf

    return printed("sheets.pdf", sheets_pdf, given)


def printed(name: str, setter: "Callable[..., Printed]", given: Given) -> Files:
    """A PDF; that it cannot be set is a problem, and keeps nobody from the page."""
    from procbuilder.publish.pdf import CannotPrint

    try:
        sheet = setter(given.edition, templates=given.templates, media=given.media, epoch=given.epoch)
    except CannotPrint as error:
        told, place = facts(file=name, what=error.what), Place(FILE_NAME, 1)
        return Files({}, problems=(Problem("not-printed", Severity.STOP, place, told, error.form, 4),))
    return Files({name: sheet.data}, sheet.unprintable)


def _captions(given: Given) -> Files:
    """Of each clip that has some, and of the film; no step can be called as the film is."""
    from procbuilder.publish.captions import webvtt

    film = given.edition.film
    said = {step.id: step.captions for step in given.edition.steps} | {"_film": film.captions if film else ()}
    return Files({f"captions/{name}.vtt": webvtt(cues).encode() for name, cues in said.items() if cues})


def _data(given: Given) -> Files:
    from procbuilder.publish.data import edition_json

    return Files({"edition.json": edition_json(given.edition)})


def _phone(given: Given) -> Files:
    from procbuilder.publish.html import phone

    return Files({"phone.html": phone(given.edition, templates=given.templates, media=given.media)})


def _quotation(given: Given) -> Files:
    from procbuilder.publish.html import quotation_page

    return Files({"quotation.html": quotation_page(given.edition, templates=given.templates).encode()})


def _sheets(given: Given) -> Files:
    from procbuilder.publish.html import sheets_page

    return Files({"sheets.html": sheets_page(given.edition, templates=given.templates).encode()})


def _page(given: Given) -> Files:
    from procbuilder.publish.html import page

    return Files({"index.html": page(given.edition, templates=given.templates).encode()})


def _task(given: Given) -> Files:
    """The DITA task, and the drawings of the signs that it names."""
    from procbuilder.publish.dita import dita
    from procbuilder.publish.signs import drawing, of_dangers

    drawn = {number: drawing(number, given.templates).read_bytes() for number in of_dangers(given.edition)}
    return Files({TASK: dita(given.edition), **{f"signs/{number}.svg": data for number, data in drawn.items()}})


OUTPUTS = (
    Output("procedure.pdf", _print),
    Output("sheets.pdf", _printed_sheets),
    Output("captions", _captions, folder="captions"),
    Output("edition.json", _data),
    Output("phone.html", _phone),
    Output("quotation.html", _quotation),
    Output("sheets.html", _sheets),
    Output("index.html", _page),
    Output(TASK, _task, folder="signs", on_request=True),
)
"""In the order in which they are moved to their places: the page comes after what it links."""
