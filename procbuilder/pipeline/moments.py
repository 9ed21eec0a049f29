"""Which moment of a step its picture shows, looked for once."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from procbuilder.keep.cache import Cache, key_of
from procbuilder.keep.records import restored, stored
from procbuilder.model.footage import Choice
from procbuilder.model.timecode import Span
from procbuilder.pipeline.program import made_by
from procbuilder.pipeline.recordings import RecordingFile


def finished(span: Span, skips: Sequence[Span], file: RecordingFile, cache: Cache) -> Choice:
    """The moment that shows the finished state of a span best; one found in every picture serves from then on.

    Raises:
        Unreadable: the recording cannot be decoded there.
    """

    def look() -> Choice:
        from procbuilder.media.keyframe import finished

        return finished(file.path, span, skips=skips)

    sha256 = file.facts.sha256
    keys = [moment_key(sha256, span, skips, every=every) for every in (True, False)]
    return _kept(keys, look, span, cache)


def as_found(span: Span, file: RecordingFile, cache: Cache) -> Choice:
    """The moment of a span that shows best how it looked before.

    Raises:
        Unreadable: the recording cannot be decoded there.
    """

    def look() -> Choice:
        from procbuilder.media.keyframe import as_found

        return as_found(file.path, span)

    return _kept([key_of(made_by(__name__), file.facts.sha256, span, "as found")], look, span, cache)


def moment_key(sha256: str, span: Span, skips: Sequence[Span], *, every: bool) -> str:
    """Under which the moment of a finished state is kept; of one among every picture it is another."""
    return key_of(made_by(__name__), sha256, span, every, *skips)


def _kept(keys: Sequence[str], look: Callable[[], Choice], span: Span, cache: Cache) -> Choice:
    """What is kept under the first of these keys that holds something, else what is found now, kept under the last."""
    for key in keys:
        if known := cache.get("moment", key):
            # The same file may have had another name.
            return replace(restored(Choice, known), recording=span.recording)
    choice = look()
    cache.put("moment", keys[-1], stored(choice))
    return choice
