"""Stills and clips of the steps, made once and kept in the cache."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from procbuilder.keep.cache import Cache, key_of, sha256_of
from procbuilder.keep.records import restored, stored
from procbuilder.model.fault import Unreadable, UnreadablePicture
from procbuilder.model.footage import Choice, Clip, Cut, Recording, Snapped, Still
from procbuilder.model.marks import Box, HiddenPath, Picture
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.procedure import NamedFile, Step
from procbuilder.model.timecode import Span, format_time
from procbuilder.pipeline.paths import find
from procbuilder.pipeline.recordings import Found
from procbuilder.pipeline.scanning import CUTS, cuts_key

if TYPE_CHECKING:
    from procbuilder.media.clips import ClipPart

RECIPE = 15
"""Another number when stills are chosen, drawn or cut in another way: then all are made anew."""

CHOSEN = "chosen by the technician"
"""The reason for a picture that was typed."""

HOLD, HOLD_ALL = Fraction(3), Fraction(6)
"""Seconds for which a marked picture stands still at the beginning of a clip, and all of them together at most."""

FOUND_WINDOW = Fraction(3, 2)
"""Seconds at the beginning of a step among which the as-found picture is looked for."""


Made = TypeVar("Made")


class Studio:
    """Makes the pictures and clips of one procedure.

    ``files`` are those asked for, by published name; ``problems`` tell which could not be made or are weak. ``cuts``,
    by name of the recording, are to be set before stretches are asked for.
    """

    def __init__(
        self,
        cache: Cache,
        found: Found,
        folder: Path,
        steps: Sequence[Step] = (),
    ) -> None:
        self.cache, self.found, self.folder, self.steps = cache, found, folder, steps
        self.cuts: Mapping[str, Sequence[Cut]] = {}
        self.files: dict[str, Path] = {}
        self.problems: list[Problem] = []

    def attempt(self, place: Place, make: Callable[[], Made | None]) -> Made | None:
        """What ``make`` gives; None and a problem when the footage or picture file cannot be read."""
        try:
            return make()
        except (Unreadable, UnreadablePicture) as fault:
            what, _, instead = str(fault).partition(" – ")
            what = what.replace(f"{self.folder.resolve()}/", "")
            self.problems.append(worded(Severity.ASK, place, what, instead, "unreadable", 4))
            return None

    def usable(self, span: Span) -> Span | None:
        """The part of a span that its recording has; None when there is none."""
        return self.found.usable(span)

    def stretches(self, step: Step) -> tuple[Span, ...]:
        """The footage of a step that can be shown from where its action begins, skipped stretches left out."""
        from procbuilder.media.stretches import kept

        return tuple(part for each in self.snapped(step) for part in kept(each.span, step.skips))

    def snapped(self, step: Step) -> tuple[Snapped, ...]:
        """The footage of a step that its recordings have, with the times at which its action begins and ends."""
        return tuple(self._snapped(step, usable) for span in step.spans if (usable := self.usable(span)))

    def _snapped(self, step: Step, span: Span) -> Snapped:
        recording, path = self._opened(span.recording)
        room = self._room(step, span, recording.duration)
        cuts = _inside(span, self.cuts.get(span.recording, ()))
        key = key_of(RECIPE, recording.sha256, span, room, cuts)
        if known := self.cache.get("snapped", key):
            return restored(Snapped, known)
        from procbuilder.media.snap import snapped

        try:
            made = snapped(path, span, room, cuts)
        except Unreadable:  # the picture and the clip tell it
            return Snapped(span, span)
        self.cache.put("snapped", key, stored(made))
        return made

    def _room(self, step: Step, span: Span, duration: Fraction) -> Span:
        """How far the ends of a span may move."""
        from procbuilder.media.stretches import room

        others = [*(other for each in self.steps for other in each.spans), *step.skips]
        # What is to be hidden was typed for these times; beyond them nobody has looked.
        return span if self.hidden(step) else room(span, duration, others)

    def _opened(self, name: str) -> tuple[Recording, Path]:
        """A recording of which some footage is usable."""
        recording, path = self.found.recording(name), self.found.path(name)
        assert recording is not None
        assert path is not None
        return recording, path

    def look_through(self, step: Step) -> None:
        """Look at every picture of a step, unless that was done, and keep what is found for the scan and for choosing.

        Footage that cannot be read is left to them: they tell it.
        """
        for span in filter(None, map(self.usable, step.spans)):
            with suppress(Unreadable):
                self._look_through(step, span)

    def _look_through(self, step: Step, span: Span) -> None:
        from procbuilder.media.stretches import kept

        recording, path = self._opened(span.recording)
        keys = {part: cuts_key(recording.sha256, part, every=True) for part in kept(span, step.skips)}
        film = self.found.film(span.recording)
        if film is None or all(self.cache.get(CUTS, key) is not None for key in keys.values()):
            return
        from procbuilder.media.thorough import look_through

        room = self._room(step, span, recording.duration)
        seen = look_through(path, film, span, room, step.skips)
        cuts = _inside(span, [cut for _, each in seen.cuts for cut in each])
        self.cache.put("snapped", key_of(RECIPE, recording.sha256, span, room, cuts), stored(seen.snapped))
        key = _choice_key(recording.sha256, seen.snapped.span, step.skips, every=True)
        self.cache.put("choice", key, stored(seen.choice))
        for part, each in seen.cuts:
            self.cache.put(CUTS, keys[part], stored(each))

    def hidden(self, step: Step) -> tuple[HiddenPath, ...]:
        """What is hidden in the footage of a step: by itself, and by other steps that show some of it too."""
        others = (other for other in self.steps if any(a.overlap(b) for a in step.spans for b in other.spans))
        return tuple(dict.fromkeys([*step.hidden, *(path for other in others for path in other.hidden)]))

    def _boxes(self, recording: str, time: Fraction, own: Sequence[HiddenPath]) -> list[Box]:
        """What is hidden in a picture of a moment, whichever step shows it."""
        moment = Span(recording, time, time + Fraction(1, 1000))
        others = (other for other in self.steps if any(span.overlap(moment) for span in other.spans))
        paths = dict.fromkeys([*own, *(path for other in others for path in other.hidden)])
        return [box for path in paths if path.recording == recording and (box := path.at(time))]

    def parts(self, step: Step, stretches: Sequence[Span]) -> "tuple[ClipPart, ...]":
        """The footage of a step as it goes into a clip or film."""
        from procbuilder.media.clips import ClipPart

        found = ((self.found.path(part.recording), part) for part in stretches)
        return tuple(ClipPart(path, part, step.skips, self.hidden(step)) for path, part in found if path)

    def choose(self, span: Span, skips: Sequence[Span]) -> Choice:
        """The moment that shows the finished state of a span best, looked for once.

        One that was found in every picture serves from then on.
        """

        def look(path: Path) -> Choice:
            from procbuilder.media.keyframe import finished

            return finished(path, span, skips=skips)

        return self._chosen(span, skips, look)

    def choose_as_found(self, span: Span) -> Choice:
        """The moment of a span that shows best how it looked before."""

        def look(path: Path) -> Choice:
            from procbuilder.media.keyframe import as_found

            return as_found(path, span)

        return self._chosen(span, ("as found",), look)

    def _chosen(self, span: Span, more: Sequence[object], choose: Callable[[Path], Choice]) -> Choice:
        recording, path = self._opened(span.recording)
        for every in (True, False):
            if known := self.cache.get("choice", _choice_key(recording.sha256, span, more, every=every)):
                return replace(restored(Choice, known), recording=span.recording)
        choice = choose(path)
        self.cache.put("choice", _choice_key(recording.sha256, span, more, every=False), stored(choice))
        return choice

    def thumbnail(self, recording: str, time: Fraction, hidden: Sequence[HiddenPath]) -> Path | None:
        """A small picture of a candidate, made when it is asked for; None when its recording cannot be used."""
        path, facts = self.found.path(recording), self.found.recording(recording)
        if path is None or facts is None or time >= facts.duration:
            return None
        boxes = self._boxes(recording, time, hidden)

        def make(target: Path) -> list[int]:
            from procbuilder.media.stills import thumbnail

            return list(thumbnail(path, time, target=target, hidden=boxes))

        return self.cache.media(key_of(RECIPE, "thumbnail", facts.sha256, time, boxes), ".jpg", make)[0]

    def still(
        self, choice: Choice, picture: Picture | None, hidden: Sequence[HiddenPath], *, marked: bool = False
    ) -> Still | None:
        """The picture of a chosen moment; None when its recording cannot be used."""
        path, recording = self.found.path(choice.recording), self.found.recording(choice.recording)
        if path is None or recording is None or choice.time >= recording.duration:
            return None
        boxes = self._boxes(choice.recording, choice.time, hidden)
        drawn = self._drawn(path, recording.sha256, choice.time, picture, boxes, marked=marked)
        return Still(*drawn, f"{choice.recording} {format_time(choice.time)}", choice.reason, choice.weak)

    def picture_file(self, picture: Picture, *, marked: bool = False) -> Still | None:
        """A picture file of the folder; None when it is not there."""
        path = find(self.folder, NamedFile("", picture.file, picture.place))
        if not isinstance(path, Path):
            return None
        drawn = self._drawn(path, self.cache.hash(path), None, picture, [], marked=marked)
        return Still(*drawn, picture.file, CHOSEN)

    def _drawn(
        self, path: Path, sha256: str, time: Fraction | None, picture: Picture | None, boxes: list[Box], *, marked: bool
    ) -> tuple[str, int, int]:
        """Published name, width and height of a picture, made unless it is there."""

        def make(target: Path) -> list[Any]:
            from procbuilder.media.stills import still

            width, height = still(path, time, picture=picture, target=target, hidden=boxes, marked=marked)
            return [f"still-{sha256_of(target)[:16]}.jpg", width, height]

        marks = [(mark.shape, mark.points, mark.label) for mark in picture.marks] if picture and marked else []
        looks = (marks, picture.hidden, picture.crop) if picture else ()
        made, (name, width, height) = self.cache.media(key_of(RECIPE, sha256, time, looks, boxes), ".jpg", make)
        self.files[name] = made
        return name, width, height

    def clip(self, step: Step, stretches: Sequence[Span], marked: Sequence[Still] = ()) -> Clip | None:
        """The clip of a step, which begins with its marked pictures; None when nothing of it was filmed."""
        if not stretches:
            return None

        def make(target: Path) -> list[Any]:
            from procbuilder.media.clips import Held, cut
            from procbuilder.media.damage import stretches as damage_in

            moments: list[tuple[str, Fraction]] = []
            held = [Held(self.files[still.file], each) for still in marked]
            seconds, width, height, sound = cut(
                self.parts(step, stretches), target, held, lambda *moment: moments.append(moment)
            )
            damage = [[str(each), _left_out(each.span)] for each in damage_in(moments)]
            return [f"clip-{sha256_of(target)[:16]}.mp4", str(seconds), width, height, sound, damage]

        recordings = (self.found.recording(part.recording) for part in stretches)
        hashes = [recording.sha256 for recording in recordings if recording]
        hidden = [(path.recording, path.boxes) for path in self.hidden(step)]
        each = hold(len(marked))
        key = key_of(RECIPE, *hashes, *stretches, hidden, each, *(still.file for still in marked))
        made, (name, seconds, width, height, sound, damage) = self.cache.media(key, ".mp4", make)
        self.files[name] = made
        self.problems += [worded(Severity.ASK, step.place, what, way, "damaged", 4) for what, way in damage]
        return Clip(name, Fraction(seconds), width, height, sound, each * len(marked), self._moved(step))

    def _moved(self, step: Step) -> tuple[str, ...]:
        """Where the clip of a step does not begin or end at a typed time."""
        parts = self.snapped(step)
        names = [f"part {number} of the clip" for number in range(1, len(parts) + 1)] if len(parts) > 1 else ["clip"]
        return tuple(f"{name} {move}" for name, part in zip(names, parts, strict=False) for move in part.moves)


def _choice_key(sha256: str, span: Span, more: Sequence[object], *, every: bool) -> str:
    """Key of a choice; of one among every picture it is another."""
    return key_of(RECIPE, sha256, span, every, *more)


def _inside(span: Span, cuts: Iterable[Cut]) -> list[Cut]:
    return [cut for cut in cuts if span.start < cut.time < span.end]


def _left_out(span: Span) -> str:
    """What a technician can do about damaged pictures."""
    start, end = format_time(Fraction(int(span.start))), format_time(Fraction(int(span.end) + 1))
    return f"copy it again from the camera, or leave them out: - Skip: {span.recording} {start}-{end} | damaged"


def hold(count: int) -> Fraction:
    """Seconds for which each of that many marked pictures stands still: less when they are many."""
    return min(HOLD, HOLD_ALL / count) if count else Fraction(0)
