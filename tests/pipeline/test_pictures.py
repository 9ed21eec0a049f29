"""Pictures that the build chooses: weak ones are told, candidates are kept, thumbnails are made on demand."""

import json
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import cv2
import numpy as np
import pytest

from procbuilder.keep.cache import Cache
from procbuilder.model.edition import Edition
from procbuilder.model.footage import Bound, End, Move, Snapped
from procbuilder.model.marks import Box, HiddenPath
from procbuilder.model.origin import Place
from procbuilder.model.problem import Severity
from procbuilder.model.timecode import Span
from procbuilder.pipeline import material
from procbuilder.pipeline.build import build
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.moments import finished
from procbuilder.pipeline.progress import silent
from procbuilder.pipeline.recordings import RecordingFile, read
from procbuilder.pipeline.stills import thumbnail
from procbuilder.pipeline.thorough import look_through
from procbuilder.pipeline.trimming import trim
from procbuilder.publish.wording.problems import said
from procbuilder.publish.words import WEAK_PICTURE
from procbuilder.read.procedure import read_procedure
from tests.media import filming
from tests.pipeline.conftest import film

TEXT = "---\nrecordings: recordings/strip.mp4\n---\n# Belt\n\n## Strip\n\n### 0:00-0:04 Lift off the cover\n"


@pytest.fixture
def dark(tmp_path: Path) -> Path:
    """A procedure of one step that was filmed in the dark."""
    film(tmp_path / "recordings" / "strip.mp4", light=0.25)
    (tmp_path / "procedure.md").write_text(TEXT, encoding="utf-8")
    return tmp_path


def _material(folder: Path) -> Material:
    procedure, _ = read_procedure(folder)
    cache = Cache(folder)
    return Material(folder, procedure.steps, read(procedure, cache, silent), cache)


def _strip(material: Material) -> RecordingFile:
    (file,) = material.recordings.files
    return file


def _weak(edition: Edition) -> list[tuple[str, ...]]:
    return [figure.still.weak for figure in edition.sections[0].steps[0].figures]


def test_a_dark_picture_is_told_with_what_to_do_at_the_next_filming(dark: Path) -> None:
    built = build(dark)
    (problem,) = [problem for problem in built.problems if problem.rule == "weak-picture"]
    assert problem.severity is Severity.ADVICE
    assert said(problem).what.startswith('the picture of "Lift off the cover" is dark at strip 0:0')
    assert said(problem).instead == (
        'put a lamp on the finished part at the next filming, or choose a moment with "- Picture: time | what it shows"'
    )
    assert _weak(built.edition) == [("dark",)]
    assert f"{WEAK_PICTURE}: dark" in built.page.read_text(encoding="utf-8")


def test_a_good_picture_is_not_marked(folder: Callable[[str], Path]) -> None:
    built = build(folder(TEXT))
    assert _weak(built.edition) == [()]
    assert WEAK_PICTURE not in built.page.read_text(encoding="utf-8")


def test_a_choice_comes_back_from_the_cache_with_its_candidates(
    folder: Callable[[str], Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    home, span = folder(TEXT), Span("strip", Fraction(0), Fraction(4))
    material = _material(home)
    first = finished(span, (), _strip(material), material.cache)
    monkeypatch.setattr("procbuilder.media.keyframe.finished", None)
    assert finished(span, (), _strip(material), Cache(home)) == first
    assert first.candidates


def test_what_was_looked_through_is_not_looked_for_again(
    folder: Callable[[str], Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its choice is another than that among some pictures, and serves from then on."""
    material = _material(folder(TEXT))
    (step,) = material.steps
    (span,) = step.spans
    before = finished(span, (), _strip(material), material.cache)
    look_through(material, silent)
    for name in ("thorough.look_through", "snap.snapped", "keyframe.finished"):
        monkeypatch.setattr(f"procbuilder.media.{name}", lambda *_: pytest.fail("looked again"))
    look_through(material, silent)
    assert trim([step], material, {}, silent)[step.id].ends == (Snapped(span, span),)
    assert len(finished(span, (), _strip(material), material.cache).candidates) >= len(before.candidates)


def test_a_thumbnail_is_small_and_hides_what_is_hidden(folder: Callable[[str], Path]) -> None:
    home = folder(TEXT)
    material = _material(home)
    whole = HiddenPath(Place("procedure.md", 1), "strip", ((Fraction(0), Box(0.0, 0.0, 1.0, 1.0)),))
    bare, hidden = (thumbnail("strip", Fraction(1), boxes, material) for boxes in ((), (whole,)))
    assert bare
    assert hidden
    plain, blurred = (cv2.imread(str(path)) for path in (bare, hidden))
    assert plain is not None
    assert blurred is not None
    assert plain.shape == (180, 320, 3)
    assert plain.std() > 2 * blurred.std()
    assert thumbnail("strip", Fraction(99), (), material) is None


def _scenes(path: Path, seconds: tuple[Fraction, ...]) -> None:
    """Shots of other places, one after the other, each for so many seconds."""
    rate, images = 10, []
    for shot, length in enumerate(seconds):
        blocks = np.random.default_rng(shot).integers(40, 210, (9, 16, 3), dtype=np.uint8).repeat(20, 0).repeat(20, 1)
        images += [blocks] * int(length * rate)
    path.parent.mkdir(parents=True)
    times = [Fraction(index, rate) for index in range(len(images))]
    filming.film(path, times, images, filming.Track(size=(320, 180)))


CUT = "---\nrecordings: recordings/strip.mp4\n---\n# Belt\n\n## Strip\n\n### 0:01-0:06 Lift off the cover\n"


def test_a_typed_end_in_the_next_shot_is_moved_for_clip_and_picture_and_told(tmp_path: Path) -> None:
    _scenes(tmp_path / "recordings" / "strip.mp4", (Fraction(5), Fraction(3)))
    (tmp_path / "procedure.md").write_text(CUT, encoding="utf-8")
    built = build(tmp_path)
    (step,) = built.edition.sections[0].steps
    assert step.clip
    assert step.clip.moved == (Move(End.END, Fraction(-1), Bound.SHOT),)
    assert step.clip.seconds == pytest.approx(4, abs=0.11)
    assert step.figures[0].still.reason.moves == step.clip.moved
    assert (step.figures[0].still.time or 99) < 5
    assert "Clip ends 1 s earlier than typed, where its shot ends." in built.page.read_text(encoding="utf-8")
    assert json.loads((built.out / "edition.json").read_text())["sections"][0]["steps"][0]["clip"]["moved"]
    assert step.spans == (Span("strip", Fraction(1), Fraction(6)),)
    assert (tmp_path / "procedure.md").read_text(encoding="utf-8") == CUT


def test_a_step_with_something_hidden_never_shows_more_than_was_typed(
    folder: Callable[[str], Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    rooms: list[Span] = []

    def noted(_path: Path, span: Span, room: Span, _cuts: object) -> Snapped:
        rooms.append(room)
        return Snapped(span, span)

    monkeypatch.setattr("procbuilder.media.snap.snapped", noted)
    text = TEXT.replace("0:00-0:04", "0:01-0:03")
    for hide in ("", "\n- Hide: 0:01 0.1,0.1,0.2,0.2\n"):
        material = _material(folder(text + hide))
        trim(material.steps, material, {}, silent)
    assert rooms == [Span("strip", Fraction(0), Fraction(4)), Span("strip", Fraction(1), Fraction(3))]


def test_all_pictures_together_take_no_more_than_their_budget(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A page of one file carries them all; a few more steps do not make them anew."""
    noise = np.random.default_rng(1).integers(0, 256, (720, 1280, 3), dtype=np.uint8)
    (home / "noise.png").write_bytes(cv2.imencode(".png", noise)[1].tobytes())
    text = (home / "procedure.md").read_text(encoding="utf-8")
    (home / "procedure.md").write_text(text.replace("- Off: belt", "- Picture: noise.png | cover\n- Off: belt", 1))
    large = _stills(build(home).out)
    monkeypatch.setattr(material, "STILL_BYTES", 600_000)
    small = _stills(build(home).out)
    assert large > 700_000
    assert small < 600_000
    assert len((home / "out" / "phone.html").read_bytes()) < 4 / 3 * small + 600_000


def _stills(out: Path) -> int:
    return sum(path.stat().st_size for path in (out / "media").glob("still-*.jpg"))
