"""Recordings, pictures and subtitles that cannot be used: one clear line each, and the text is published."""

import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from procbuilder.pipeline.build import build
from procbuilder.publish.wording.problems import said
from tests.media import filming
from tests.media.filming import sound_only
from tests.pipeline.bad import TITLE, run_build
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults, title


def _folder(path: Path, _good: bytes) -> None:
    path.unlink()
    path.mkdir()


def _link(path: Path, good: bytes) -> None:
    (outside := path.parents[2] / "outside.mp4").write_bytes(good)
    path.unlink()
    path.symlink_to(outside)


def _loop(path: Path, _good: bytes) -> None:
    path.unlink()
    path.symlink_to(path)


NO_FILM = "recordings/strip.mp4: cannot be read as a recording ({}) – play it once, or copy it again from the phone"


@pytest.mark.parametrize(
    ("spoil", "message"),
    [
        (lambda path, _good: path.unlink(),
         "recordings/strip.mp4 is not there – put the file at recordings/strip.mp4 in the procedure folder, "
         "or correct the path"),
        (lambda path, good: path.write_bytes(good[: len(good) // 2]),
         NO_FILM.format("its end is missing, and with it the index of its pictures")),
        (lambda path, _good: path.write_bytes(b""), NO_FILM.format("the file is empty")),
        (lambda path, _good: sound_only(path), NO_FILM.format("it has sound but no moving pictures")),
        (lambda path, _good: path.write_bytes(bytes(n * 7919 % 251 for n in range(9999))),
         NO_FILM.format("it is in no format of a recording that is known here")),
        (_folder,
         "recordings/strip.mp4 is a folder – put the file at recordings/strip.mp4 in the procedure folder, "
         "or correct the path"),
        (_link,
         "recordings/strip.mp4 leads out of the procedure folder – copy the file into the folder and name it there"),
        (_loop,
         "recordings/strip.mp4 cannot be a path: it is too long, leads back to itself or holds a NUL byte – "
         "name the file as the folder shows it"),
    ],
    ids=["missing", "cut off", "empty", "audio only", "random", "folder", "link out", "link to itself"],
)  # fmt: skip
def test_a_recording_that_cannot_be_used_is_one_line(
    home: Path, good: bytes, spoil: Callable[[Path, bytes], object], message: str
) -> None:
    spoil(home / "recordings" / "strip.mp4", good)
    assert run_build(home) == (1, [f"procedure.md:8: stop: {message}"])
    assert (faults(home / "out"), title(home / "out")) == ([], TITLE)


def test_damaged_pictures_are_told_with_their_time_each_time(home: Path) -> None:
    path = filming.film(home / "recordings" / "strip.mp4", filming.steady(4))
    filming.scramble(path, "video", (0.1, 0.2), keep=0.4)
    for _ in ("made", "from the cache"):
        (told,) = [problem for problem in build(home).problems if problem.rule == "damaged"]
        assert str(told.place) == "procedure.md:22"
        many = int(said(told).what.split(" ")[0])
        assert 3 < many < 25
        assert said(told).what == f"{many} pictures are damaged in recording strip at 0:00"
        assert said(told).instead == (
            "copy it again from the camera, or leave them out: - Skip: strip 0:00-0:01 | damaged"
        )


@pytest.mark.parametrize("field", ["recordings: {strip: PATH}", "narration: [PATH]", "- Picture: PATH | cover"])
@pytest.mark.parametrize("path", ["../outside.jpg", "/etc/outside.jpg", "recordings/../../outside.jpg"])
def test_a_path_out_of_the_folder_is_refused_wherever_it_is_typed(home: Path, field: str, path: str) -> None:
    line = field.replace("PATH", path)
    if field.startswith("-"):
        text = WHOLE.replace("- Off: belt", f"{line}\n- Off: belt")
    elif field.startswith("recordings"):
        text = WHOLE.replace("recordings: {strip: recordings/strip.mp4}", line)
    else:
        text = WHOLE.replace("author: demo", f"author: demo\n{line}")
    (home.parent / "outside.jpg").write_bytes(b"secret")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    told = [said(problem).what for problem in build(home).problems]
    assert told == [f"{path} leads out of the procedure folder"]
    published = (path.read_bytes() for path in (home / "out").rglob("*") if path.is_file())
    assert not any(b"secret" in data for data in published)


def test_a_name_that_no_disk_takes_is_a_problem(home: Path) -> None:
    (home / "procedure.md").write_text(WHOLE.replace("recordings/strip.mp4", "r" * 5000), encoding="utf-8")
    code, lines = run_build(home)
    assert (code, len(lines)) == (1, 1)
    assert lines[0].startswith(f"procedure.md:8: stop: {'r' * 60} cannot be a path: it is too long")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes in folders")
def test_a_pipe_in_the_place_of_a_recording_is_not_waited_for(home: Path) -> None:
    path = home / "recordings" / "strip.mp4"
    path.unlink()
    os.mkfifo(path)
    assert "recordings/strip.mp4 is not there" in run_build(home)[1][0]


def test_a_recording_that_the_system_does_not_let_us_read_is_a_problem(
    home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened = Path.open

    def closed(path: Path, *more: Any, **named: Any) -> Any:
        if path.name == "strip.mp4":
            raise PermissionError(13, "Permission denied")
        return opened(path, *more, **named)

    monkeypatch.setattr(Path, "open", closed)
    code, lines = run_build(home)
    assert code == 1
    assert lines[0].endswith(
        "recordings/strip.mp4: cannot be read (that is not permitted) – get the right to read it, or copy it here anew"
    )
    assert (faults(home / "out"), title(home / "out")) == ([], TITLE)
