"""Typed times moved to where the action begins and ends, on filmed steps whose times are known."""

from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest

from procbuilder.media import sample
from procbuilder.media.snap import at_cuts, settles, snapped
from procbuilder.model.footage import Bound, Cut, End, Move, Snapped
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.filming import Image, Track

RATE = 10
BEGINS, ENDS, WHOLE = Fraction(3, 2), Fraction(7, 2), Fraction(6)


def _span(start: str, end: str) -> Span:
    return Span("strip", Fraction(start), Fraction(end))


def _moving(number: int) -> Image:
    image = filming.scene()
    left = 70 + 37 * number % 120
    image[60:180, left : left + 90] = (150, 95, 45)
    return image


def _film(films: Path, name: str, after: Image) -> Path:
    """Something moves from ``BEGINS`` to ``ENDS``, before and after that nothing."""
    images = [filming.scene()] * 15 + [_moving(i) for i in range(20)] + [after] * 25
    return filming.film(films / f"{name}.mp4", [Fraction(i, RATE) for i in range(60)], images, Track(gop=RATE))


@pytest.fixture(scope="module")
def action(films: Path) -> Path:
    return _film(films, "action", _moving(19))


def test_an_action_that_was_cut_off_is_shown_from_half_a_second_before_to_half_a_second_after_it(action: Path) -> None:
    found = snapped(action, _span("2", "3"), _span("0", "6"), ())
    assert float(found.span.start) == pytest.approx(float(BEGINS) - 0.5, abs=0.2)
    assert float(found.span.end) == pytest.approx(float(ENDS) + 0.5, abs=0.2)
    assert (found.begins, found.ends) == (Bound.ACTION, Bound.ACTION)


@pytest.mark.parametrize(
    ("typed", "room"),
    [
        (("0.5", "5"), ("0", "6")),  # nothing moves at either end
        (("2", "3"), ("2", "3")),  # other steps lie on both sides
        (("2", "3"), ("1.4", "3.7")),  # too little room to see that it rests
    ],
)
def test_without_clear_evidence_nothing_moves(action: Path, typed: tuple[str, str], room: tuple[str, str]) -> None:
    span = _span(*typed)
    assert snapped(action, span, _span(*room), ()) == Snapped(span, span)


def test_an_action_that_goes_on_for_longer_does_not_move_the_end(films: Path) -> None:
    images = [filming.scene()] * 5 + [_moving(i) for i in range(55)]
    path = filming.film(films / "longer.mp4", [Fraction(i, RATE) for i in range(60)], images)
    assert snapped(path, _span("0", "3"), _span("0", "6"), ()).moves == ()


def test_the_calm_of_another_shot_is_not_the_end_of_the_action(films: Path) -> None:
    other = np.ascontiguousarray(filming.scene()[::-1, ::-1])
    path = _film(films, "other", other)
    assert snapped(path, _span("0", "3"), _span("0", "6"), ()).moves == ()


@pytest.mark.parametrize(
    ("typed", "decoded"),
    [
        (("1", "5"), 7 + 11),  # calm at both ends: 0:01 to 0:01.6, and from the key frame at 0:04 to 0:05
        (("2", "5"), 7 + 20 + 11),  # something moves at the beginning: the two groups of ten before it as well
    ],
)
def test_no_more_is_decoded_than_it_takes_to_tell(
    action: Path, monkeypatch: pytest.MonkeyPatch, typed: tuple[str, str], decoded: int
) -> None:
    """And no picture twice."""
    handed: list[object] = []
    decode = sample._pictures

    def counted(track, wanted, zero):  # type: ignore[no-untyped-def]  # as it is in the module
        for packet in filter(None, wanted):
            handed.append(packet.pts)
            yield from decode(track, [packet], zero)

    monkeypatch.setattr(sample, "_pictures", counted)
    snapped(action, _span(*typed), _span("0", "6"), ())
    assert len(set(handed)) == len(handed) == decoded


def test_what_another_shot_shows_at_the_ends_is_left_out() -> None:
    found = at_cuts(_span("10", "20"), [Cut(Fraction("10.8")), Cut(Fraction("19.5"))])
    assert found.span == _span("10.8", "19.5")
    assert found.moves == (
        Move(End.BEGINNING, Fraction("0.8"), Bound.SHOT),
        Move(End.END, Fraction("-0.5"), Bound.SHOT),
    )


def test_a_cut_must_change_the_picture_all_round(films: Path) -> None:
    """A large hand that comes within one picture changes two sides of it."""
    hand = filming.scene()
    hand[60:, 100:] = (150, 95, 45)
    other = np.ascontiguousarray(filming.scene()[::-1, ::-1])
    times = [Fraction(i, RATE) for i in range(60)]
    reached = filming.film(films / "reached.mp4", times, [filming.scene()] * 8 + [hand] * 52)
    swapped = filming.film(films / "swapped.mp4", times, [filming.scene()] * 8 + [other] * 52)
    span, cuts = _span("0", "6"), [Cut(Fraction(8, RATE))]
    assert snapped(reached, span, span, cuts).moves == ()
    assert snapped(swapped, span, span, cuts).moves == (Move(End.BEGINNING, Fraction(8, RATE), Bound.SHOT),)


@pytest.mark.parametrize(
    "cuts",
    [
        [Cut(Fraction("10.8"), jump=True)],
        [Cut(Fraction("10.4")), Cut(Fraction("11.2"))],
        [Cut(Fraction("11.6")), Cut(Fraction("18.4"))],
        [Cut(Fraction(10)), Cut(Fraction(20))],
        [Cut(Fraction("10.02")), Cut(Fraction("19.98"))],
    ],
    ids=["the same place", "two at one end", "too far", "at the typed times", "within a picture of them"],
)
def test_other_cuts_move_nothing(cuts: list[Cut]) -> None:
    assert at_cuts(_span("10", "20"), cuts).moves == ()


def test_a_cut_takes_no_more_than_a_quarter_of_a_short_step() -> None:
    assert at_cuts(_span("10", "14"), [Cut(Fraction("11.2"))]).moves == ()


def test_what_moves_must_move_all_the_time_and_rest_for_half_a_second() -> None:
    def paces(inside: str, outside: str) -> list[tuple[Fraction, bool]]:
        """Ten a second, ``.`` for calm and ``m`` for motion."""
        marks = inside + outside
        return [(Fraction(i - len(inside), 10), mark == ".") for i, mark in enumerate(marks)]

    assert settles(paces("mmm", "mmm......")) == Fraction(8, 10)
    assert settles(paces("mm.", "mmm......")) is None
    assert settles(paces("mmm", "mmm..m...")) is None
    assert settles(paces("mmm", "mmm...")) is None
