"""How the footage of each step is spent: scanned once for each recording and stretch, and kept in the cache."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from procbuilder.infer.footage import Scanned, split
from procbuilder.keep.cache import Cache, key_of
from procbuilder.keep.records import restored, stored
from procbuilder.model.fault import Unreadable
from procbuilder.model.footage import Cut, FootageSplit, Heard, Looked, PacketFacts
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.stretch import Stretch, shared
from procbuilder.model.timecode import Span
from procbuilder.pipeline.recordings import Found, Report

HEARD, LOOKED, CUTS = "heard-1", "looked-4", "cuts-3"
"""Kinds of cached results; another number when they are found in another way."""


@dataclass(frozen=True, slots=True)
class Footage:
    """What is known of the footage of the steps."""

    splits: Mapping[str, FootageSplit] = field(default_factory=dict)
    """By id of the step; steps that were not filmed, or not scanned, are missing."""
    unscanned: tuple[str, ...] = ()
    """Names of recordings with steps whose footage was not scanned."""
    cuts: Mapping[str, tuple[Cut, ...]] = field(default_factory=dict)
    """Cuts found in the steps of each recording, by its name."""


def scan(
    procedure: Procedure,
    found: Found,
    cache: Cache,
    report: Report,
    look_through: Callable[[Step], None] | None = None,
) -> Footage:
    """Scan what is not in the cache.

    Sound and key frames of each recording are decoded once. For cuts, pictures are decoded around the places where
    packets and key frames let suspect one, unless ``look_through`` has put into the cache what all pictures tell.
    """
    names = [recording.name for recording in found.recordings]

    def tell(name: str) -> None:
        report(f"scanning {name}", names.index(name), len(names))

    if look_through:
        for number, step in enumerate(procedure.steps):
            report(f"looking through step {number + 1}: {step.command}", number, len(procedure.steps))
            look_through(step)
    return _footage(procedure, _Scanner(found, cache, tell))


def scanned(procedure: Procedure, found: Found, cache: Cache) -> Footage:
    """What earlier scans have left in the cache, without opening a recording."""
    return _footage(procedure, _Scanner(found, cache, None))


def _footage(procedure: Procedure, scanner: "_Scanner") -> Footage:
    splits: dict[str, FootageSplit] = {}
    cuts: dict[str, tuple[Cut, ...]] = {}
    unscanned: list[str] = []
    for step in procedure.steps:
        spans = scanner.stretches(step)
        parts = [scanner.part(span) for span in spans]
        known = [part for part in parts if part]
        for span, part in zip(spans, parts, strict=True):
            if part:
                cuts[span.recording] = (*cuts.get(span.recording, ()), *part.cuts)
        unscanned += (span.recording for span, part in zip(spans, parts, strict=True) if not part)
        if known and len(known) == len(parts):
            splits[step.id] = split(known)
    return Footage(splits, tuple(dict.fromkeys(unscanned)), cuts)


@dataclass(frozen=True, slots=True)
class _File:
    """A recording that can be scanned."""

    path: Path
    sha256: str
    film: PacketFacts


_Whole = tuple[Heard | None, Looked]
"""What is known of a whole recording; None when nothing is heard in it."""


class _Scanner:
    """Looks into the cache, and into the recordings unless ``tell`` is None."""

    def __init__(self, found: Found, cache: Cache, tell: Callable[[str], None] | None) -> None:
        self.found, self.cache, self.tell = found, cache, tell
        self.whole: dict[str, _Whole | None] = {}

    def stretches(self, step: Step) -> tuple[Span, ...]:
        """The footage of a step that its recordings have and that is not skipped."""
        from procbuilder.media.stretches import kept

        usable = filter(None, (self.found.usable(span) for span in step.spans))
        return tuple(part for span in usable for part in kept(span, step.skips))

    def part(self, span: Span) -> Scanned | None:
        """What is known of a stretch; None when it was not scanned, or cannot be."""
        file = self._file(span.recording)
        try:
            whole = self._whole(span.recording, file) if file else None
            cuts = self._cuts(span, file, whole[1]) if file and whole else None
        except Unreadable:
            return None
        if file is None or whole is None or cuts is None:
            return None
        return Scanned(Stretch(span.start, span.end), file.film, whole[1], whole[0], cuts)

    def _file(self, name: str) -> _File | None:
        recording, path, film = self.found.recording(name), self.found.path(name), self.found.film(name)
        return _File(path, recording.sha256, film) if recording and path and film else None

    def _whole(self, name: str, file: _File) -> _Whole | None:
        """Sound and key frames of a recording, looked up once."""
        if name not in self.whole:
            self.whole[name] = self._kept(file) or self._read(name, file)
        return self.whole[name]

    def _kept(self, file: _File) -> _Whole | None:
        heard, looked = (self.cache.get(kind, file.sha256) for kind in (HEARD, LOOKED))
        if not heard or not looked:
            return None
        return restored(Heard, heard["sound"]) if heard["sound"] else None, restored(Looked, looked)

    def _read(self, name: str, file: _File) -> _Whole | None:
        if self.tell is None:
            return None
        from procbuilder.media.stillness import look
        from procbuilder.media.voice import listen

        self.tell(name)
        heard, looked = listen(file.path), look(file.path, file.film)
        self.cache.put(HEARD, file.sha256, {"sound": stored(heard)})
        self.cache.put(LOOKED, file.sha256, stored(looked))
        return heard, looked

    def _cuts(self, span: Span, file: _File, looked: Looked) -> tuple[Cut, ...] | None:
        """Cuts of a stretch; those found in every picture serve from then on, also when nobody asks for them."""
        for every in (True, False):
            if (known := self.cache.get(CUTS, cuts_key(file.sha256, span, every=every))) is not None:
                return tuple(restored(Cut, cut) for cut in known)
        if self.tell is None:
            return None
        from procbuilder.media.cuts import cuts_within, suspects

        self.tell(span.recording)
        whole = [Stretch(span.start, span.end)]
        cuts = cuts_within(file.path, file.film, shared(whole, suspects(file.film, looked)))
        self.cache.put(CUTS, cuts_key(file.sha256, span, every=False), stored(cuts))
        return cuts


def cuts_key(sha256: str, span: Span, *, every: bool) -> str:
    """Key of the cuts of a stretch; of those that were looked for in every picture it is another."""
    return key_of(sha256, span.start, span.end, every)
