"""Every picture of the steps looked at once: for cuts, ends and key frames, which are then found in the cache."""

from contextlib import suppress

from procbuilder.keep.cache import Cache
from procbuilder.keep.records import stored
from procbuilder.media.stretches import kept
from procbuilder.model.facts import Phrase, facts
from procbuilder.model.fault import Unreadable
from procbuilder.model.procedure import Step
from procbuilder.model.timecode import Span
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.moments import moment_key
from procbuilder.pipeline.progress import Progress
from procbuilder.pipeline.recordings import RecordingFile
from procbuilder.pipeline.scanning import cuts_key
from procbuilder.pipeline.trimming import ends_key, inside


def look_through(material: Material, progress: Progress) -> None:
    """Look at every picture of the steps, unless that was done.

    Footage that cannot be read is left to scanning and choosing: they tell it.
    """
    for number, step in enumerate(material.steps):
        what = Phrase("looking-through", facts(number=number + 1, command=step.command))
        progress(what, number, len(material.steps))
        for span, file in material.usable(step):
            with suppress(Unreadable):
                _look_through(step, span, material.room(step, span, file), file, material.cache)


def _look_through(step: Step, span: Span, room: Span, file: RecordingFile, cache: Cache) -> None:
    sha256 = file.facts.sha256
    keys = {part: cuts_key(sha256, part, every=True) for part in kept(span, step.skips)}
    if all(cache.get("cuts", key) is not None for key in keys.values()):
        return
    from procbuilder.media.thorough import look_through

    seen = look_through(file.path, file.film, span, room, step.skips)
    cuts = inside(span, [cut for _, each in seen.cuts for cut in each])
    cache.put("ends", ends_key(sha256, span, room, cuts), stored(seen.snapped))
    cache.put("moment", moment_key(sha256, seen.snapped.span, step.skips, every=True), stored(seen.choice))
    for part, each in seen.cuts:
        cache.put("cuts", keys[part], stored(each))
