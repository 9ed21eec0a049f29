"""The film of a whole procedure."""

from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import av
import cv2
import numpy as np
import pytest

from procbuilder.media.clips import ClipPart, Held
from procbuilder.media.film import FilmedScene, MadeFilm, make
from procbuilder.media.stage import WINDOW
from procbuilder.model.film import Card, CardLine, Scene, Style
from procbuilder.model.marks import Box, HiddenPath
from procbuilder.model.origin import Place
from procbuilder.model.timecode import Span
from tests.media import filming
from tests.media.filming import Image, Track, number_of

LEFT, TOP, WIDTH, HEIGHT = WINDOW


def _card(title: str) -> Card:
    return Card((CardLine(Style.WHERE, "Step 1 of 2"), CardLine(Style.TITLE, title)))


def _scene(title: str, *points: str, after: tuple[Card, ...] = ()) -> Scene:
    return Scene(title, (_card(title),), title, title, "Still dangerous: DANGER the trailer falls", points, after)


def _part(path: Path, start: Fraction | int, end: Fraction | int, *hidden: HiddenPath) -> ClipPart:
    return ClipPart(path, Span("strip", Fraction(start), Fraction(end)), hidden=hidden)


def _frames(path: Path) -> list[tuple[Fraction, Image]]:
    with av.open(str(path)) as container:
        return [
            (frame.pts * frame.time_base, frame.to_ndarray(format="bgr24").astype(np.uint8, copy=False))
            for frame in container.decode(video=0)
            if frame.pts is not None and frame.time_base is not None
        ]


def _window(image: Image, width: int, height: int) -> Image:
    """What of the window a recording of this shape fills."""
    share = min(WIDTH / width, HEIGHT / height)
    wide, high = round(width * share), round(height * share)
    left, top = LEFT + (WIDTH - wide) // 2, TOP + (HEIGHT - high) // 2
    return np.ascontiguousarray(image[top : top + high, left : left + wide])


def _make(target: Path, *scenes: FilmedScene, audible: bool = False) -> MadeFilm:
    return make(scenes, "P-1 · revision A", target, audible=audible)


def test_film_keeps_the_times_of_a_variable_rate(uneven: Path, tmp_path: Path) -> None:
    """After three seconds of card each picture appears when it did on film, and is that of the recording."""
    times = filming.uneven(80)
    start, end = times[10], times[40]
    made = _make(tmp_path / "film.mp4", FilmedScene(_scene("Turn"), (), (_part(uneven, start, end),)))
    assert made.seconds == 3 + end - start
    assert made.footage == (3,)
    found = {number_of(_window(image, 320, 240)): time for time, image in _frames(tmp_path / "film.mp4") if time >= 3}
    shown = [i for i in range(10, 40) if times[i + 1] - times[i] >= Fraction(1, 40)]
    assert set(shown) <= set(found) <= set(range(10, 40))
    assert all(abs(found[i] - 3 - (times[i] - start)) <= Fraction(1, 45_000) for i in shown)


def test_film_shows_a_recording_filmed_upright_upright(turned: Path, tmp_path: Path) -> None:
    """240 by 320 in the middle of the window, with black at both sides, and every picture in its turn."""
    _make(tmp_path / "film.mp4", FilmedScene(_scene("Turn"), (), (_part(turned, 0, 1),)))
    shown = [image for time, image in _frames(tmp_path / "film.mp4") if time >= 3]
    upright = [_window(image, 240, 320) for image in shown]
    assert [number_of(np.ascontiguousarray(np.rot90(image, -1))) for image in upright] == list(range(25))
    assert shown[0][TOP : TOP + HEIGHT, LEFT : LEFT + 200].max() < 24


def test_film_has_a_chapter_a_scene(even: Path, tmp_path: Path) -> None:
    """Read back by another way than they were written: as the player sees them."""
    scenes = [
        FilmedScene(Scene("P-1 – Title", (_card("Title"),))),
        FilmedScene(_scene("1  Take off the wheel"), (), (_part(even, 0, 1),)),
        FilmedScene(Scene("2  Fill the system", (Card((CardLine(Style.STOP, "Stop: done by a gas fitter"),)),))),
    ]
    made = _make(tmp_path / "film.mp4", *scenes)
    with av.open(str(tmp_path / "film.mp4")) as container:
        read = [(c["start"] * (c["time_base"] or 0), c["metadata"]["title"]) for c in container.chapters()]
        assert container.duration is not None
        assert container.duration / 1e6 == pytest.approx(float(made.seconds), abs=0.01)
    assert read == [(0, "P-1 – Title"), (3, "1  Take off the wheel"), (7, "2  Fill the system")]
    assert [(chapter.start, chapter.title) for chapter in made.chapters] == read
    assert made.seconds == 10


def test_film_holds_the_marked_picture_before_the_footage(even: Path, tmp_path: Path) -> None:
    """The picture file fills the window for its seconds; the footage begins after it."""
    board = np.tile(np.array([[40, 210], [210, 40]], np.uint8).repeat(60, 0).repeat(60, 1), (3, 4))
    cv2.imwrite(str(tmp_path / "held.png"), np.dstack([board] * 3))
    held = (Held(tmp_path / "held.png", Fraction(2)),)
    made = _make(tmp_path / "film.mp4", FilmedScene(_scene("Turn"), held, (_part(even, 1, 2),)))
    assert (made.seconds, made.footage) == (6, (5,))
    frames = _frames(tmp_path / "film.mp4")
    wanted = cv2.resize(board, (744, 558), interpolation=cv2.INTER_CUBIC).astype(int)
    still = [_window(image, 480, 360)[:, :, 1] for time, image in frames if 3 <= time < 5]
    assert len(still) == 8
    assert max(np.abs(image.astype(int) - wanted).mean() for image in still) < 5
    after = [number_of(_window(image, 320, 240)) for time, image in frames if time >= 5]
    assert after == list(range(25, 50))


def test_film_sound_is_that_of_the_footage_and_cards_are_silent(even: Path, turned: Path, tmp_path: Path) -> None:
    """Twice a tone of one second, with silence as long as the card, and nothing under a recording without sound."""
    parts = {"One": _part(even, 1, 2), "Two": _part(even, 2, 3), "Mute": _part(turned, 0, 1)}
    scenes = [FilmedScene(_scene(title), (), (part,)) for title, part in parts.items()]
    made = _make(tmp_path / "film.mp4", *scenes, audible=True)
    with av.open(str(tmp_path / "film.mp4")) as container:
        samples = np.concatenate([frame.to_ndarray().ravel() for frame in container.decode(audio=0)])
    assert len(samples) / 48_000 == pytest.approx(float(made.seconds), abs=0.05)
    loud = [np.abs(samples[round(t * 48_000) :][:24_000]).max() for t in (1, 3.25, 5, 7.25, 9, 11.25)]
    assert [level > 0.2 for level in loud] == [False, True, False, True, False, False]
    tone = samples[round(3.1 * 48_000) : round(3.9 * 48_000)]
    assert np.abs(np.fft.rfft(tone)).argmax() / 0.8 == pytest.approx(440, abs=3)


def test_film_sound_is_levelled_as_that_of_clips_is(
    even: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each stretch by the gain of its own speech, and by nothing else."""
    loud: list[float] = []
    for factor in (1.0, 0.5):
        monkeypatch.setattr("procbuilder.media.film.gain", lambda _, factor=factor: np.float32(factor))
        _make(tmp_path / "film.mp4", FilmedScene(_scene("One"), (), (_part(even, 1, 2),)), audible=True)
        with av.open(str(tmp_path / "film.mp4")) as container:
            samples = np.concatenate([frame.to_ndarray().ravel() for frame in container.decode(audio=0)])
        loud.append(float(np.sqrt(np.mean(samples[round(3.1 * 48_000) : round(3.9 * 48_000)] ** 2))))
    assert loud[1] / loud[0] == pytest.approx(0.5, abs=0.03)


def test_film_tells_the_points_one_after_the_other(even: Path, tmp_path: Path) -> None:
    """Two points share two seconds of footage: the words below it change after one."""
    _make(
        tmp_path / "film.mp4", FilmedScene(_scene("Turn", "keep it level", "push at the rim"), (), (_part(even, 0, 2),))
    )
    below = {time: image[TOP + HEIGHT :].astype(int) for time, image in _frames(tmp_path / "film.mp4")}
    shown = [(time, words) for time, words in below.items() if time >= 3]
    changes = [other for (_, one), (other, words) in pairwise(shown) if np.abs(one - words).mean() > 2]
    assert changes == [4]
    assert min(image.max() for time, image in below.items() if time >= 3) > 200


def test_film_ends_a_scene_with_its_hold_point(even: Path, tmp_path: Path) -> None:
    after = (Card((CardLine(Style.STOP, "HOLD: stand firm – by a second person"),)),)
    made = _make(tmp_path / "film.mp4", FilmedScene(_scene("Raise", after=after), (), (_part(even, 0, 1),)))
    assert made.seconds == 3 + 1 + after[0].seconds
    last = _frames(tmp_path / "film.mp4")[-1][1]
    assert (last > 200).all(axis=2).sum() > 5000


def test_film_hides_a_region_for_good(films: Path, tmp_path: Path) -> None:
    """Two recordings that differ only in small print inside the box give films that cannot be told apart."""
    results = []
    for text in ("KV 51", "MB 73"):
        image = np.full((360, 640, 3), 200, np.uint8)
        cv2.putText(image, text, (180, 200), cv2.FONT_HERSHEY_SIMPLEX, 3, (0, 0, 0), 8)
        path = filming.film(films / f"{text[:2]}.mp4", filming.steady(1), [image] * 25, Track(size=(640, 360)))
        hidden = HiddenPath(Place("procedure.md", 1), "strip", ((Fraction(0), Box(0.25, 0.25, 0.85, 0.65)),))
        _make(tmp_path / "film.mp4", FilmedScene(_scene("Turn"), (), (_part(path, 0, 1, hidden),)))
        results.append([image for time, image in _frames(tmp_path / "film.mp4") if time >= 3])
    differences = [np.abs(a.astype(int) - b).max() for a, b in zip(*results, strict=True)]
    assert max(differences) < 40
    edges = [cv2.Sobel(cv2.cvtColor(image, cv2.COLOR_BGR2GRAY), cv2.CV_32F, 1, 0) for image in results[0]]
    assert max(np.abs(edge[TOP + 150 : TOP + 350, LEFT + 270 : LEFT + 830]).max() for edge in edges) < 40


def test_film_of_the_same_scenes_has_the_same_bytes(even: Path, tmp_path: Path) -> None:
    for name in ("one.mp4", "two.mp4"):
        _make(tmp_path / name, FilmedScene(_scene("Turn", "keep it level"), (), (_part(even, 0, 1),)), audible=True)
    assert (tmp_path / "one.mp4").read_bytes() == (tmp_path / "two.mp4").read_bytes()


def test_film_keeps_to_what_was_planned_when_a_recording_ends_early(even: Path, tmp_path: Path) -> None:
    """Of two seconds only the first is there: the last picture stands still for the other."""
    made = _make(tmp_path / "film.mp4", FilmedScene(_scene("Turn"), (), (_part(even, 3, 5),)), audible=True)
    assert made.seconds == 5
    frames = _frames(tmp_path / "film.mp4")
    assert number_of(_window(frames[-1][1], 320, 240)) == 99
