"""Where nothing moves: held pictures between moving ones, before a camera that sways and with grain over all."""

from fractions import Fraction
from pathlib import Path

import av
import cv2
import numpy as np
import pytest

from procbuilder.media.cuts import SIZE, alike, small
from procbuilder.media.difference import Grey
from procbuilder.media.probe import probe
from procbuilder.media.stillness import look, motion
from procbuilder.model.footage import Looked
from procbuilder.model.stretch import Stretch, Stretches, seconds, shared
from tests.media import filming, montage
from tests.media.filming import Image, Track, scene
from tests.media.montage import RATE, filmed_by_hand


def looked(path: Path) -> Looked:
    return look(path, probe(path, name="strip", shown=path.name, sha256="abc").film)


def by_turns() -> tuple[list[Image], Stretches]:
    """Four seconds in which a hand works, four in which the picture is held, five times over; and those held."""
    shot = montage.demo("strip", 3)[1]
    frames: list[Image] = []
    held = []
    for _ in range(5):
        frames += shot[:100]
        held.append(Stretch(Fraction(len(frames), RATE), Fraction(len(frames) + 100, RATE)))
        frames += [shot[99]] * 100
    return frames, tuple(held)


@pytest.mark.parametrize("encoder", montage.ENCODERS)
def test_held_pictures_are_still_and_a_working_hand_is_not(encoder: str, tmp_path: Path) -> None:
    """A phone at a constant bit rate and a program for cutting at constant quality are judged by other signs."""
    frames, held = by_turns()
    still = looked(montage.write(tmp_path / "turns.mp4", filmed_by_hand(frames, 4), encoder)).still
    both = seconds(shared(still, held))
    assert both / seconds(held) > Fraction(6, 10)
    assert both / seconds(still) > Fraction(9, 10)


def test_another_place_is_unlike(tmp_path: Path) -> None:
    """Between the key frames at 2.4 and 3.6 s the shot changes, at 3.0 s."""
    one, other = montage.demo("strip", 3)[:2]
    path = montage.write(tmp_path / "places.mp4", filmed_by_hand([*one[:75], *other[:75]], 4), "phone")
    (unlike,) = looked(path).unlike
    assert unlike.start <= 3 <= unlike.end
    assert unlike.seconds == Fraction(30, RATE)


@pytest.mark.parametrize(("encoder", "unlike"), [("phone", (Stretch(Fraction(3), Fraction(6)),)), ("export", ())])
def test_key_frames_far_apart_tell_of_places_alone(encoder: str, unlike: tuple[Stretch, ...], tmp_path: Path) -> None:
    """Three seconds apart, with the cut between; or there because of the cut, so that nothing lies between."""
    one, other = montage.demo("strip", 3)[:2]
    frames = filmed_by_hand([*one[:45], *other[:45]], 4)
    found = looked(montage.write(tmp_path / "seldom.mp4", frames, encoder, rate=10))
    assert found.unlike == unlike
    assert found.still == ()


def test_another_place_that_is_bright_where_the_first_was_is_unlike(tmp_path: Path) -> None:
    """Both lie under the same lamp, which is most of what two pictures have in common."""
    chance = np.random.default_rng(5)
    lamp = np.linspace(0, 120, 640)[None, :, None]
    one, other = (
        (lamp + cv2.resize(chance.uniform(0, 110, (18, 32)), (640, 360))[:, :, None].repeat(3, axis=2)).astype(np.uint8)
        for _ in range(2)
    )
    path = montage.write(tmp_path / "lamp.mp4", filmed_by_hand([*[one] * 75, *[other] * 75], 4), "phone")
    with av.open(str(path)) as container:
        pictures = [small(frame) for frame in container.decode(video=0)]
    assert alike(pictures[0], pictures[-1])
    (unlike,) = looked(path).unlike
    assert unlike.start <= 3 <= unlike.end


def test_sway_is_no_motion_but_a_moving_part_is() -> None:
    chance = np.random.default_rng(3)
    wide = cv2.GaussianBlur(chance.integers(0, 255, (110, 180)).astype(np.uint8), (0, 0), 3)

    def view(left: int, top: int) -> Grey:
        return wide[top : top + SIZE[1], left : left + SIZE[0]].astype(np.uint8)

    before, after = view(8, 8), view(11, 6)
    assert motion(before, after) < 2 < float(np.percentile(cv2.absdiff(before, after), 50))
    after[30:60, 60:100] = 255 - after[30:60, 60:100]
    assert motion(before, after) > 5


def test_slow_motion_is_motion_when_every_picture_is_a_key_frame(tmp_path: Path) -> None:
    """A part that turns so slowly that one picture hardly differs from the next."""
    images = (scene(shift=i) for i in range(100))
    path = filming.film(tmp_path / "intra.mp4", filming.steady(4), images, Track(gop=1))
    assert looked(path).still == ()
