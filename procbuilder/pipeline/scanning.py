"""How the footage of each step is spent: scanned once for each recording and stretch, and kept in the cache."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from procbuilder.infer.footage import Scanned, split
from procbuilder.keep.cache import Cache, key_of
from procbuilder.keep.records import restored, stored
from procbuilder.media.stretches import kept
from procbuilder.model.facts import Phrase, facts
from procbuilder.model.fault import Unreadable
from procbuilder.model.footage import Cut, FootageSplit, Heard, Looked
from procbuilder.model.stretch import Stretch, shared
from procbuilder.model.timecode import Span
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.program import made_by
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.recordings import RecordingFile

_Whole = tuple[Heard | None, Looked]
"""What is known of a whole recording; None when nothing is heard in it."""


@dataclass(frozen=True, slots=True)
class Footage:
    """What is known of the footage of the steps."""

    splits: Mapping[str, FootageSplit] = field(default_factory=dict)
    """By id of the step; steps that were not filmed, or not scanned, are missing."""
    unscanned: tuple[str, ...] = ()
    """Names of recordings with steps whose footage was not scanned."""
    cuts: Mapping[str, tuple[Cut, ...]] = field(default_factory=dict)
    """Cuts found in the steps of each recording, by its name."""


def scan(material: Material, progress: Progress) -> Footage:
    """Scan what is not in the cache.

    Sound and key frames of each recording are decoded once. For cuts, pictures are decoded around the places where
    packets and key frames let suspect one, unless it is in the cache what all pictures tell.
    """
    return _footage(material, progress)


def scanned(material: Material) -> Footage:
    """What earlier scans have left in the cache, without opening a recording."""
    return _footage(material, None)


def _footage(material: Material, progress: Progress | None) -> Footage:
    stretches = {
        step.id: [(part, file) for span, file in material.usable(step) for part in kept(span, step.skips)]
        for step in material.steps
    }
    files = {part.recording: file for each in stretches.values() for part, file in each}
    wholes: dict[str, _Whole | None] = {}
    for number, (name, file) in enumerate(files.items()):
        if progress:
            progress(Phrase("scanning", facts(recording=name)), number, len(files))
        wholes[name] = _whole(file, material.cache, look=progress is not None)
    cuts: dict[str, tuple[Cut, ...]] = {}
    splits: dict[str, FootageSplit] = {}
    unscanned: list[str] = []
    for step in material.steps:
        known: list[Scanned] = []
        for part, file in stretches[step.id]:
            if found := _part(part, file, wholes[part.recording], material.cache, look=progress is not None):
                known.append(found)
                cuts[part.recording] = (*cuts.get(part.recording, ()), *found.cuts)
            else:
                unscanned.append(part.recording)
        if known and len(known) == len(stretches[step.id]):
            splits[step.id] = split(known)
    return Footage(splits, tuple(dict.fromkeys(unscanned)), cuts)


def _whole(file: RecordingFile, cache: Cache, *, look: bool) -> _Whole | None:
    """Sound and key frames of a recording; None when they are not known, or cannot be."""
    key = key_of(made_by(__name__), file.facts.sha256)
    heard, looked = cache.get("heard", key), cache.get("looked", key)
    if heard and looked:
        return restored(Heard, heard["sound"]) if heard["sound"] else None, restored(Looked, looked)
    if not look:
        return None
    from procbuilder.media import stillness, voice

    try:
        made = voice.listen(file.path), stillness.look(file.path, file.film)
    except Unreadable:
        return None
    cache.put("heard", key, {"sound": stored(made[0])})
    cache.put("looked", key, stored(made[1]))
    return made


def _part(part: Span, file: RecordingFile, whole: _Whole | None, cache: Cache, *, look: bool) -> Scanned | None:
    """What is known of a stretch; None when it was not scanned, or cannot be."""
    cuts = _cuts(part, file, whole[1], cache, look=look) if whole else None
    if whole is None or cuts is None:
        return None
    return Scanned(Stretch(part.start, part.end), file.film, whole[1], whole[0], cuts)


def _cuts(part: Span, file: RecordingFile, looked: Looked, cache: Cache, *, look: bool) -> tuple[Cut, ...] | None:
    """Cuts of a stretch; those found in every picture serve from then on, also when nobody asks for them."""
    for every in (True, False):
        if (known := cache.get("cuts", cuts_key(file.facts.sha256, part, every=every))) is not None:
            return tuple(restored(Cut, cut) for cut in known)
    if not look:
        return None
    from procbuilder.media.cuts import cuts_within, suspects

    try:
        suspected = shared([Stretch(part.start, part.end)], suspects(file.film, looked))
        cuts = cuts_within(file.path, file.film, suspected)
    except Unreadable:
        return None
    cache.put("cuts", cuts_key(file.facts.sha256, part, every=False), stored(cuts))
    return cuts


def cuts_key(sha256: str, part: Span, *, every: bool) -> str:
    """Under which the cuts of a stretch are kept; those that were looked for in every picture under another."""
    return key_of(made_by(__name__), sha256, part.start, part.end, every)
