"""Decoding pictures by the time at which they are shown, exactly, on constant and variable frame rate."""

from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache
from pathlib import Path

import av
import numpy as np
from av.container import InputContainer
from av.packet import Packet
from av.stream import Stream
from av.video.frame import VideoFrame
from av.video.reformatter import ColorRange, Colorspace
from av.video.stream import VideoStream

from procbuilder.media.colour import converted
from procbuilder.media.image import Image
from procbuilder.media.limits import OBLONG, plausible
from procbuilder.media.opening import only, opened, packets, picture_track, seek, time_zero
from procbuilder.model.fault import Cause, Unreadable

_LOOK_BACK = (Fraction(1, 2), Fraction(8), None)
"""Seconds before the wanted time at which decoding begins; None is the beginning of the file."""

_USUAL_LENGTH = Fraction(1, 25)
"""Seconds for which a picture is shown when neither the file nor a next picture says so."""


def frames(path: Path, start: Fraction, end: Fraction) -> Iterator[tuple[Fraction, VideoFrame]]:
    """Pictures that appear from ``start`` to before ``end``, as stored, each with its time.

    Times are seconds from 0:00 as a player shows it. Damaged pictures are passed over.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    for time, frame in _walk(path, start):
        if time >= end:
            return
        if time >= start:
            yield time, frame


def shown(path: Path, start: Fraction, end: Fraction) -> Iterator[tuple[Fraction, Fraction, VideoFrame]]:
    """Pictures on show from ``start`` to ``end``, without a gap, each with the times from and until.

    The first one is already on show at ``start``, or takes the place of a missing one. The last one is on
    show until ``end``, or until the recording ends.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    current: VideoFrame | None = None
    since = appeared = start
    for time, frame in _walk(path, start):
        if current is not None and time > since:
            yield since, min(time, end), current
            since = time
        if time >= end:
            return
        current, appeared = frame, time
    if current is not None and (until := min(appeared + _length(current), end)) > since:
        yield since, until, current


def picture_at(path: Path, time: Fraction) -> tuple[Fraction, Image]:
    """The picture on show at a time, upright and full size, and the time at which it appeared.

    It is the last one that appears at or before that time; before the first picture it is the first.

    Raises:
        Unreadable: No picture can be decoded there.
    """
    best: tuple[Fraction, VideoFrame] | None = None
    for appears, frame in _walk(path, time):
        if best is not None and appears > time:
            break
        best = appears, frame
    if best is None:
        raise Unreadable(path, Cause.NONE_AT, time)
    return best[0], upright(best[1], pixel_shape=pixel_shape(path))


def pixel_shape(path: Path) -> Fraction:
    """Width of a stored pixel divided by its height; 1 for nearly all recordings."""
    return _pixel_shape(path, path.stat().st_mtime_ns if path.exists() else 0)


@lru_cache
def _pixel_shape(path: Path, _changed: int) -> Fraction:
    """Looked up once: opening a long recording takes as long as decoding some pictures of it."""
    with opened(path) as container:
        track = picture_track(container)
        return shape_of(track) if track else Fraction(1)


def start_rotation(path: Path) -> int:
    """Degrees anticlockwise, 0 to 270, by which the first picture is turned to stand upright."""
    first = next(_walk(path, Fraction(0)), None)
    return _turns(first[1]) * 90 if first else 0


def shape_of(track: VideoStream) -> Fraction:
    """Width of a pixel of this track divided by its height; square where the header says something absurd."""
    shape = track.sample_aspect_ratio or Fraction(1)
    return shape if Fraction(1, OBLONG) <= shape <= OBLONG else Fraction(1)


def upright(frame: VideoFrame, width: int | None = None, *, pixel_shape: Fraction = Fraction(1)) -> Image:
    """A decoded picture as it is meant to be seen: turned upright, with square pixels.

    Args:
        frame: The picture as stored.
        width: Pixels across of the upright picture; without it, full size.
        pixel_shape: Width of a stored pixel divided by its height.
    """
    turns = _turns(frame)
    wide, high = upright_size(frame, pixel_shape)
    if width is not None:
        wide, high = width, max(round(Fraction(high * width, wide)), 1)
    across, down = (high, wide) if turns % 2 else (wide, high)
    plain = converted(frame, across, down, "bgr24")
    return np.ascontiguousarray(np.rot90(plain.to_ndarray(), turns), dtype=np.uint8)


def scaled(frame: VideoFrame, width: int, height: int) -> VideoFrame:
    """A decoded picture in the size and the colours (BT.709, limited range) of a clip, not turned."""
    return converted(frame, width, height, "yuv420p", Colorspace.ITU709, ColorRange.MPEG)


def _length(frame: VideoFrame) -> Fraction:
    """Seconds for which the last picture of a recording is shown."""
    return frame.duration * frame.time_base if frame.duration and frame.time_base else _USUAL_LENGTH


def _turns(frame: VideoFrame) -> int:
    return round(frame.rotation / 90) % 4


def upright_size(frame: VideoFrame, pixel_shape: Fraction) -> tuple[int, int]:
    """Width and height of a picture turned upright with square pixels."""
    across = max(round(frame.width * pixel_shape), 1)
    return (frame.height, across) if _turns(frame) % 2 else (across, frame.height)


def _walk(path: Path, start: Fraction) -> Iterator[tuple[Fraction, VideoFrame]]:
    """Pictures in the order in which they appear, from one at or before ``start`` if there is any."""
    for back in _LOOK_BACK:
        with opened(path) as container:
            track = picture_track(container)
            if track is None:
                raise Unreadable(path, Cause.NO_PICTURES)
            zero = time_zero(container)
            only(container, track)
            whole = back is None or start <= back
            if not whole and back is not None:
                seek(container, track, zero + start - back)
            pictures = _decoded(container, track, zero)
            first = next(pictures, None)
            if not whole and (first is None or first[0] > start):
                continue
            if first is not None:
                yield first
                yield from pictures
            return


def _decoded(container: InputContainer, track: VideoStream, zero: Fraction) -> Iterator[tuple[Fraction, VideoFrame]]:
    """Pictures with their times, which never go back; one that a damaged file puts before another is left out."""
    last: Fraction | None = None
    for packet in packets(container, track):
        for frame in pictures_of(packet):
            stored = frame.pts if frame.pts is not None else frame.dts
            if stored is None or frame.time_base is None:
                continue
            time = stored * frame.time_base - zero
            if last is None or time >= last:
                last = time
                yield time, frame


def pictures_of(packet: "Packet[Stream]") -> list[VideoFrame]:
    """What can be decoded of a packet; nothing of a damaged one."""
    try:
        return [
            frame for frame in packet.decode() if isinstance(frame, VideoFrame) and plausible(frame.width, frame.height)
        ]
    except (av.FFmpegError, OSError):
        return []
