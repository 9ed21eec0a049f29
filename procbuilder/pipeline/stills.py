"""Pictures drawn from a moment of a recording or from a picture file, made once."""

from collections.abc import Sequence
from fractions import Fraction
from functools import partial
from pathlib import Path

from procbuilder.keep.cache import key_of
from procbuilder.model.footage import TYPED_MOMENT, Choice, Still
from procbuilder.model.marks import Box, HiddenPath, Picture
from procbuilder.model.procedure import NamedFile
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.paths import find
from procbuilder.pipeline.program import made_by


def still(
    choice: Choice, picture: Picture | None, hidden: Sequence[HiddenPath], material: Material, *,
    marked: bool = False,
) -> Still | None:  # fmt: skip
    """The picture of a chosen moment; None when its recording cannot be used, or may not be shown there.

    Raises:
        Unreadable: the recording cannot be decoded there.
    """
    file = material.recordings.get(choice.recording)
    if file is None or choice.time >= file.facts.duration or material.is_withheld(choice.recording, choice.time):
        return None
    boxes = material.hidden_at(choice.recording, choice.time, hidden)
    drawn = _drawn(file.path, file.facts.sha256, choice.time, picture, boxes, material, marked=marked)
    return Still(*drawn, choice.recording, choice.time, "", choice.reason, choice.weak)


def picture_file(picture: Picture, material: Material, *, marked: bool = False) -> Still | None:
    """A picture file of the folder; None when it is not there.

    Raises:
        UnreadablePicture: it is no picture.
    """
    path = find(material.folder, NamedFile("", picture.file, picture.place))
    if not isinstance(path, Path):
        return None
    drawn = _drawn(path, material.cache.hash(path), None, picture, (), material, marked=marked)
    return Still(*drawn, "", None, picture.file, TYPED_MOMENT)


def _drawn(
    path: Path, sha256: str, time: Fraction | None, picture: Picture | None, boxes: Sequence[Box], material: Material,
    *, marked: bool,
) -> tuple[str, int, int]:  # fmt: skip
    """Published name, width and height of a picture, made unless it is there, in its share of bytes."""
    cache, most = material.cache, material.still_bytes

    def make(target: Path) -> list[int]:
        from procbuilder.media.stills import still

        return list(still(path, time, picture=picture, target=target, hidden=boxes, marked=marked))

    marks = [(mark.shape, mark.points, mark.label) for mark in picture.marks] if picture and marked else []
    looks = (marks, picture.hidden, picture.crop) if picture else ()
    key = key_of(made_by(__name__), sha256, time, looks, boxes)
    name, (width, height) = cache.media("still", ".jpg", made_by(__name__), key, make)
    if cache.file(name).stat().st_size <= most:
        return name, width, height
    fits = key_of("fitted", name, most)
    name, (width, height) = cache.media("still", ".jpg", made_by(__name__), fits, partial(_fit, cache.file(name), most))
    return name, width, height


def _fit(source: Path, most: int, target: Path) -> list[int]:
    from procbuilder.media.stills import fitted

    return list(fitted(source, most, target=target))


def thumbnail(recording: str, time: Fraction, hidden: Sequence[HiddenPath], material: Material) -> Path | None:
    """A small picture of a candidate, made when it is asked for; None when its recording cannot be used or shown.

    Raises:
        Unreadable: the recording cannot be decoded there.
    """
    file = material.recordings.get(recording)
    if file is None or time >= file.facts.duration or material.is_withheld(recording, time):
        return None
    boxes = material.hidden_at(recording, time, hidden)

    def make(target: Path) -> list[int]:
        from procbuilder.media.stills import thumbnail

        return list(thumbnail(file.path, time, target=target, hidden=boxes))

    key = key_of(made_by(__name__), "thumbnail", file.facts.sha256, time, boxes)
    name, _ = material.cache.media("thumbnail", ".jpg", made_by(__name__), key, make)
    return material.cache.file(name)
