"""What was published is not made again while nothing has changed, and is made again as soon as anything has."""

import os
import shutil
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from procbuilder.media import clips, keyframe, snap, stills
from procbuilder.model.edition import Edition
from procbuilder.pipeline import program, shipped
from procbuilder.pipeline.build import Options, build
from procbuilder.pipeline.outputs import TASK
from tests.pipeline.test_build import hashes

ODD = "\U0001f527"
"""A character that the PDF cannot print."""


@pytest.fixture
def unset(monkeypatch: pytest.MonkeyPatch) -> Callable[[], None]:
    """From when it is called, no page can be made."""

    def page(_edition: Edition, **_names: object) -> str:
        raise RuntimeError("made again")

    return lambda: monkeypatch.setattr("procbuilder.publish.html.page", page)


def test_nothing_is_made_while_nothing_changes(home: Path, unset: Callable[[], None]) -> None:
    source = home / "procedure.md"
    source.write_text(source.read_text(encoding="utf-8").replace("\n# ", f"\n# {ODD} ", 1), encoding="utf-8")
    first = build(home)
    before = hashes(first.out)
    unset()
    again = build(home)
    assert again.unprintable == first.unprintable == (ODD,)
    assert hashes(again.out) == before


@pytest.mark.parametrize("pattern", ["index.html", "procedure.pdf", "manifest.json", "media/*.mp4", "media/*.jpg"])
@pytest.mark.parametrize("harm", [Path.unlink, lambda path: path.write_bytes(path.read_bytes()[::-1])])
def test_a_file_that_was_deleted_or_altered_is_made_again(
    home: Path, pattern: str, harm: Callable[[Path], object]
) -> None:
    out = build(home).out
    before = hashes(out)
    harm(next(out.glob(pattern)))
    assert hashes(out) != before
    assert hashes(build(home).out) == before


def test_without_the_cache_all_is_made_again(home: Path, unset: Callable[[], None]) -> None:
    before = hashes(build(home).out)
    shutil.rmtree(home / ".procbuilder")
    assert hashes(build(home).out) == before
    shutil.rmtree(home / ".procbuilder")
    unset()
    with pytest.raises(RuntimeError, match="made again"):
        build(home)


def _other_words(home: Path, _patch: pytest.MonkeyPatch) -> None:
    source = home / "procedure.md"
    source.write_text(source.read_text(encoding="utf-8").replace("\n# ", "\n# Another ", 1), encoding="utf-8")


def _other_date(_home: Path, patch: pytest.MonkeyPatch) -> None:
    patch.setenv("SOURCE_DATE_EPOCH", "86400")


def _other_program(_home: Path, patch: pytest.MonkeyPatch) -> None:
    patch.setattr("procbuilder.pipeline.publishing.program", lambda: "another")


@pytest.mark.parametrize("change", [_other_words, _other_date, _other_program])
def test_other_input_and_another_program_make_it_again(
    home: Path, monkeypatch: pytest.MonkeyPatch, unset: Callable[[], None], change: Callable[..., None]
) -> None:
    build(home)
    unset()
    build(home)
    change(home, monkeypatch)
    with pytest.raises(RuntimeError, match="made again"):
        build(home)


def test_only_the_step_that_changed_is_opened_again(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Ends, key frame, still and clip of the second step; nothing of the first."""
    build(home)
    opened: list[tuple[str, Fraction]] = []

    def noted(module: ModuleType, name: str, begins: Callable[..., Fraction]) -> None:
        work = getattr(module, name)

        def call(*given: Any, **named: Any) -> Any:
            opened.append((name, begins(*given)))
            return work(*given, **named)

        monkeypatch.setattr(module, name, call)

    noted(snap, "snapped", lambda _path, span, *_: span.start)
    noted(keyframe, "finished", lambda _path, span: span.start)
    noted(stills, "still", lambda _path, time: time)
    noted(clips, "cut", lambda parts, *_: parts[0].span.start)
    source = home / "procedure.md"
    source.write_text(source.read_text(encoding="utf-8").replace("0:02-0:03.500", "0:02-0:03.400"), encoding="utf-8")
    build(home)
    assert {name for name, _ in opened} >= {"snapped", "finished", "cut"}
    assert all(begins >= 2 for _, begins in opened)


def test_a_task_that_is_asked_for_later_is_made(home: Path) -> None:
    build(home)
    assert (build(home, options=Options(also=(TASK,))).out / "procedure.dita").is_file()


def test_a_program_is_known_by_its_files_and_libraries(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package, libraries = tmp_path / "package", tmp_path / "site-packages"
    template = package / "shipped" / "templates" / "page.html"
    template.parent.mkdir(parents=True)
    libraries.mkdir()
    template.write_text("<p>")
    monkeypatch.setattr(program, "_PACKAGE", package)
    monkeypatch.setattr(shipped, "_PACKAGE", package)
    monkeypatch.setattr("sys.path", [str(tmp_path), str(libraries), str(tmp_path / "gone" / "site-packages")])
    told = {program.program()}
    (package / "cached.pyc").touch()
    assert {program.program()} == told
    os.utime(template, (1, 1))
    told.add(program.program())
    os.utime(libraries, (1, 1))
    told.add(program.program())
    assert len(told) == 3
