"""The film of a whole procedure: cards, marked pictures and footage, put together with MoviePy.

MoviePy gets every picture from here, never from a file: its own reader is wrong on variable frame rate and on
recordings filmed upright. It is asked for a picture only when one changes, so that the times stay those of the
recording, and one scene at a time, so that the length of the film costs no memory.
"""

import gc
from bisect import bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from pathlib import Path

import numpy as np

from procbuilder.media.cards import HEIGHT, WIDTH, cards
from procbuilder.media.clips import ClipPart, Held, fitted, image_of, stored_pictures
from procbuilder.media.colour import encodable
from procbuilder.media.compositing import CompositeVideoClip, ImageClip, VideoClip, concatenate_videoclips
from procbuilder.media.encode import ClipFile
from procbuilder.media.image import Image
from procbuilder.media.loudness import gain, limited
from procbuilder.media.sound import RATE, Samples, sound
from procbuilder.media.stage import WINDOW, stage
from procbuilder.media.stills import loaded
from procbuilder.media.stretches import kept
from procbuilder.model.film import Chapter, Scene
from procbuilder.model.timecode import Span

_AGAIN = Fraction(1, 4)
"""Seconds after which a picture that stands still is written again: not every player holds one for long."""

_WITHIN = 1 / 200_000
"""Seconds added to the time that MoviePy is asked for, whose binary fractions would else fall short of it."""

_HEARD = Fraction(20)
"""Seconds of sound that are read at once."""

_JUDGED = Fraction(60)
"""Seconds of a stretch by whose speech it is levelled."""


@dataclass(frozen=True, slots=True)
class FilmedScene:
    """A scene with its footage: the marked pictures stand still first."""

    scene: Scene
    held: tuple[Held, ...] = ()
    parts: tuple[ClipPart, ...] = ()


@dataclass(frozen=True, slots=True)
class MadeFilm:
    """What was written."""

    seconds: Fraction
    chapters: tuple[Chapter, ...]
    footage: tuple[Fraction, ...]
    """Where the footage of each scene begins, or would."""
    width: int = WIDTH
    height: int = HEIGHT


def make(
    scenes: Sequence[FilmedScene],
    foot: str,
    target: Path,
    *,
    audible: bool,
    told: Callable[[int], None] = lambda _done: None,
) -> MadeFilm:
    """Writes the film: MP4 of 1280 by 720 with H.264 pictures, mono AAC sound when audible, and a chapter a scene.

    Args:
        scenes: In the order of the film.
        foot: Which edition it is; stands small below every picture.
        target: Written over when it is there.
        audible: Whether there is sound in any of the recordings.
        told: Called before each scene with the number of those that are done.

    Raises:
        Unreadable, UnreadablePicture: A recording or picture cannot be opened.
        CannotWrite: The target cannot be written.
    """
    chapters, footage = [], []
    with ClipFile(target, WIDTH, HEIGHT, sound=audible) as file:
        for number, filmed in enumerate(scenes):
            if told is not None:
                told(number)
            chapters.append(Chapter(file.seconds, filmed.scene.title, filmed.scene.number))
            reel = _Reel(filmed, foot)
            footage.append(file.seconds + reel.quiet)
            reel.write(file)
            del reel
            gc.collect()  # the clips of MoviePy hold themselves, and with them the pictures of the scene
        file.chapters = tuple(chapters)
    return MadeFilm(file.seconds, tuple(chapters), tuple(footage))


class _Reel:
    """One scene as a MoviePy composition, and the times at which its picture changes."""

    def __init__(self, filmed: FilmedScene, foot: str) -> None:
        self.feed = _Feed(filmed.parts)
        before = [(image, card.seconds / len(pages)) for card in filmed.scene.before
                  for pages in [cards(card, foot)] for image in pages]  # fmt: skip
        after = [(image, card.seconds / len(pages)) for card in filmed.scene.after
                 for pages in [cards(card, foot)] for image in pages]  # fmt: skip
        held = [(_on_stage(filmed.scene, each, foot), each.seconds) for each in filmed.held]
        self.quiet = sum((seconds for _, seconds in (*before, *held)), Fraction(0))
        lengths = [seconds for _, seconds in (*before, *held)] + [self.feed.seconds] + [seconds for _, seconds in after]
        self.starts = list(accumulate(lengths, initial=Fraction(0)))
        self.points = _shares(self.feed.seconds, len(filmed.scene.points), self.quiet)
        clips = [_still(*each) for each in (*before, *held)]
        if self.feed.seconds:
            clips.append(self._footage(filmed.scene, foot))
        self.composition = concatenate_videoclips(clips + [_still(*each) for each in after])

    def _footage(self, scene: Scene, foot: str) -> VideoClip:
        """The footage in its window, amid the words that belong to it one after the other."""
        each = self.feed.seconds / max(len(scene.points), 1)
        grounds = [
            _still(stage(scene.head, scene.standing, point, foot), each).with_start(float(each * number))
            for number, point in enumerate(scene.points or ("",))
        ]
        window = VideoClip(self.feed.at, duration=float(self.feed.seconds)).with_position(WINDOW[:2])
        return CompositeVideoClip([*grounds, window], size=(WIDTH, HEIGHT), bg_color=(0, 0, 0)).with_duration(
            float(self.feed.seconds)
        )

    def write(self, file: ClipFile) -> None:
        """All its pictures with their sound."""
        time, end = Fraction(0), self.starts[-1]
        while time < end:
            image = self.composition.get_frame(float(time) + _WITHIN)
            until = self._changes(time)
            samples = self.feed.sound(time - self.quiet, until - self.quiet)
            file.add(encodable(np.ascontiguousarray(image)), until - time, samples)
            time = until

    def _changes(self, time: Fraction) -> Fraction:
        """When the picture that is on show at a time gives way to another, or is written again."""
        edges = [edge for edge in (*self.starts, *self.points) if edge > time]
        if 0 <= time - self.quiet < self.feed.seconds:
            return min(self.feed.until + self.quiet, *edges)
        return min(time + _AGAIN, *edges)


class _Feed:
    """Footage picture by picture, in the size of the window, as time goes on."""

    def __init__(self, parts: Sequence[ClipPart]) -> None:
        self._stretches = [(part.path, stretch) for part in parts for stretch in kept(part.span, part.skips)]
        self.seconds = sum((stretch.seconds for _, stretch in self._stretches), Fraction(0))
        self.until = Fraction(0)
        """Seconds from the beginning at which the present picture gives way to the next."""
        self._pictures = self._timed(parts)
        self._present: Image = np.zeros((WINDOW[3], WINDOW[2], 3), dtype=np.uint8)
        self._sounds = _Sounds(self._stretches)

    def at(self, time: float) -> Image:
        """The picture on show at a time, which never goes back."""
        while self.until <= time:
            self.until, self._present = next(self._pictures, (self.seconds, self._present))
            if self.until >= self.seconds:
                break
        return self._present

    def sound(self, start: Fraction, end: Fraction) -> Samples:
        """The samples from one time to another; silence outside the footage."""
        if 0 <= start < self.seconds:
            return self._sounds.between(start, end)
        return np.zeros(round(end * RATE) - round(start * RATE), dtype=np.float32)

    def _timed(self, parts: Sequence[ClipPart]) -> Iterator[tuple[Fraction, Image]]:
        begin = Fraction(0)
        for part in parts:
            stretches = kept(part.span, part.skips)
            begins = dict(zip(stretches, accumulate((s.seconds for s in stretches), initial=begin), strict=False))
            for picture in stored_pictures(part):
                yield begins[picture.stretch] + picture.until - picture.stretch.start, image_of(picture, WINDOW[2:])
            begin += sum(stretch.seconds for stretch in stretches)


class _Sounds:
    """The sound of stretches that follow one another, read a few seconds at a time."""

    def __init__(self, stretches: Sequence[tuple[Path, Span]]) -> None:
        self._stretches = stretches
        self._begins = list(accumulate((stretch.seconds for _, stretch in stretches), initial=Fraction(0)))
        self._first = self._last = 0
        self._gains: dict[int, np.float32] = {}
        self._samples: Samples = np.zeros(0, dtype=np.float32)

    def between(self, start: Fraction, end: Fraction) -> Samples:
        """Exactly as many samples as lie between two times."""
        low, high = round(start * RATE), round(end * RATE)
        pieces = [np.zeros(0, dtype=np.float32)]
        while low < high:
            if not self._first <= low < self._last:
                self._read(low)
            upto = min(high, self._last)
            pieces.append(self._samples[low - self._first : upto - self._first])
            low = upto
        return np.concatenate(pieces)

    def _read(self, low: int) -> None:
        """The samples from one on, up to the end of its stretch at most."""
        start = Fraction(low, RATE)
        at = min(bisect_right(self._begins, start + Fraction(1, 2 * RATE)), len(self._stretches)) - 1
        path, stretch = self._stretches[at]
        begin = max(stretch.start + start - self._begins[at], Fraction(0))
        end = min(begin + _HEARD, stretch.end)
        heard = sound(path, begin, end) if begin < end else None
        count = max(round((start + end - begin) * RATE) - low, 1)
        samples = np.zeros(count, dtype=np.float32)
        if heard is not None:
            samples[: len(heard)] = limited(heard * self._gain(at))[:count]
        self._first, self._last, self._samples = low, low + count, samples

    def _gain(self, at: int) -> np.float32:
        """What levels the speech of a stretch, by its first minute."""
        if at not in self._gains:
            path, stretch = self._stretches[at]
            heard = sound(path, stretch.start, min(stretch.start + _JUDGED, stretch.end))
            self._gains[at] = np.float32(1) if heard is None else gain(heard)
        return self._gains[at]


def _still(image: Image, seconds: Fraction) -> ImageClip:
    return ImageClip(image, duration=float(seconds))


def _on_stage(scene: Scene, held: Held, foot: str) -> Image:
    """A marked picture in the window of the footage."""
    image = stage(scene.head, scene.standing, "", foot)
    left, top, width, height = WINDOW
    image[top : top + height, left : left + width] = fitted(loaded(held.path), (width, height))
    return image


def _shares(seconds: Fraction, count: int, begin: Fraction) -> list[Fraction]:
    """The times at which one of so many points gives way to the next."""
    return [begin + seconds * number / count for number in range(1, count)]
