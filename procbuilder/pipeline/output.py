"""Writing an edition: media first, the manifest last, what is no longer used at the end."""

from collections.abc import Iterable, Iterator, Mapping
from filecmp import cmp
from pathlib import Path

from procbuilder.keep.cache import Cache, key_of, stamp
from procbuilder.keep.files import copy_whole, remove_others, replace_together
from procbuilder.model.edition import Edition
from procbuilder.pipeline.program import program
from procbuilder.pipeline.shipped import shipped

TASK = "procedure.dita"

FILM_CAPTIONS = "captions/_film.vtt"
"""No step can be called so."""


_PUBLISHED = "published"
"""Kind of cached result: what was written last, by the name of its folder."""


def publish(edition: Edition, out: Path, epoch: int, cache: Cache, *, task: bool) -> tuple[str, ...]:
    """Have all outputs below ``out``; returns the characters that the PDF could not show.

    With ``task`` the DITA task too; one that is there already is renewed in any case, so that none grows old.
    Nothing is written when the same program has written the same edition and no file has been touched since.

    Raises:
        CannotPrint, CannotWrite: then the page, PDF and data from before are still there.
    """
    task = task or (out / TASK).is_file()
    key = key_of(program(), epoch, task, edition)
    last = cache.get(_PUBLISHED, out.name)
    if last and last["key"] == key and last["stamps"] == _stamps(out, last["stamps"]):
        return tuple(last["unprintable"])
    media = {name: cache.file(name) for name in _media(edition)}
    files, unprintable = _write(edition, media, out, epoch, task=task)
    made = {"key": key, "stamps": _stamps(out, files), "unprintable": unprintable}
    cache.put(_PUBLISHED, out.name, made)
    return unprintable


def _media(edition: Edition) -> Iterator[str]:
    """Name of each picture, clip and film that an edition shows."""
    for step in edition.steps:
        for figure in filter(None, (*step.figures, step.as_found)):
            yield figure.still.file
            yield from filter(None, [figure.marked and figure.marked.file])
        yield from filter(None, [step.clip and step.clip.file])
    if edition.film:
        yield edition.film.file


def _stamps(out: Path, files: Iterable[str]) -> dict[str, list[int]]:
    """Of those files that are there."""
    return {name: stamp(out / name) for name in files if (out / name).is_file()}


def _write(
    edition: Edition, media: Mapping[str, Path], out: Path, epoch: int, *, task: bool
) -> tuple[list[str], tuple[str, ...]]:
    """Write all outputs; their names, and the characters that the PDF could not show.

    Media carry a hash of their content in their name, so adding them harms nothing that is there.
    """
    from procbuilder.publish.manifest import manifest
    from procbuilder.publish.pdf import pdf, sheets_pdf

    for name, path in sorted(media.items()):
        if not (out / "media" / name).is_file() or not cmp(path, out / "media" / name, shallow=False):
            copy_whole(path, out / "media" / name)
    sheet = pdf(edition, templates=shipped("templates"), media=out / "media", epoch=epoch)
    extra = sheets_pdf(edition, templates=shipped("templates"), media=out / "media", epoch=epoch)
    texts = {"procedure.pdf": sheet.data, "sheets.pdf": extra.data, **_texts(edition, out / "media")}
    if task:
        texts |= _task(edition)
    published: dict[str, bytes | Path] = {**texts, **{f"media/{name}": out / "media" / name for name in media}}
    texts["manifest.json"] = manifest(published, edition=edition)
    replace_together(out, {name: data for name, data in texts.items() if not _same(out / name, data)})
    remove_others(out / "media", set(media))
    remove_others(out / "signs", {Path(name).name for name in texts if name.startswith("signs/")})
    remove_others(out / "captions", {Path(name).name for name in texts if name.startswith("captions/")})
    return [*published, "manifest.json"], tuple(sorted({*sheet.unprintable, *extra.unprintable}))


def _texts(edition: Edition, media: Path) -> dict[str, bytes]:
    """Everything but media and PDF, in the order of writing."""
    from procbuilder.publish.captions import webvtt
    from procbuilder.publish.data import edition_json
    from procbuilder.publish.html import page, phone, quotation_page, sheets_page

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
    from procbuilder.publish.dita import dita
    from procbuilder.publish.signs import drawing, of_dangers

    drawn = {sign.number: drawing(sign, shipped("templates")).read_bytes() for sign in of_dangers(edition)}
    return {TASK: dita(edition), **{f"signs/{number}.svg": data for number, data in drawn.items()}}


def _same(path: Path, data: bytes) -> bool:
    return path.is_file() and path.stat().st_size == len(data) and path.read_bytes() == data
