"""The key frame of filmed steps."""

from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from av.video.frame import VideoFrame

from procbuilder.media import keyframe
from procbuilder.media.keyframe import as_found, finished
from procbuilder.media.look import Look, look
from procbuilder.model.footage import Why
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.filming import Image, Track

RATE = 10


def _film(films: Path, name: str, images: list[Image]) -> tuple[Path, Span]:
    times = [Fraction(i, RATE) for i in range(len(images))]
    path = filming.film(films / f"{name}.mp4", times, images, Track(gop=RATE))
    return path, Span("strip", Fraction(0), Fraction(len(images), RATE))


def _done() -> Image:
    image = filming.scene()
    image[80:160, 120:200] = (30, 60, 190)
    return image


def _hand(image: Image, reach: int, top: int = 90) -> Image:
    """A plain glove and its arm, reaching in from the right."""
    reached = image.copy()
    reached[top : top + 60, 320 - reach :] = (150, 95, 45)
    return reached


def _looked_at(monkeypatch: pytest.MonkeyPatch) -> list[Fraction]:
    """Fills with the times of the pictures that are looked at."""
    times: list[Fraction] = []

    def noted(time: Fraction, frame: VideoFrame) -> Look:
        times.append(time)
        return look(time, frame)

    monkeypatch.setattr(keyframe, "look", noted)
    return times


def _work(count: int) -> list[Image]:
    return [_hand(filming.scene(), 130 + round(30 * float(np.sin(i)))) for i in range(count)]


def _coming(image: Image) -> list[Image]:
    return [_hand(image, reach) for reach in range(20, 200, 40)]


def _going(image: Image) -> list[Image]:
    return list(reversed(_coming(image)))


def test_the_pause_after_the_work_is_taken(films: Path) -> None:
    """Still before the work, then a hand at work, finished, then a swing away."""
    away = [filming.scene(blur=3, shift=25 * i) for i in range(1, 6)]
    path, span = _film(films, "pause", [filming.scene()] * 10 + _work(30) + _going(_done()) + [_done()] * 20 + away)
    chosen = finished(path, span)
    assert Fraction(9, 2) <= chosen.time < Fraction(13, 2)
    assert chosen.weak == ()
    assert chosen.reason.why is Why.CALM


def test_a_hand_that_comes_back_is_not_taken(films: Path) -> None:
    back = _coming(_done()) + [_hand(_done(), 190)] * 8
    path, span = _film(films, "back", [filming.scene()] * 10 + _work(30) + _going(_done()) + [_done()] * 15 + back)
    chosen = finished(path, span)
    assert Fraction(9, 2) <= chosen.time < Fraction(6)
    assert chosen.reason.why is Why.BEFORE_COVERED


def _soft_hand(image: Image) -> Image:
    """A large sleeve out of focus: it has fainter outlines than the stones behind it."""
    reached = image.copy()
    reached[60:200, 150:] = (120, 118, 122)
    soft = filming.blurred(reached, 8)
    return np.where(np.any(reached != image, axis=2, keepdims=True), soft, image)


def test_what_is_again_as_it_was_at_the_beginning_has_nothing_in_front(films: Path) -> None:
    """The hand that rested before it has the fainter outline, and its moment lasts longer."""
    resting = [_soft_hand(_done())] * 30
    path, span = _film(films, "again", [_done()] * 8 + resting + _going(_done()) + [_done()] * 13)
    chosen = finished(path, span)
    assert chosen.time > span.end - Fraction(13, 10)
    assert chosen.weak == ()


def _worked(ground: Image) -> list[Image]:
    """Nothing, then a glove that comes and works on."""
    return [ground] * 8 + _coming(ground) + _work_on(ground, 30)


def _work_on(ground: Image, count: int) -> list[Image]:
    return [_hand(ground, 190 + round(30 * float(np.sin(i)))) for i in range(count)]


@pytest.mark.parametrize("tenths", [12, 30])
def test_a_hand_that_stays_where_it_worked_is_told_however_long(films: Path, tenths: int) -> None:
    ground = (filming.scene() // 4 + 90).astype(np.uint8)
    rests, rest = _film(films, f"rests-{tenths}", _worked(ground) + [_hand(ground, 220)] * tenths)
    assert finished(rests, rest).weak == ("covered",)


@pytest.mark.parametrize(("tenths", "weak"), [(12, ("covered",)), (25, ())])
def test_a_part_held_up_beside_its_place_for_two_seconds_is_shown(
    films: Path, tenths: int, weak: tuple[str, ...]
) -> None:
    """Not more than three quarters of the working place are covered; for a second it is only on its way."""
    ground = (filming.scene() // 4 + 90).astype(np.uint8)
    bare = ground.copy()
    bare[100:140, 140:180] = (30, 32, 34)
    up = _hand(bare, 130, top=125)
    up[120:170, 175:215] = (30, 60, 190)
    path, span = _film(films, f"up-{tenths}", _worked(ground) + _going(bare) + [up] * tenths)
    assert finished(path, span).weak == weak
    assert finished(path, span).time > span.end - Fraction(tenths, 10)


def test_a_hand_that_rests_as_long_after_moving_about_shows_nothing(films: Path) -> None:
    ground = (filming.scene() // 4 + 90).astype(np.uint8)
    about = [_hand(ground, 190, 90 + round(40 * float(np.sin(i / 2)))) for i in range(30)]
    path, span = _film(films, "on", [ground] * 8 + _coming(ground) + about + [_hand(ground, 190)] * 25)
    assert finished(path, span).weak == ("covered",)


def test_what_was_fitted_is_not_taken_for_the_hand_that_fitted_it(films: Path) -> None:
    """A panel of another colour stands where the glove was, up to the edge of the picture."""
    ground = (filming.scene() // 4 + 90).astype(np.uint8)
    fitted = ground.copy()
    fitted[80:160, 130:] = (40, 190, 220)
    path, span = _film(films, "fitted", _worked(ground) + _going(fitted) + [fitted] * 12)
    assert finished(path, span).weak == ()


def test_another_place_at_the_beginning_is_no_ground_to_compare_with(films: Path) -> None:
    """The camera is turned to the work only after a second; all that differs since would be a hand."""
    ground = (filming.scene() // 4 + 90).astype(np.uint8)
    elsewhere = np.flip(ground).copy()
    images = [elsewhere] * 10 + _work_on(ground, 30) + _going(ground) + [ground] * 12
    path, span = _film(films, "elsewhere", images)
    assert finished(path, span).weak == ()


def test_a_step_out_of_focus_is_told(films: Path) -> None:
    path, span = _film(films, "soft", [filming.scene(blur=12)] * 20)
    assert finished(path, span).weak == ("blurred",)


def test_as_found_is_before_the_hand(films: Path) -> None:
    path, span = _film(films, "before", [filming.scene()] * 8 + _coming(filming.scene()) + _work(10))
    chosen = as_found(path, span)
    assert chosen.time < Fraction(8, 10)
    assert chosen.reason.why is Why.CALM


def test_skipped_stretches_are_left_out(films: Path) -> None:
    path, span = _film(films, "skipped", [filming.scene()] * 60)
    skips = (Span("strip", Fraction(3), Fraction(6)),)
    assert finished(path, span, skips=skips).time < 3


def test_coarse_to_fine(films: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of ten seconds all pictures of the last four are looked at, before that one a second."""
    path, span = _film(films, "coarse", [filming.scene()] * 100)
    times = _looked_at(monkeypatch)
    finished(path, span)
    assert len(times) == len(set(times)) == 40 + 6


def test_when_none_of_the_last_is_good_more_is_looked_at_but_nothing_twice(
    films: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The last five seconds of twenty are dark."""
    path, span = _film(films, "darkened", [filming.scene()] * 150 + [filming.scene(light=0.1)] * 50)
    times = _looked_at(monkeypatch)
    chosen = finished(path, span)
    assert len(times) == len(set(times)) == 50 + 15
    assert chosen.weak
