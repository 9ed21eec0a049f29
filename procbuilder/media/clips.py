"""Cutting the clip of a step from one or several recordings."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain
from math import ceil
from pathlib import Path

import cv2
import numpy as np
from av.video.frame import VideoFrame

from procbuilder.media.colour import encodable
from procbuilder.media.decode import pixel_shape, scaled, shown, upright, upright_size
from procbuilder.media.encode import ClipFile
from procbuilder.media.hiding import hide
from procbuilder.media.image import Image
from procbuilder.media.loudness import levelled
from procbuilder.media.sound import RATE, Samples, sound
from procbuilder.media.stills import loaded
from procbuilder.media.stretches import kept
from procbuilder.model.fault import Cause, Unreadable
from procbuilder.model.marks import Box, HiddenPath
from procbuilder.model.timecode import Span

_LONG, _SHORT = 1280, 720
"""Pixels that the longer and the shorter side of a clip may have."""

_SPACING = Fraction(1, 40)
"""Seconds; a picture that follows sooner and goes sooner is left out, as most in slow-motion recordings are."""

_HOLD = Fraction(1, 4)
"""Seconds after which a held picture is written again."""

_NEARLY = Fraction(102, 100)
"""Ratio of two shapes that are taken as one."""

_NO_SAMPLES: Samples = np.zeros(0, dtype=np.float32)


@dataclass(frozen=True, slots=True)
class ClipPart:
    """A span of one recording that goes into a clip."""

    path: Path
    span: Span
    skips: tuple[Span, ...] = ()
    """Stretches that are left out."""
    hidden: tuple[HiddenPath, ...] = ()
    """Regions made unreadable; those of other recordings do not count."""


@dataclass(frozen=True, slots=True)
class Held:
    """A picture file that stands still for a while."""

    path: Path
    seconds: Fraction


@dataclass(frozen=True, slots=True)
class StoredPicture:
    """One picture of the footage as stored, and what must be done to it."""

    frame: VideoFrame
    shape: Fraction
    """Width of its pixels divided by their height."""
    boxes: tuple[Box, ...]
    """What is hidden in it."""
    stretch: Span
    """The uninterrupted footage it belongs to."""
    since: Fraction
    until: Fraction
    """Seconds of the recording for which it is on show."""


@dataclass(frozen=True, slots=True)
class _Shot:
    """One picture of the clip with the sound that goes with it."""

    frame: VideoFrame
    """In the colours and the size of the clip."""
    seconds: Fraction
    samples: Samples


def cut(
    parts: Sequence[ClipPart],
    target: Path,
    held: Sequence[Held] = (),
    damaged: Callable[[str, Fraction], None] = lambda *_: None,
) -> tuple[Fraction, int, int, bool]:
    """Writes one clip: first the held pictures, in silence, then the parts in their order.

    The clip is MP4 with H.264 pictures, upright, at most 1280 by 720 (720 by 1280 when filmed upright), with
    the times of the pictures as filmed; a part of another shape stands in the middle of the first one's.
    Sound is mono AAC, its speech at the level of EBU R 128, and is there only when each part has some that can be
    decoded. There is no metadata, and the same parts give the same bytes on the same platform. What cannot be
    decoded or is beyond the end is left out.

    Args:
        parts: Spans of recordings.
        target: Written over when it is there.
        held: Pictures that stand still before them.
        damaged: Called with recording and time of each picture that is damaged in the file and shown as it is.

    Returns:
        Seconds, width and height in pixels, and whether it has sound.

    Raises:
        Unreadable: A recording cannot be opened, or no picture of any part can be decoded.
        CannotWrite: The target cannot be written.
    """
    sounds = _sounds(parts)
    shots = _shots(parts, sounds, damaged)
    first = next(shots, None)
    if first is None:
        raise Unreadable(parts[0].path, Cause.NONE_WITHIN, parts[0].span)
    width, height = first.frame.width, first.frame.height
    still = (shot for each in held for shot in _held(each, (width, height)))
    with ClipFile(target, width, height, sound=sounds is not None) as file:
        for shot in chain(still, [first], shots):
            file.add(shot.frame, shot.seconds, shot.samples)
    return file.seconds, width, height, sounds is not None


def _held(held: Held, size: tuple[int, int]) -> Iterator[_Shot]:
    """The picture again and again, since not every player holds one for seconds."""
    drawn = encodable(fitted(loaded(held.path), size))
    count = ceil(held.seconds / _HOLD)
    seconds = held.seconds / count
    for _ in range(count):
        yield _Shot(drawn, seconds, np.zeros(round(seconds * RATE), dtype=np.float32))


def _sounds(parts: Sequence[ClipPart]) -> list[list[Samples]] | None:
    """Samples of each kept stretch of each part, levelled; None when there is a part that cannot be heard."""
    sounds = []
    for part in parts:
        stretches = kept(part.span, part.skips)
        heard = [sound(part.path, stretch.start, stretch.end) for stretch in stretches]
        if all(samples is None for samples in heard):
            return None
        filled = [_silence(stretch) if one is None else one for stretch, one in zip(stretches, heard, strict=True)]
        sounds.append(levelled(filled))
    return sounds


def _silence(stretch: Span) -> Samples:
    return np.zeros(round(stretch.seconds * RATE), dtype=np.float32)


def stored_pictures(part: ClipPart) -> Iterator[StoredPicture]:
    """The pictures of a part in order of time, skipped ones and those that are on show too shortly left out."""
    shape = pixel_shape(part.path)
    hidden = [path for path in part.hidden if path.recording == part.span.recording]
    for stretch in kept(part.span, part.skips):
        for since, until, frame in _thinned(part.path, stretch):
            boxes = tuple(box for path in hidden if (box := path.at(since, until)))
            yield StoredPicture(frame, shape, boxes, stretch, since, until)


def _shots(
    parts: Sequence[ClipPart], sounds: list[list[Samples]] | None, damaged: Callable[[str, Fraction], None]
) -> Iterator[_Shot]:
    size: tuple[int, int] | None = None
    for number, part in enumerate(parts):
        heard = dict(zip(kept(part.span, part.skips), sounds[number], strict=True)) if sounds else {}
        for picture in stored_pictures(part):
            if picture.frame.is_corrupt:
                damaged(picture.stretch.recording, picture.since)
            size = size or _clip_size(picture.frame, picture.shape)
            low, high = (round((time - picture.stretch.start) * RATE) for time in (picture.since, picture.until))
            samples = heard.get(picture.stretch, _NO_SAMPLES)[low:high]
            yield _Shot(_picture(picture, size), picture.until - picture.since, samples)


def _picture(picture: StoredPicture, size: tuple[int, int]) -> VideoFrame:
    """The picture of a clip: converted at once where nothing must be turned, framed or hidden."""
    frame, (width, height) = picture.frame, size
    if not picture.boxes and not frame.rotation and picture.shape == 1 and frame.width * height == frame.height * width:
        return scaled(frame, width, height)
    return encodable(image_of(picture, size))


def image_of(picture: StoredPicture, size: tuple[int, int]) -> Image:
    """The picture upright in the middle of a frame of this width and height, with what is hidden made unreadable."""
    image = _fitted(picture.frame, picture.shape, size)
    for box in picture.boxes:
        hide(image, box)
    return _framed(image, size)


def _thinned(path: Path, stretch: Span) -> Iterator[tuple[Fraction, Fraction, VideoFrame]]:
    """Pictures on show with their times, those left out that are on show too shortly."""
    held: tuple[Fraction, Fraction, VideoFrame] | None = None
    for since, until, frame in shown(path, stretch.start, stretch.end):
        if held is not None and since - held[0] < _SPACING and until - since < _SPACING:
            held = held[0], until, held[2]
            continue
        if held is not None:
            yield held
        held = since, until, frame
    if held is not None:
        yield held


def _clip_size(frame: VideoFrame, shape: Fraction) -> tuple[int, int]:
    """Even width and height of the clip, not larger than the picture."""
    width, height = upright_size(frame, shape)
    share = min(Fraction(1), Fraction(_LONG, max(width, height)), Fraction(_SHORT, min(width, height)))
    across = _even(int(width * share))
    return across, _even(round(Fraction(height * across, width)))


def _even(number: int) -> int:
    return max(number - number % 2, 2)


def _fitted(frame: VideoFrame, shape: Fraction, size: tuple[int, int]) -> Image:
    """The picture upright, as large as the clip allows; a nearly equal shape fills it and loses a pixel or two."""
    width, height = upright_size(frame, shape)
    less, more = sorted((Fraction(size[0], width), Fraction(size[1], height)))
    return upright(frame, ceil(width * (more if more / less < _NEARLY else less)), pixel_shape=shape)


def _framed(image: Image, size: tuple[int, int]) -> Image:
    """The picture in the middle of one of the clip's size, with black beside or above it."""
    width, height = size
    image = image[:height, :width]
    if image.shape[:2] == (height, width):
        return image
    frame = np.zeros((height, width, 3), dtype=np.uint8)
    top, left = (height - image.shape[0]) // 2, (width - image.shape[1]) // 2
    frame[top : top + image.shape[0], left : left + image.shape[1]] = image
    return frame


def fitted(image: Image, size: tuple[int, int]) -> Image:
    """A picture as large as a frame of this width and height allows, in its middle, with black around it."""
    height, width = image.shape[:2]
    share = min(Fraction(size[0], width), Fraction(size[1], height))
    scaled = (max(round(width * share), 1), max(round(height * share), 1))
    way = cv2.INTER_AREA if share < 1 else cv2.INTER_CUBIC
    return _framed(cv2.resize(image, scaled, interpolation=way).astype(np.uint8, copy=False), size)
