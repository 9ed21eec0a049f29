"""Writing an edition: media first, the manifest last, what is no longer used at the end."""

from collections.abc import Mapping
from pathlib import Path

from procbuilder.keep.files import copy_whole, remove_others, replace_together
from procbuilder.model.edition import Edition
from procbuilder.pipeline.shipped import shipped
from procbuilder.publish.captions import webvtt
from procbuilder.publish.data import edition_json
from procbuilder.publish.dita import dita
from procbuilder.publish.html import page, phone, quotation_page, sheets_page
from procbuilder.publish.manifest import manifest
from procbuilder.publish.pdf import pdf, sheets_pdf
from procbuilder.publish.signs import drawing, of_dangers

TASK = "procedure.dita"

FILM_CAPTIONS = "captions/_film.vtt"
"""No step can be called so."""


def publish(edition: Edition, media: Mapping[str, Path], out: Path, epoch: int, *, task: bool) -> tuple[str, ...]:
    """Write all outputs below ``out``; returns the characters that the PDF could not show.

    With ``task`` the DITA task too; one that is there already is renewed in any case, so that none grows old.

    Media carry a hash of their content in their name, so adding them harms nothing that is there.

    Raises:
        CannotPrint, CannotWrite: then the page, PDF and data from before are still there.
    """
    for name, path in sorted(media.items()):
        if not (out / "media" / name).is_file():
            copy_whole(path, out / "media" / name)
    sheet = pdf(edition, templates=shipped("templates"), media=out / "media", epoch=epoch)
    extra = sheets_pdf(edition, templates=shipped("templates"), media=out / "media", epoch=epoch)
    texts = {"procedure.pdf": sheet.data, "sheets.pdf": extra.data, **_texts(edition, out / "media")}
    if task or (out / TASK).is_file():
        texts |= _task(edition)
    published: dict[str, bytes | Path] = {**texts, **{f"media/{name}": out / "media" / name for name in media}}
    texts["manifest.json"] = manifest(published, edition=edition)
    replace_together(out, {name: data for name, data in texts.items() if not _same(out / name, data)})
    remove_others(out / "media", set(media))
    remove_others(out / "signs", {Path(name).name for name in texts if name.startswith("signs/")})
    remove_others(out / "captions", {Path(name).name for name in texts if name.startswith("captions/")})
    return tuple(sorted({*sheet.unprintable, *extra.unprintable}))


def _texts(edition: Edition, media: Path) -> dict[str, bytes]:
    """Everything but media and PDF, in the order of writing."""
    templates = shipped("templates")
    captions = {f"captions/{step.id}.vtt": webvtt(step.captions).encode() for step in edition.steps if step.captions}
    if edition.film and edition.film.captions:
        captions[FILM_CAPTIONS] = webvtt(edition.film.captions).encode()
    return {
        **captions,
        "edition.json": edition_json(edition),
        "phone.html": phone(edition, templates=templates, media=media),
        "quotation.html": quotation_page(edition, templates=templates).encode(),
        "sheets.html": sheets_page(edition, templates=templates).encode(),
        "index.html": page(edition, templates=templates).encode(),
    }


def _task(edition: Edition) -> dict[str, bytes]:
    """The DITA task, and the drawings of the signs that it names."""
    drawn = {sign.number: drawing(sign, shipped("templates")).read_bytes() for sign in of_dangers(edition)}
    return {TASK: dita(edition), **{f"signs/{number}.svg": data for number, data in drawn.items()}}


def _same(path: Path, data: bytes) -> bool:
    return path.is_file() and path.read_bytes() == data
