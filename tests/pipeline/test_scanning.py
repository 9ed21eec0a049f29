"""Footage time is not work time: scanned once, kept, and used by building, checking and logging."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import repeat
from pathlib import Path

import pytest

from procbuilder.keep.cache import Cache
from procbuilder.media import cuts, stillness, voice
from procbuilder.model.estimate import Basis
from procbuilder.model.footage import FootageSplit
from procbuilder.pipeline.check import check
from procbuilder.pipeline.material import Material
from procbuilder.pipeline.progress import silent
from procbuilder.pipeline.recordings import Recordings, filmed, known, read
from procbuilder.pipeline.scanning import Footage, scan, scanned
from procbuilder.pipeline.thorough import look_through
from procbuilder.publish.language import language_of
from procbuilder.read.procedure import read_procedure
from procbuilder.report.problems import filmed_line
from tests.media import filming
from tests.media.filming import Image, Track, scene

TEXT = """\
---
format: 1
number: P-1
recordings: {strip: strip.mp4}
---
# Cap – take off

## Work

### strip 0:00-0:04 Turn the cap {#turn}

### strip 0:04-0:12 Take off the cap {#cap}
SKIP
### Look at it {#look}
"""


def pictures() -> Iterator[Image]:
    """Four seconds of motion, four of nothing, and four of motion in another place."""
    yield from (scene(shift=4 * i) for i in range(100))
    yield from repeat(scene(shift=396), 100)
    yield from (255 - scene(shift=4 * i, blur=2)[::-1, ::-1] for i in range(100))


@pytest.fixture(scope="module")
def film(tmp_path_factory: pytest.TempPathFactory) -> Path:
    tags = (("creation_time", "2026-03-04T10:00:00Z"),)
    track = Track(gop=25, tags=tags, sound=(Fraction(12),))
    path = tmp_path_factory.mktemp("scanned") / "strip.mp4"
    return filming.film(path, filming.steady(12), pictures(), track)


@pytest.fixture
def folder(tmp_path: Path, film: Path) -> Path:
    (tmp_path / "strip.mp4").write_bytes(film.read_bytes())
    (tmp_path / "procedure.md").write_text(TEXT.replace("SKIP", ""), encoding="utf-8")
    return tmp_path


def opened(folder: Path) -> Material:
    cache = Cache(folder)
    procedure, problems = read_procedure(folder)
    assert problems == ()
    return Material(folder, procedure.steps, read(procedure, cache, silent), cache)


def scanned_now(folder: Path, thorough: bool = False) -> Footage:
    material = opened(folder)
    if thorough:
        look_through(material, silent)
    return scan(material, silent)


@pytest.fixture
def deaf(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is heard: the tone of the film would be noise all along."""
    monkeypatch.setattr(voice, "listen", lambda _: None)


@pytest.mark.usefixtures("deaf")
@pytest.mark.parametrize("thorough", [False, True])
def test_a_step_is_split_and_its_cut_found(folder: Path, thorough: bool) -> None:
    """Nothing moves from 0:04 to 0:08; key frames come each second, so that the ends are known to a second."""
    splits = scanned_now(folder, thorough).splits
    assert splits["turn"] == FootageSplit(Fraction(4), Fraction(0), Fraction(0))
    assert splits["cap"].cuts == 1
    assert splits["cap"].hands_on + splits["cap"].still == 8
    assert 3 <= splits["cap"].still <= 4
    assert "look" not in splits


def test_noise_is_work(folder: Path) -> None:
    """The tone all along is loud and no speech."""
    assert scanned_now(folder).splits["cap"].still == 0


@pytest.mark.usefixtures("deaf")
def test_what_is_skipped_is_in_no_second(folder: Path) -> None:
    text = TEXT.replace("SKIP", "\n- Skip: strip 0:05-0:06.500 | the phone rang\n")
    (folder / "procedure.md").write_text(text, encoding="utf-8")
    found = scanned_now(folder).splits["cap"]
    assert found.hands_on + found.talk + found.still == Fraction(13, 2)
    assert found.cuts == 2


def test_nothing_is_scanned_twice(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first = scanned_now(folder)
    for module, name in ((voice, "listen"), (stillness, "look"), (cuts, "cuts_within")):
        monkeypatch.setattr(module, name, lambda *_: pytest.fail("opened again"))
    assert scanned_now(folder) == first
    assert scanned(opened(folder)) == first


def test_what_was_found_thoroughly_is_used_from_then_on(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    whole = scanned_now(folder, thorough=True)
    monkeypatch.setattr(cuts, "cuts_within", lambda *_: pytest.fail("looked again"))
    assert scanned_now(folder) == whole


def test_check_never_decodes_and_says_so(folder: Path) -> None:
    """After a build nothing is unknown; when the times of a step change, its cuts are."""
    assert (check(folder).unread, check(folder).unscanned) == (("strip",), ())
    opened(folder)
    assert (check(folder).unread, check(folder).unscanned) == ((), ("strip",))
    scanned_now(folder)
    assert check(folder).unscanned == ()
    text = TEXT.replace("SKIP", "").replace("0:12", "0:11")
    (folder / "procedure.md").write_text(text, encoding="utf-8")
    assert check(folder).unscanned == ("strip",)


def test_the_clock_of_a_camera_is_for_the_terminal(folder: Path) -> None:
    """The date is in no record that is published."""
    recordings = opened(folder).recordings
    (noted,) = filmed(recordings)
    assert filmed_line(noted) == "strip: filmed 2026-03-04 10:00:00 to 10:00:12 UTC, by the clock of its camera"
    assert filmed_line(noted, language_of("de")) == (
        "strip: gefilmt am 04.03.2026, 10:00:00 bis 10:00:12 UTC, nach der Uhr der Kamera"
    )
    assert "2026" not in repr(recordings.facts)
    assert check(folder).filmed == filmed(recordings)
    assert filmed(Recordings()) == ()


def test_a_recording_that_breaks_off_is_told_by_others(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Scanning does not stop a build."""
    from procbuilder.model.fault import Cause, Unreadable

    def broken(path: Path) -> None:
        raise Unreadable(path, Cause.DAMAGED)

    monkeypatch.setattr(voice, "listen", broken)
    assert scanned_now(folder) == Footage({}, ("strip",))


def test_the_estimate_of_a_check_rests_on_the_scan(folder: Path) -> None:
    from procbuilder.infer.times import estimate

    material = opened(folder)
    scanned_now(folder)
    procedure, _ = read_procedure(folder)
    turn, cap, look = estimate(procedure, splits=scanned(material).splits).steps
    assert (turn.basis, cap.basis, look.basis) == (Basis.FOOTAGE, Basis.CUT, Basis.NOTHING)
    assert known(procedure, material.cache) == material.recordings
