"""What is kept of a recording is made anew when the text of what makes it changes, and only then."""

import shutil
import sys
from importlib.metadata import version
from pathlib import Path

import pytest

from procbuilder.pipeline import clips, film, moments, program, recordings, scanning, stills, trimming
from procbuilder.pipeline.program import LIBRARIES, key_of_text, made_by
from tests.test_layers import MODULES, imports, room_of

PACKAGE = Path(program.__file__).parent.parent

KEPT = {
    recordings: ("media/probe.py", "media/packets.py", "model/footage.py", "keep/records.py"),
    scanning: ("media/voice.py", "media/stillness.py", "media/cuts.py"),
    trimming: ("media/snap.py", "media/difference.py"),
    moments: ("media/keyframe.py", "media/front.py"),
    stills: ("media/stills.py", "media/drawing.py", "media/lettering.py", "model/marking.py"),
    clips: ("media/clips.py", "media/encode.py", "media/damage.py"),
    film: ("media/film.py", "media/cards.py", "model/film.py"),
}
"""Modules that keep results, and some of those on which the results depend, however far they are away."""


@pytest.fixture
def package(tmp_path: Path) -> Path:
    """A copy of the program that can be changed."""
    copy = tmp_path / "procbuilder"
    shutil.copytree(PACKAGE, copy, ignore=shutil.ignore_patterns("__pycache__", "data", "locale"))
    return copy


@pytest.mark.parametrize(("module", "parts"), KEPT.items(), ids=lambda each: getattr(each, "__name__", ""))
def test_a_byte_in_what_makes_it_changes_the_key(package: Path, module: object, parts: tuple[str, ...]) -> None:
    name = str(getattr(module, "__name__", ""))
    keys = {key_of_text((name,), package)}
    for part in (*parts, f"{name.removeprefix('procbuilder.').replace('.', '/')}.py"):
        with (package / part).open("a") as text:
            text.write("#")
        keys.add(key_of_text((name,), package))
    assert len(keys) == len(parts) + 2


@pytest.mark.parametrize("module", KEPT, ids=lambda each: each.__name__)
def test_what_is_published_or_inferred_changes_no_key(package: Path, module: object) -> None:
    name = str(getattr(module, "__name__", ""))
    before = key_of_text((name,), package)
    others = [path for room in ("publish", "infer", "check", "read", "edit") for path in (package / room).rglob("*.py")]
    for path in [*others, package / "pipeline" / "outputs.py", package / "pipeline" / "build.py"]:
        path.write_text(path.read_text(encoding="utf-8") + "#", encoding="utf-8")
    assert key_of_text((name,), package) == before


def test_what_a_picture_of_the_end_rests_on_is_not_what_the_sound_rests_on(package: Path) -> None:
    """A cut is found without the code that draws a mark."""
    before = key_of_text((scanning.__name__,), package)
    (package / "media" / "drawing.py").write_text("")
    assert key_of_text((scanning.__name__,), package) == before


def test_the_versions_of_all_libraries_of_the_media_are_part_of_it() -> None:
    """Names of the packages: the requirements of the project."""
    named = {name.partition(".")[0] for path in MODULES if room_of(path) == "media" for name in imports(path)}
    assert named - {"procbuilder"} - sys.stdlib_module_names <= set(LIBRARIES)
    told = made_by(stills.__name__)
    for package in LIBRARIES.values():
        assert f" {package.replace('-', '_')}-{version(package)}" in told
        assert package in (PACKAGE.parent / "pyproject.toml").read_text(encoding="utf-8")
