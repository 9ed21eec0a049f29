"""Looking through every picture of a step, beside what is found by looking for one thing at a time."""

from fractions import Fraction
from pathlib import Path

import pytest
from av.video.frame import VideoFrame

from procbuilder.media import sample, thorough
from procbuilder.media.cuts import cuts_within
from procbuilder.media.keyframe import finished
from procbuilder.media.look import Look, look
from procbuilder.media.probe import probe
from procbuilder.media.snap import snapped
from procbuilder.media.thorough import Seen, look_through
from procbuilder.model.footage import Bound, PacketFacts
from procbuilder.model.stretch import Stretch
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.filming import Image, Track

RATE = 10
WHOLE = Span("strip", Fraction(0), Fraction(20))


def _moving(number: int) -> Image:
    image = filming.scene()
    left = 70 + 37 * number % 120
    image[60:180, left : left + 90] = (150, 95, 45)
    return image


@pytest.fixture(scope="module")
def path(films: Path) -> Path:
    """Motion until 0:04, calm until 0:09, then another place until 0:20."""
    other = filming.scene()[::-1, ::-1].copy()
    images = [_moving(i) for i in range(40)] + [_moving(39)] * 50 + [other] * 110
    return filming.film(films / "through.mp4", [Fraction(i, RATE) for i in range(200)], images, Track(gop=RATE))


@pytest.fixture(scope="module")
def film(path: Path) -> PacketFacts:
    return probe(path, name="strip", shown="", sha256="").film


def _span(start: str, end: str) -> Span:
    return Span("strip", Fraction(start), Fraction(end))


@pytest.mark.parametrize("typed", [("1", "3.5"), ("3", "8"), ("5", "9.600"), ("2", "19"), ("0", "20")])
def test_it_finds_what_is_found_one_by_one(path: Path, film: PacketFacts, typed: tuple[str, str]) -> None:
    span = _span(*typed)
    seen = look_through(path, film, span, WHOLE, ())
    cuts = cuts_within(path, film, [Stretch(span.start, span.end)])
    assert seen.cuts == ((span, cuts),)
    assert seen.snapped == snapped(path, span, WHOLE, cuts)
    assert seen.choice.weak == finished(path, seen.snapped.span).weak


def test_the_ends_move_as_they_are_seen(path: Path, film: PacketFacts) -> None:
    """The action that is cut off at 0:03.5 comes to rest at 0:04; the other place at the end is left out."""
    assert look_through(path, film, _span("1", "3.500"), WHOLE, ()).snapped.ends is Bound.ACTION
    assert look_through(path, film, _span("5", "9.600"), WHOLE, ()).snapped.ends is Bound.SHOT


def _seen(
    path: Path, film: PacketFacts, monkeypatch: pytest.MonkeyPatch, span: Span, skips: tuple[Span, ...] = ()
) -> tuple[Seen, list[float], list[float]]:
    """What is seen, and the times of the pictures that are decoded and looked at for it."""
    decoded: list[float] = []
    looked: list[float] = []
    pictures = sample._pictures

    def noted(track, wanted, zero):  # type: ignore[no-untyped-def]  # as it is in the module
        for packet in filter(None, wanted):
            decoded.append(float(packet.pts * packet.time_base))
            yield from pictures(track, [packet], zero)

    def noted_look(time: Fraction, frame: VideoFrame) -> Look:
        looked.append(float(time))
        return look(time, frame)

    monkeypatch.setattr(sample, "_pictures", noted)
    monkeypatch.setattr(thorough, "look", noted_look)
    return look_through(path, film, span, WHOLE, skips), decoded, looked


@pytest.mark.parametrize(
    ("typed", "decoded"),
    [
        (("3", "18"), (1, 18.7)),  # something moves at the beginning, nothing at the end
        (("6", "16"), (5, 16.7)),  # nothing moves: no more than a cut is compared with, from a key frame on
        (("0", "3.5"), (0, 4.9)),  # something moves at the end and comes to rest
    ],
)
def test_no_picture_is_decoded_twice_or_without_need(
    path: Path,
    film: PacketFacts,
    monkeypatch: pytest.MonkeyPatch,
    typed: tuple[str, str],
    decoded: tuple[float, float],
) -> None:
    _, times, _ = _seen(path, film, monkeypatch, _span(*typed))
    assert len(times) == len(set(times))
    assert (min(times), max(times)) == decoded


def test_a_long_step_is_looked_at_now_and_then(path: Path, film: PacketFacts, monkeypatch: pytest.MonkeyPatch) -> None:
    """All of the first two seconds and of the last ten, between them one a second."""
    _, _, looked = _seen(path, film, monkeypatch, WHOLE)
    assert len(looked) == 20 + 8 + 100


def test_what_is_skipped_is_neither_decoded_nor_chosen(
    path: Path, film: PacketFacts, monkeypatch: pytest.MonkeyPatch
) -> None:
    skip = _span("8", "16")
    seen, decoded, _ = _seen(path, film, monkeypatch, _span("2", "17"), (skip,))
    assert [(part, cuts) for part, cuts in seen.cuts] == [(_span("2", "8"), ()), (_span("16", "17"), ())]
    assert not [time for time in decoded if 9.5 < time < 14]
    assert not skip.start <= seen.choice.time < skip.end
