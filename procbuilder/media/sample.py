"""Pictures of a stretch of footage, all of its end and a few of the rest, none decoded that is not needed."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import av
from av.packet import Packet
from av.stream import Stream
from av.video.frame import VideoFrame
from av.video.stream import VideoStream

from procbuilder.media.opening import only, opened, packets, picture_track, seek, time_zero
from procbuilder.model.fault import Cause, Unreadable
from procbuilder.model.timecode import Span

SPACING = Fraction(1, 16)
"""Pictures that follow closer than this many seconds tell nothing new."""
_FEW, _MOST_LOOKED_THROUGH = Fraction(1), 240
"""Seconds between the pictures of the part that is only looked through, and how many of a long one at most."""

_LOOK_BACK = Fraction(1, 2)
"""Seconds before the stretch from which it is read: key frames may be shown later than they are stored."""
_REORDERED = Fraction(1)
"""Seconds by which a packet may be stored behind one that is shown after it."""
_MOST_HELD = 600
"""Packets kept undecoded at a time; beyond that the pictures between two key frames are decoded as they come."""


def sampled(
    path: Path, span: Span, close: Fraction, earliest: Fraction | None = None
) -> Iterator[tuple[Fraction, VideoFrame]]:
    """Sound pictures of a span in order of time: from ``close`` on up to sixteen a second, before it key frames only.

    A group of pictures that reaches past ``close`` is decoded from its key frame on, and those pictures that are not
    before ``earliest`` (without it, the beginning of the span) are given too, since they have been decoded anyway.
    No picture is decoded twice, and of the groups before ``close`` only the key frame.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    earliest = span.start if earliest is None else earliest
    due = earliest
    for time, frame in decoded(path, span, close):
        if time >= span.end:
            return
        if time >= due and not frame.is_corrupt:
            due = time + SPACING
            yield time, frame


def decoded(path: Path, span: Span, close: Fraction) -> Iterator[tuple[Fraction, VideoFrame]]:
    """What has to be decoded to see the pictures of a span from ``close`` on, and of those before it one a second.

    It begins with the key frame of the group that holds ``close``, and may go on beyond the span.

    Raises:
        Unreadable: The file cannot be opened as a recording with pictures.
    """
    with opened(path) as container:
        track = picture_track(container)
        if track is None:
            raise Unreadable(path, Cause.NO_PICTURES)
        zero = time_zero(container)
        only(container, track)
        if span.start > _LOOK_BACK:
            seek(container, track, zero + span.start - _LOOK_BACK)
        for wanted in _wanted(packets(container, track), zero, span, close):
            yield from _pictures(track, wanted, zero)
        yield from _pictures(track, [None], zero)


def _wanted(
    stored: "Iterator[Packet[Stream]]", zero: Fraction, span: Span, close: Fraction
) -> "Iterator[Sequence[Packet[Stream]]]":
    """The packets to decode: whole groups that reach past ``close``, of others the key frame if one is due."""
    held: list[Packet[Stream]] = []
    whole, due, few = False, span.start, sparse(replace(span, end=max(span.start, close)))
    for packet in stored:
        time = _time(packet, zero)
        if time is None:
            continue
        if packet.is_keyframe:
            if held and not whole and (begin := _time(held[0], zero)) is not None and begin >= due:
                yield held[:1]
                due = begin + few
            held, whole = [], False
        if time >= span.end + (0 if packet.is_keyframe else _REORDERED):
            return
        held.append(packet)
        if whole or time > close or len(held) > _MOST_HELD:
            yield held
            held, whole = [], True
    if held and (begin := _time(held[0], zero)) is not None and begin >= due:
        yield held[:1]


def sparse(span: Span) -> Fraction:
    """Seconds between the pictures of a span that is only looked through."""
    return max(_FEW, span.seconds / _MOST_LOOKED_THROUGH)


def _time(packet: "Packet[Stream]", zero: Fraction) -> Fraction | None:
    stored = packet.pts if packet.pts is not None else packet.dts
    return None if stored is None or packet.time_base is None else stored * packet.time_base - zero


def _pictures(
    track: VideoStream, wanted: "Sequence[Packet[Stream] | None]", zero: Fraction
) -> Iterator[tuple[Fraction, VideoFrame]]:
    """Pictures that come out when these packets go in; None is the end."""
    for packet in wanted:
        try:
            frames = track.codec_context.decode(packet)
        except (av.FFmpegError, OSError):
            continue
        for frame in frames:
            stored = frame.pts if frame.pts is not None else frame.dts
            base = frame.time_base or track.time_base
            if stored is not None and base is not None:
                yield stored * base - zero, frame
