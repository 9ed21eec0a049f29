"""Publishing an edition: media first, the manifest last, what is no longer used at the end."""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from filecmp import cmp
from pathlib import Path

from procbuilder.keep.cache import Cache, key_of, stamp
from procbuilder.keep.files import copy_whole, remove, remove_others, replace_together
from procbuilder.model.edition import Edition
from procbuilder.model.problem import Problem
from procbuilder.pipeline.outputs import OUTPUTS, Given, Output
from procbuilder.pipeline.program import program
from procbuilder.pipeline.shipped import shipped

_PUBLISHED = "published"
"""Kind of cached result: what was written last, by the name of its folder."""


@dataclass(frozen=True, slots=True)
class Published:
    """What came of publishing."""

    unprintable: tuple[str, ...]
    """Characters that the PDFs show as an empty box."""
    problems: tuple[Problem, ...] = ()
    """Why an output could not be made; the one from before is taken away, since it would say something else."""


def publish(edition: Edition, out: Path, epoch: int, cache: Cache, also: Collection[str] = ()) -> Published:
    """Have all outputs below ``out``, and those on request whose names are given.

    Nothing is written when the same program has written the same edition whole and no file has been touched since.

    Raises:
        CannotWrite: then the page, PDF and data from before are still there.
    """
    wanted = [each for each in OUTPUTS if not each.on_request or each.name in also or (out / each.name).is_file()]
    key = key_of(program(), epoch, [each.name for each in wanted], edition)
    last = cache.get(_PUBLISHED, out.name)
    if last and last["key"] == key and last["stamps"] == _stamps(out, last["stamps"]):
        return Published(tuple(last["unprintable"]))
    files, published = _write(wanted, edition, out, epoch, cache)
    if not published.problems:
        made = {"key": key, "stamps": _stamps(out, files), "unprintable": published.unprintable}
        cache.put(_PUBLISHED, out.name, made)
    return published


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
    outputs: Iterable[Output], edition: Edition, out: Path, epoch: int, cache: Cache
) -> tuple[list[str], Published]:
    """Write all outputs; their names, and what came of it.

    Media carry a hash of their content in their name, so adding them harms nothing that is there.
    """
    from procbuilder.publish.manifest import manifest

    media = sorted(set(_media(edition)))
    for name in media:
        place = out / "media" / name
        if not place.is_file() or not cmp(cache.file(name), place, shallow=False):
            copy_whole(cache.file(name), place)
    given = Given(edition, out / "media", epoch, shipped("templates"))
    made = {each.name: each.make(given) for each in outputs}
    texts = {name: data for each in made.values() for name, data in each.content.items()}
    published: dict[str, bytes | Path] = {**texts, **{f"media/{name}": out / "media" / name for name in media}}
    texts["manifest.json"] = manifest(published, edition=edition)
    replace_together(out, {name: data for name, data in texts.items() if not _same(out / name, data)})
    for name in (name for name, each in made.items() if each.problems):
        remove(out / name)
    for folder in ("media", *filter(None, (each.folder for each in OUTPUTS))):
        remove_others(out / folder, {Path(name).name for name in published if Path(name).parent == Path(folder)})
    signs = {sign for each in made.values() for sign in each.unprintable}
    problems = tuple(problem for each in made.values() for problem in each.problems)
    return [*published, "manifest.json"], Published(tuple(sorted(signs)), problems)


def _same(path: Path, data: bytes) -> bool:
    return path.is_file() and path.stat().st_size == len(data) and path.read_bytes() == data
