"""Facts of a recording, measured on the file itself without decoding it."""

from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from statistics import median

from av.container import InputContainer
from av.stream import Stream
from av.video.stream import VideoStream

from procbuilder.media.camera import begun, speed
from procbuilder.media.decode import shape_of, start_rotation
from procbuilder.media.opening import is_known, only, opened, packets, picture_track, sound_track, time_zero
from procbuilder.media.packets import Packets, Tally
from procbuilder.media.tonemap import SYSTEMS
from procbuilder.media.traces import traces
from procbuilder.model.fault import Cause, Unreadable
from procbuilder.model.footage import PacketFacts, Recording
from procbuilder.model.timecode import format_time

_NOTICEABLE = Fraction(1, 2)
"""Seconds by which sound and picture, or header and file, may differ without a word."""


@dataclass(frozen=True, slots=True)
class Probed:
    """What one reading of all packets tells."""

    recording: Recording
    film: PacketFacts


def probe(path: Path, *, name: str, shown: str, sha256: str) -> Probed:
    """Reads all packets of a recording once and says what it is.

    Time zero is where a player shows 0:00: the first picture or the first sound, whichever the container
    says is earlier. The duration is counted from there to the end of the last picture in the file, whatever
    the header claims.

    Args:
        path: The file.
        name: By which the procedure calls the recording.
        shown: Its path as it is printed.
        sha256: Of its content.

    Raises:
        Unreadable: It is no recording with pictures.
    """
    with opened(path) as container:
        track, sound = picture_track(container), sound_track(container)
        if track is None:
            raise Unreadable(path, Cause.SOUND_ALONE if sound else Cause.NO_PICTURES)
        if not is_known(track):
            raise Unreadable(path, Cause.UNKNOWN_CODING)
        zero = time_zero(container)
        tally = _count(container, *([track, sound] if sound else [track]))
        pictures = tally[track.index]
        if not pictures.times:
            raise Unreadable(path, Cause.NOT_ONE_PICTURE)
        heard = tally[sound.index] if sound and tally[sound.index].times else None
        rotation = start_rotation(path)
        width, height = _upright_size(track, rotation)
        recording = Recording(
            name=name,
            path=shown,
            sha256=sha256,
            duration=pictures.ends(zero),
            width=width,
            height=height,
            rotation=rotation,
            codec=track.codec_context.name,
            pictures=len(pictures.times),
            variable_rate=_variable(pictures.gaps),
            audio=heard.ends(zero) - max(heard.starts(zero), Fraction(0)) if heard else None,
            remarks=(
                *_length_remarks(container, track, pictures, heard, zero),
                *_sound_remarks(container, pictures, heard, zero),
                *_picture_remarks(track, pictures, rotation),
                *_trace_remarks(container),
            ),
        )
        return Probed(recording, _film(container, track, Packets.of(pictures, zero, track.width * track.height)))


def _film(container: InputContainer, track: VideoStream, shown: Packets) -> PacketFacts:
    tags = {**track.metadata, **container.metadata}
    frozen, plain = shown.frozen()
    return PacketFacts(
        key_spacing=shown.key_spacing,
        spacing=shown.spacing,
        frozen=frozen,
        plain=plain,
        quiet=shown.quiet(),
        candidates=shown.candidates(),
        speed=speed(tags, 1 / shown.spacing if shown.spacing else None),
        begun=begun(tags, shown.end),
    )


def _count(container: InputContainer, *tracks: Stream) -> dict[int, Tally]:
    only(container, *tracks)
    tallies = {track.index: Tally(track.time_base or Fraction(1)) for track in tracks}
    for packet in packets(container, *tracks):
        tallies[packet.stream_index].add(packet)
    return tallies


def _upright_size(track: VideoStream, rotation: int) -> tuple[int, int]:
    across, down = round(track.width * shape_of(track)), track.height
    return (down, across) if rotation in (90, 270) else (across, down)


def _variable(gaps: list[int]) -> bool:
    """More than one gap in a hundred, and more than one at all, differs by over a twentieth and a tick."""
    usual = median(gaps) if gaps else 0
    odd = sum(abs(gap - usual) > max(1, usual / 20) for gap in gaps)
    return odd > max(1, len(gaps) / 100)


def _length_remarks(
    container: InputContainer, track: VideoStream, pictures: Tally, heard: Tally | None, zero: Fraction
) -> list[str]:
    ends = pictures.ends(zero)
    if track.duration is not None:
        claimed = ((track.start_time or 0) + track.duration) * pictures.base - zero
    elif container.duration is not None:
        claimed = Fraction(container.duration, 1_000_000)
        ends = max(ends, heard.ends(zero)) if heard else ends
    else:
        return [f"no length in its header; measured: {_tenths(ends)} s"]
    if claimed - ends < _NOTICEABLE:
        return []
    return [f"cut off: its header promises {_tenths(claimed)} s, but its pictures end at {format_time(_cut(ends))}"]


def _sound_remarks(container: InputContainer, pictures: Tally, heard: Tally | None, zero: Fraction) -> list[str]:
    if heard is None:
        return ["no sound, so nothing tells whether it runs at the speed of the work"]
    remarks = []
    if len(container.streams.audio) > 1:
        remarks.append(f"{len(container.streams.audio)} sound tracks; the first is used")
    if pictures.ends(zero) - heard.ends(zero) >= _NOTICEABLE:
        remarks.append(f"the sound ends {_tenths(pictures.ends(zero) - heard.ends(zero))} s before the picture")
    if heard.starts(zero) >= _NOTICEABLE:
        remarks.append(f"the sound begins {_tenths(heard.starts(zero))} s after the picture")
    if pictures.starts(zero) >= _NOTICEABLE:
        remarks.append(f"the picture begins {_tenths(pictures.starts(zero))} s after the sound")
    return remarks


def _picture_remarks(track: VideoStream, pictures: Tally, rotation: int) -> list[str]:
    remarks = []
    if _variable(gaps := pictures.gaps):
        slow, fast = (float(1 / (gap * pictures.base)) for gap in (max(gaps), min(gaps)))
        remarks.append(f"variable frame rate, {slow:.3g} to {fast:.3g} pictures a second")
    if rotation:
        remarks.append(f"filmed with the camera turned by {min(rotation, 360 - rotation)}°; shown upright")
    if pictures.damaged:
        remarks.append(f"{pictures.damaged} of {len(pictures.times)} pictures are damaged in the file")
    if system := SYSTEMS.get(track.codec_context.color_trc):
        remarks.append(f"filmed in high dynamic range ({system}); shown in the range of ordinary screens")
    return remarks


def _trace_remarks(container: InputContainer) -> list[str]:
    found = traces(container)
    return [f"removed from all that is published: {', '.join(found)}"] if found else []


def _tenths(seconds: Fraction) -> str:
    return f"{float(seconds):.1f}"


def _cut(seconds: Fraction) -> Fraction:
    """Whole seconds, so that the moment named is still in the recording."""
    return Fraction(int(seconds))
