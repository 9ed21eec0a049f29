"""The edition as a printed sheet: one tagged PDF that conforms to PDF/UA-1 and PDF/A-2a.

The templates get all text as data, never as source, so nothing that was typed can act as a command.
"""

import json
import shutil
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import asdict, dataclass, fields
from importlib.resources import as_file, files
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from procbuilder.model.edition import Edition, Figure
from procbuilder.model.signal import Signal
from procbuilder.publish import printwords, tokens, words
from procbuilder.publish.data import plain
from procbuilder.publish.language import Language, Words, language_of, words_in
from procbuilder.publish.nodes import prose_nodes
from procbuilder.publish.printable import not_printable, refused, replaced
from procbuilder.publish.quotation import quotation
from procbuilder.publish.sheets.every import sheets
from procbuilder.publish.signs import place, used
from procbuilder.publish.speaker import spoken
from procbuilder.publish.told import ToldFigure

PAPERS = {"a4": "a4", "letter": "us-letter"}
"""Names of the papers for the page setter."""

_FACES = ("Regular", "It", "Semibold", "SemiboldIt", "Bold", "BoldIt")
_BEGINNINGS = (b"\xff\xd8\xff", b"\x89PNG\r\n", b"RIFF", b"GIF8")
_PROBE = b"""#set document(title: "probe")
#set text(font: "Source Sans Pro")
#for text in json("data.json") { par(text) }
"""


class CannotPrint(Exception):
    """A PDF could not be set: a picture is ``outside``, ``missing`` or ``unknown``, or ``told`` by the page setter."""

    def __init__(self, form: str, what: str) -> None:
        super().__init__(form, what)
        self.form = form
        """Which of its sentences."""
        self.what = what
        """The picture, or what the page setter says."""


@dataclass(frozen=True, slots=True)
class Printed:
    """The printed procedure."""

    data: bytes
    """The PDF file."""
    unprintable: tuple[str, ...]
    """Characters that it shows as ``□``, because its fonts lack them, in order."""


def pdf(edition: Edition, *, templates: Path, media: Path, epoch: int) -> Printed:
    """Set the procedure.

    Args:
        edition: what to print.
        templates: folder of templates, which has ``pdf/procedure.typ``.
        media: folder of the pictures that the edition names.
        epoch: seconds since 1970 that the file carries as its date.

    Raises:
        CannotPrint: when a picture is missing or unreadable, or the sheet cannot be set.
    """
    with _bench(templates) as bench:
        _bring(bench, templates, media, _figures(edition), used(edition))
        draw_codes(edition, bench / "codes")
        return _print(bench, "procedure.typ", _view(edition), epoch)


def sheets_pdf(edition: Edition, *, templates: Path, media: Path, epoch: int) -> Printed:
    """Set all sheets of the procedure as one file; arguments and errors as for ``pdf``."""
    made = sheets(edition)
    language = language_of(edition.language)
    said = words_in(words, language)
    view = _frame(edition, language) | {
        "title": f"{said.SHEETS_TITLE}: {_title(edition, words_in(printwords, language))}",
        "use": said.SHEETS_USE,
        "edition": {"number": edition.number, "revision": edition.revision, "status": edition.status},
        "sheets": [plain(sheet) for sheet in made],
    }
    with _bench(templates) as bench:
        figures = [figure for sheet in made for figure in sheet.figures]
        _bring(bench, templates, media, figures, [sign.number for sheet in made for sign in sheet.signs])
        return _print(bench, "sheets.typ", view, epoch)


@contextmanager
def _bench(templates: Path) -> Iterator[Path]:
    """A folder with templates and fonts, out of which nothing can be read."""
    with TemporaryDirectory() as name:
        bench = Path(name)
        _fonts(bench / "fonts")
        for template in sorted((templates / "pdf").glob("*.typ")):
            shutil.copy(template, bench)
        shutil.copy(templates / tokens.FILE, bench)
        yield bench


def _bring(
    bench: Path, templates: Path, media: Path, figures: Iterable[Figure | ToldFigure], signs: Iterable[str]
) -> None:
    for file in {(figure.marked or figure.still).file: None for figure in figures}:
        _picture(file, media, bench / "media")
    for sign in signs:
        place(sign, templates, bench / "signs")


def draw_codes(edition: Edition, folder: Path) -> None:
    """A QR code for each step that a phone can find."""
    import segno

    folder.mkdir()
    for step in edition.steps:
        if address := edition.address_of(step):
            segno.make_qr(address, error="m").save(str(folder / f"{step.number}.svg"), border=4, light="#fff")


def _print(bench: Path, template: str, view: dict[str, Any], epoch: int) -> Printed:
    """Set a template; a character that only one of the faces lacks shows when all is set."""
    from typst import TypstError

    source, lacking = (bench / template).read_bytes(), _unprintable(view, bench)
    while True:
        odd = tuple(sorted(lacking))
        shown = replaced(view, lacking) | {"unprintable": ", ".join(f"U+{ord(letter):04X}" for letter in odd)}
        try:
            return Printed(_compile(bench, source, shown, epoch), odd)
        except TypstError as error:
            if not (more := refused(error.diagnostic) - lacking):
                raise CannotPrint("told", error.message) from error
            lacking |= more


def _frame(edition: Edition, language: Language) -> dict[str, Any]:
    """What every page prints."""
    said = words_in(printwords, language)
    tongue, _, region = language.tag.partition("-")
    return {
        "status": said.STATUS_WORDS.get(edition.status, edition.status.capitalize()),
        "lang": tongue,
        "region": region or None,
        "paper": PAPERS[edition.paper],
        "words": {name.lower(): value for name, value in vars(said).items() if name.isupper()},
        "signals": {signal.value: language.text(signal) for signal in Signal},
    }


def _title(edition: Edition, said: Words) -> str:
    unnamed = said.NUMBERED.format(number=edition.number) if edition.number else said.UNTITLED
    return edition.title.strip() or str(unnamed)


def _view(edition: Edition) -> dict[str, Any]:
    """All that the procedure prints."""
    told = spoken(edition)
    data = {part.name: plain(getattr(told, part.name)) for part in fields(told) if part.name != "language"}
    data["intro"] = prose_nodes(edition.intro)
    for section in data["sections"]:
        for record in (section, *section["steps"]):
            record["prose"] = prose_nodes(record["prose"])
    return _frame(edition, told.language) | {
        "edition": data,
        "quotation": asdict(quotation(edition)),
        "title": _title(edition, words_in(printwords, told.language)),
    }


def _figures(edition: Edition) -> list[Figure]:
    """Pictures that are printed: a reserved step shows none."""
    steps = [step for step in edition.steps if not step.reserved]
    of_steps = [figure for step in steps for figure in (*step.figures, step.as_found)]
    return [figure for figure in (*of_steps, *(f for pair in edition.pairs for f in (pair.found, pair.done))) if figure]


def _picture(file: str, media: Path, bench: Path) -> None:
    source = (media / file).resolve()
    if not source.is_relative_to(media.resolve()):
        raise CannotPrint("outside", file)
    if not source.is_file():
        raise CannotPrint("missing", file)
    with source.open("rb") as stream:
        if not stream.read(8).startswith(_BEGINNINGS):
            raise CannotPrint("unknown", file)
    target = bench / file
    target.parent.mkdir(parents=True, exist_ok=True)
    shutil.copy(source, target)


def _fonts(folder: Path) -> None:
    """One file a face: with two of the same name, the order of the disk would choose."""
    folder.mkdir()
    with as_file(files("font_source_sans_pro") / "files") as source:
        for face in _FACES:
            shutil.copy(source / f"SourceSansPro-{face}.otf", folder)


def _unprintable(view: dict[str, Any], bench: Path) -> frozenset[str]:
    def refusal(texts: list[str]) -> str:
        from typst import TypstError

        try:
            _compile(bench, _PROBE, texts, 0)
        except TypstError as error:
            return error.diagnostic
        return ""

    return not_printable(view, refusal)


def _compile(bench: Path, source: bytes, data: Any, epoch: int) -> bytes:
    import typst

    (bench / "data.json").write_text(json.dumps(data, ensure_ascii=True), encoding="utf-8")
    main = bench / "main.typ"
    main.write_bytes(source)
    sheet, _ = typst.compile_with_warnings(
        str(main),
        root=str(bench),
        font_paths=[str(bench / "fonts")],
        ignore_system_fonts=True,
        pdf_standards=["ua-1", "a-2a"],
        timestamp=epoch,
    )
    return sheet
