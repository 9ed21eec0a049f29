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
from procbuilder.media.limits import TOO_MANY, USUAL_PICTURES, beyond_usual, too_large
from procbuilder.media.opening import is_known, only, opened, packets, picture_track, sound_track, time_zero
from procbuilder.media.packets import Packets, Tally
from procbuilder.media.tonemap import SYSTEMS
from procbuilder.media.traces import traces
from procbuilder.model.fault import Beyond, Cause, Unreadable
from procbuilder.model.footage import Oddity, PacketFacts, Recording, Remark

_NOTICEABLE = Fraction(1, 2)
"""Seconds by which sound and picture, or header and file, may differ without a word."""


@dataclass(frozen=True, slots=True)
class Probed:
    """What one reading of all packets tells."""

    recording: Recording
    film: PacketFacts


def probe(path: Path, *, name: str, shown: str, sha256: str, thorough: bool = False) -> Probed:
    """Reads all packets of a recording once and says what it is.

    Time zero is where a player shows 0:00: the first picture or the first sound, whichever the container
    says is earlier. The duration is counted from there to the end of the last picture in the file, whatever
    the header claims.

    Args:
        path: The file.
        name: By which the procedure calls the recording.
        shown: Its path as it is printed.
        sha256: Of its content.
        thorough: Read it however many pictures it holds, and however large they are within what can be decoded.

    Raises:
        Unreadable: It is no recording with pictures, or none that can be decoded.
        Beyond: It is read only when ``thorough``.
    """
    with opened(path) as container:
        track, sound = picture_track(container), sound_track(container)
        if track is None:
            raise Unreadable(path, Cause.SOUND_ALONE if sound else Cause.NO_PICTURES)
        if not is_known(track):
            raise Unreadable(path, Cause.UNKNOWN_CODING)
        _refuse(path, track, thorough=thorough)
        zero = time_zero(container)
        tally = _count(
            path, container, *([track, sound] if sound else [track]), most=None if thorough else USUAL_PICTURES
        )
        pictures = tally[track.index]
        if not pictures.times:
            raise Unreadable(path, Cause.NOT_ONE_PICTURE)
        if pictures.ends(zero) <= 0:
            raise Unreadable(path, Cause.NO_TIME)
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
                *_of_length(container, track, pictures, heard, zero),
                *_of_sound(container, pictures, heard, zero),
                *_of_pictures(track, pictures, rotation),
                *_of_traces(container),
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


def _refuse(path: Path, track: VideoStream, *, thorough: bool) -> None:
    if why := too_large(track.width, track.height):
        raise Unreadable(path, Cause(why.form), **dict(why.facts))
    if not thorough and (why := beyond_usual(track.width, track.height)):
        raise Beyond(path, why)


def _count(path: Path, container: InputContainer, *tracks: Stream, most: int | None) -> dict[int, Tally]:
    """All packets of the tracks; of the first there may be at most so many."""
    only(container, *tracks)
    tallies = {track.index: Tally(track.time_base or Fraction(1)) for track in tracks}
    pictures = tallies[tracks[0].index]
    for packet in packets(container, *tracks):
        tallies[packet.stream_index].add(packet)
        if most is not None and len(pictures.times) > most:
            raise Beyond(path, TOO_MANY)
    return tallies


def _upright_size(track: VideoStream, rotation: int) -> tuple[int, int]:
    across, down = round(track.width * shape_of(track)), track.height
    return (down, across) if rotation in (90, 270) else (across, down)


def _variable(gaps: list[int]) -> bool:
    """More than one gap in a hundred, and more than one at all, differs by over a twentieth and a tick."""
    usual = median(gaps) if gaps else 0
    odd = sum(abs(gap - usual) > max(1, usual / 20) for gap in gaps)
    return odd > max(1, len(gaps) / 100)


def _of_length(
    container: InputContainer, track: VideoStream, pictures: Tally, heard: Tally | None, zero: Fraction
) -> list[Remark]:
    ends = pictures.ends(zero)
    if track.duration is not None:
        claimed = ((track.start_time or 0) + track.duration) * pictures.base - zero
    elif container.duration is not None:
        claimed = Fraction(container.duration, 1_000_000)
        ends = max(ends, heard.ends(zero)) if heard else ends
    else:
        return [Remark(Oddity.NO_LENGTH, (ends,))]
    return [Remark(Oddity.CUT_OFF, (claimed, ends))] if claimed - ends >= _NOTICEABLE else []


def _of_sound(container: InputContainer, pictures: Tally, heard: Tally | None, zero: Fraction) -> list[Remark]:
    if heard is None:
        return [Remark(Oddity.NO_SOUND)]
    tracks = len(container.streams.audio)
    apart = (
        (Oddity.SOUND_ENDS_EARLY, pictures.ends(zero) - heard.ends(zero)),
        (Oddity.SOUND_BEGINS_LATE, heard.starts(zero)),
        (Oddity.PICTURE_BEGINS_LATE, pictures.starts(zero)),
    )
    several = [Remark(Oddity.SOUND_TRACKS, (Fraction(tracks),))] if tracks > 1 else []
    return several + [Remark(oddity, (seconds,)) for oddity, seconds in apart if seconds >= _NOTICEABLE]


def _of_pictures(track: VideoStream, pictures: Tally, rotation: int) -> list[Remark]:
    remarks = []
    if _variable(gaps := pictures.gaps):
        remarks.append(Remark(Oddity.VARIABLE_RATE, tuple(1 / (gap * pictures.base) for gap in (max(gaps), min(gaps)))))
    if rotation:
        remarks.append(Remark(Oddity.TURNED, (Fraction(min(rotation, 360 - rotation)),)))
    if pictures.damaged:
        remarks.append(Remark(Oddity.DAMAGED, (Fraction(pictures.damaged), Fraction(len(pictures.times)))))
    if system := SYSTEMS.get(track.codec_context.color_trc):
        remarks.append(Remark(Oddity.HIGH_RANGE, names=(system,)))
    return remarks


def _of_traces(container: InputContainer) -> list[Remark]:
    found = traces(container)
    return [Remark(Oddity.TRACES, names=found)] if found else []
