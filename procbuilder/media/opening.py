"""Opening a recording: which of its tracks are used, and where its time begins."""

from collections.abc import Iterator
from contextlib import contextmanager
from fractions import Fraction
from pathlib import Path

import av
from av.audio.stream import AudioStream
from av.container import InputContainer
from av.packet import Packet
from av.stream import Discard, Disposition, Stream
from av.video.stream import VideoStream

from procbuilder.model.fault import Cause, Unreadable

_FORMATS = "mov,matroska,avi,mpegts,mpeg,asf,flv,gif,ogg,mp3,wav,flac,aac,aiff,caf,amr"
"""Formats that hold their own pictures or sound: none of them is a list that names other files."""

_OPTIONS = {"protocol_whitelist": "file", "format_whitelist": _FORMATS}


@contextmanager
def opened(path: Path) -> Iterator[InputContainer]:
    """Opens a file for reading and closes it again.

    Raises:
        Unreadable: It is missing, empty, a folder, or in no format of a recording.
    """
    try:
        container = av.open(f"file:{path}", mode="r", options=_OPTIONS, metadata_errors="replace")
    except (av.FFmpegError, OSError) as error:
        raise Unreadable(path, _why(path, error)) from None
    with container:
        yield container


def _why(path: Path, error: Exception) -> Cause:
    if isinstance(error, IsADirectoryError) or path.is_dir():
        return Cause.FOLDER
    if isinstance(error, FileNotFoundError):
        return Cause.MISSING
    if isinstance(error, PermissionError):
        return Cause.PERMISSION
    if path.stat().st_size == 0:
        return Cause.EMPTY
    with path.open("rb") as file:
        if file.read(12)[4:8] == b"ftyp":
            return Cause.CUT_OFF
    return Cause.NO_RECORDING


def picture_track(container: InputContainer) -> VideoStream | None:
    """The first track of moving pictures; a cover picture in a sound file is none."""
    tracks = (track for track in container.streams.video if not track.disposition & Disposition.attached_pic)
    return next(tracks, None)


def is_known(track: Stream) -> bool:
    """Whether there is a decoder for a track."""
    return track.codec_context is not None


def sound_track(container: InputContainer) -> AudioStream | None:
    """The first track of sound."""
    return next(iter(container.streams.audio), None)


def only(container: InputContainer, *wanted: Stream) -> None:
    """Passes over all other tracks, so that neither their size nor their damage matters."""
    for track in container.streams:
        if track not in wanted:
            track.discard = Discard.all


def packets(container: InputContainer, *tracks: Stream) -> "Iterator[Packet[Stream]]":
    """Packets of these tracks, the empty closing ones included, up to where the file can be read."""
    wanted = {track.index for track in tracks}
    try:
        # A damaged stream of FLV or MPEG can begin further tracks midway: PyAV then counts past its list of tracks.
        yield from (packet for packet in container.demux(tracks) if packet.stream_index in wanted)
    except (av.FFmpegError, OSError, IndexError):
        return


def seek(container: InputContainer, track: Stream, stored: Fraction) -> None:
    """Goes to the last key frame at or before a stored time, or stays at the beginning."""
    base = track.time_base or Fraction(1, av.time_base)
    try:
        container.seek(int(stored / base), stream=track)
    except (av.FFmpegError, OSError):
        return  # a format without an index: it is read from where it stands, which is its beginning


def time_zero(container: InputContainer) -> Fraction:
    """Stored time, in seconds, of the moment that a player shows as 0:00.

    It is where the container says that its first picture or its first sound starts, whichever is
    earlier; cameras and transmission formats often begin elsewhere than at zero. Sound stored before
    zero is the run-in of its encoder, which players leave out, and does not move the beginning.
    """
    picture, sound = picture_track(container), sound_track(container)
    starts = [_start(picture)] if picture else []
    if sound and (start := _start(sound)) is not None:
        starts.append(max(start, Fraction(0)))
    return min((start for start in starts if start is not None), default=Fraction(0))


def _start(track: Stream) -> Fraction | None:
    if track.start_time is None or track.time_base is None:
        return None
    return track.start_time * track.time_base
