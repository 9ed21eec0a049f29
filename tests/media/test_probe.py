"""What is said about a recording."""

import random
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.media.probe import probe
from procbuilder.model.fault import Unreadable
from procbuilder.model.footage import Oddity, Recording, Remark
from procbuilder.publish.filmed import remark
from procbuilder.publish.language import ENGLISH
from tests.media import filming
from tests.media.filming import SHARED, Track
from tests.refused import refused

SILENT = Remark(Oddity.NO_SOUND)


def _probe(path: Path) -> Recording:
    return probe(path, name="strip", shown=f"recordings/{path.name}", sha256="abc").recording


def test_probe_even_recording_says_what_it_is(even: Path) -> None:
    """Nothing is odd about a plain recording, and its names are passed through."""
    assert _probe(even) == Recording(
        name="strip",
        path="recordings/even.mp4",
        sha256="abc",
        duration=Fraction(4),
        width=320,
        height=240,
        rotation=0,
        codec="h264",
        pictures=100,
        variable_rate=False,
        audio=_probe(even).audio,
        remarks=(),
    )
    assert _probe(even).audio == pytest.approx(4, abs=0.03)


def test_probe_variable_rate_gives_the_span_of_rates(uneven: Path) -> None:
    """Gaps of 20 to 109 ms are 9 to 50 pictures a second."""
    found = _probe(uneven)
    assert found.variable_rate
    assert found.pictures == 80
    assert found.duration - filming.uneven(80)[-1] == pytest.approx(0.05, abs=0.06)
    silent, rates = found.remarks
    assert (silent, rates.oddity) == (SILENT, Oddity.VARIABLE_RATE)
    assert [round(float(rate), 2) for rate in rates.values] == [9.17, 50]


def test_probe_single_dropped_picture_is_no_variable_rate(films: Path) -> None:
    """A camera that loses one picture still films at a constant rate."""
    times = filming.steady(4)
    assert not _probe(filming.film(films / "dropped.mp4", [*times[:40], *times[41:]])).variable_rate


def test_probe_long_gop_counts_all_pictures(long_gop: Path) -> None:
    """B-frames are stored out of order; the last one stored is not the last one shown."""
    found = _probe(long_gop)
    assert (found.duration, found.pictures, found.variable_rate) == (Fraction(10), 250, False)


@pytest.mark.parametrize("count", [5, 6, 7, 8])
def test_probe_ends_with_the_last_picture_shown(films: Path, count: int) -> None:
    """Whichever of the last pictures is stored last."""
    path = filming.film(films / f"count{count}.mp4", filming.steady(1)[:count], track=Track(gop=250, b_frames=3))
    assert _probe(path).duration == Fraction(count, 25)


def test_probe_trimmed_recording_is_what_players_show(trimmed: Path) -> None:
    """Pictures before the cut are still in the file but do not count."""
    assert (_probe(trimmed).duration, _probe(trimmed).pictures) == (Fraction(8, 5), 40)


def test_probe_turned_recording_gives_the_size_as_shown(turned: Path) -> None:
    """Width and height are those of the upright picture."""
    found = _probe(turned)
    assert (found.rotation, found.width, found.height) == (90, 240, 320)
    assert Remark(Oddity.TURNED, (Fraction(90),)) in found.remarks


def test_probe_oblong_pixels_are_counted_as_shown(films: Path) -> None:
    """A camera that stores 320 pixels for 400 is shown 400 wide."""
    path = filming.film(films / "oblong.mp4", filming.steady(1), track=Track(pixel_shape=Fraction(5, 4)))
    assert (_probe(path).width, _probe(path).height) == (400, 240)


def test_probe_absurd_pixels_are_taken_as_square(films: Path) -> None:
    """A damaged header that makes pixels a thousand times as wide as high is not believed."""
    path = filming.film(films / "absurd.mp4", filming.steady(1), track=Track(pixel_shape=Fraction(1000)))
    assert (_probe(path).width, _probe(path).height) == (320, 240)


def test_probe_coding_without_a_decoder_is_said(films: Path) -> None:
    """Four letters name the coding of the pictures (ISO 14496-12, 8.5.2)."""
    path = films / "strange.mp4"
    path.write_bytes(filming.film(path, filming.steady(1)).read_bytes().replace(b"avc1", b"zzzz"))
    with refused(Unreadable, "its pictures are in a coding that is not known here"):
        _probe(path)


def test_probe_clock_that_does_not_begin_at_zero_is_no_length(late: Path) -> None:
    """Three seconds are three seconds wherever the clock of the file stands."""
    assert _probe(late).duration == Fraction(3)
    assert _probe(late).remarks == (SILENT,)


@pytest.mark.parametrize(
    ("sound", "remark"),
    [
        ((Fraction(1),), Remark(Oddity.SOUND_ENDS_EARLY, (Fraction(3),))),
        ((Fraction(4), Fraction(4)), Remark(Oddity.SOUND_TRACKS, (Fraction(2),))),
        ((), SILENT),
    ],
)
def test_probe_remarks_on_sound(films: Path, sound: tuple[Fraction, ...], remark: Remark) -> None:
    """What is odd about the sound is told."""
    path = filming.film(films / f"sound{len(sound)}.mp4", filming.steady(4), track=Track(sound=sound))
    (found,) = _probe(path).remarks
    assert found.oddity is remark.oddity
    assert [float(value) for value in found.values] == pytest.approx(
        [float(value) for value in remark.values], abs=0.05
    )


def test_probe_picture_that_begins_late_is_counted_from_the_sound(sound_first: Path) -> None:
    """A player shows 0:00 when the sound begins, so the picture's times count from there."""
    found = _probe(sound_first)
    assert found.duration == pytest.approx(3, abs=0.03)
    assert found.remarks == (Remark(Oddity.PICTURE_BEGINS_LATE, (Fraction(1),)),)


def test_probe_cut_off_recording_says_where_it_ends(long_gop: Path, films: Path) -> None:
    """The header of a file copied in part still promises its whole length."""
    path = films / "cut_off.mp4"
    path.write_bytes(long_gop.read_bytes()[: long_gop.stat().st_size * 6 // 10])
    found = _probe(path)
    assert 2 < found.duration < 8
    assert Remark(Oddity.CUT_OFF, (Fraction(10), found.duration)) in found.remarks


def test_probe_high_dynamic_range_is_said(films: Path) -> None:
    """Hybrid log-gamma has the transfer number 18 in ITU-T H.273."""
    path = filming.film(films / "hlg.mp4", filming.steady(1), track=Track(colours=(9, 18, 9)))
    assert Remark(Oddity.HIGH_RANGE, names=("HLG",)) in _probe(path).remarks


@pytest.mark.parametrize(
    ("tags", "kinds"),
    [
        # ISO 6709, as a phone of either kind writes it; keys of the QuickTime file format, user data and metadata
        ((("location", "+51.5000-000.1200/"),), ("location",)),
        (
            (
                ("com.apple.quicktime.location.ISO6709", "+51.5000-000.1200+012.300/"),
                ("com.apple.quicktime.make", "Camera works"),
                ("com.apple.quicktime.creationdate", "2031-05-06T07:08:09Z"),
            ),
            ("location", "device", "time-of-filming"),
        ),
        ((("artist", "a name"),), ("author",)),
        ((), ()),
    ],
)
def test_probe_says_what_is_left_behind_but_not_its_value(
    films: Path, tags: tuple[tuple[str, str], ...], kinds: tuple[str, ...]
) -> None:
    """Place, device, time and author are named as kinds only."""
    path = filming.film(films / f"tags{len(tags)}.mov", filming.steady(1), track=Track(tags=tags))
    assert _probe(path).remarks == (SILENT, *([Remark(Oddity.TRACES, names=kinds)] if kinds else []))


@pytest.mark.parametrize("claimed", [Fraction(1), Fraction(60)])
def test_probe_wrong_length_in_the_header_is_not_believed(films: Path, claimed: Fraction) -> None:
    """The track's length (ISO 14496-12, 8.4.2.3) says one second or a minute; there are pictures for four."""
    path = films / f"claims{claimed}.mp4"
    data = bytearray(filming.film(path, filming.steady(4)).read_bytes())
    at = data.index(b"mdhd") + 16
    ticks = int.from_bytes(data[at : at + 4], "big")
    data[at + 4 : at + 8] = int(claimed * ticks).to_bytes(4, "big")
    path.write_bytes(data)
    assert (_probe(path).duration, _probe(path).pictures) == (4, 100)
    assert _probe(path).remarks == (SILENT,)


def test_probe_missing_length_is_measured(films: Path) -> None:
    """A browser that records writes no length, since it does not know it yet."""
    path = filming.film(films / "live.mkv", filming.steady(2), track=Track(live=True))
    assert _probe(path).duration == pytest.approx(2, abs=0.05)
    assert Remark(Oddity.NO_LENGTH, (_probe(path).duration,)) in _probe(path).remarks


def test_probe_broken_sound_is_not_fatal(films: Path) -> None:
    """The pictures of a recording with a broken sound track are as good as ever."""
    path = filming.film(films / "broken_sound.mp4", filming.steady(2), track=Track(sound=(Fraction(2),)))
    assert _probe(filming.scramble(path, "audio")).pictures == 50


def _empty(path: Path) -> None:
    path.write_bytes(b"")


def _noise(path: Path) -> None:
    path.write_bytes(random.Random(2).randbytes(5000))


def _playlist(path: Path) -> None:
    path.write_text("#EXTM3U\n#EXTINF:1,\n/etc/hostname\n", encoding="utf-8")


def _text(path: Path) -> None:
    path.write_text("0:42 Prise off the dust cap\n" * 50, encoding="utf-8")


@pytest.mark.parametrize(
    ("make", "name", "why"),
    [
        (_empty, "empty.mp4", "the file is empty"),
        (_noise, "noise.mp4", "it is in no format of a recording that is known here"),
        (_playlist, "list.m3u8", "it is in no format of a recording that is known here"),
        (_text, "words.txt", "it is in no format of a recording that is known here"),
        (Path.mkdir, "folder.mp4", "it is a folder"),
        (filming.sound_only, "sound.m4a", "it has sound but no moving pictures"),
        (str, "missing.mp4", "there is no such file or folder"),
    ],
)
def test_probe_refuses_with_the_reason(tmp_path: Path, make: object, name: str, why: str) -> None:
    """Each kind of file that is no recording has its own sentence."""
    assert callable(make)
    make(tmp_path / name)
    with refused(Unreadable, rf"{name}: cannot be read as a recording \({why}\)"):
        _probe(tmp_path / name)


def test_probe_of_a_stream_cut_off_within_its_first_picture_says_so(films: Path) -> None:
    """ISO/IEC 13818-1 keeps no length of a picture: of a single one nobody knows how long it lasts."""
    path = filming.film(films / "one.ts", filming.steady(1)[:1])
    with refused(Unreadable, "its pictures last no time, so nothing can be shown of it"):
        _probe(path)


def test_probe_recording_without_its_index_says_that_the_end_is_missing(films: Path, tmp_path: Path) -> None:
    """A phone writes the index last; a copy that broke off lacks it."""
    path = filming.film(films / "index_last.mov", filming.steady(1))
    (tmp_path / "broken_off.mov").write_bytes(path.read_bytes()[:2000])
    with refused(Unreadable, "its end is missing, and with it the index of its pictures"):
        _probe(tmp_path / "broken_off.mov")


@pytest.mark.parametrize(
    ("name", "duration", "pictures", "rotation", "remarks"),
    [
        (
            "phone_vfr_rotated180.mp4",
            2.3798,
            25,
            180,
            (
                "variable frame rate, 9.99 to 12.5 pictures a second",
                "filmed with the camera turned by 180°; shown upright",
                "removed from all that is published: location, time of filming",
            ),
        ),
        (
            "no_duration_vfr.webm",
            4.938,
            74,
            0,
            (
                "no length in its header; measured: 4.9 s",
                "variable frame rate, 13.9 to 16.1 pictures a second",
            ),
        ),
        ("failing_audio.mp4", 11.2, 280, 0, ()),
    ],
)
def test_probe_real_clip(name: str, duration: float, pictures: int, rotation: int, remarks: tuple[str, ...]) -> None:
    """Real files with the habits of phones and browsers."""
    if not (SHARED / name).exists():
        pytest.skip(f"{name} is not in the shared media folder")
    found = _probe(SHARED / name)
    assert float(found.duration) == pytest.approx(duration, abs=0.001)
    assert (found.pictures, found.rotation) == (pictures, rotation)
    assert tuple(remark(each, ENGLISH) for each in found.remarks) == remarks
