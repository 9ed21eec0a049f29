"""A build killed at any moment: a whole old or a whole new output after the next command."""

import os
import random
import shutil
import signal
import time
from contextlib import suppress
from pathlib import Path

import pytest

from procbuilder.edit.serve import output_of
from tests.pipeline.builder import Builder
from tests.pipeline.conftest import film
from tests.pipeline.text import WHOLE
from tests.pipeline.whole import faults, title

MOMENTS = 30

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="the system cannot split a process")


def write(home: Path, number: int) -> str:
    """Another text, so that page, PDF, data and each third time the clips differ; its title."""
    told = f"Belt cover {number}"
    text = WHOLE.replace("Drill belt cover – off and on", told)
    (home / "procedure.md").write_text(text.replace("0:03.500", f"0:03.{500 + number // 3}"), encoding="utf-8")
    return told


def wait(out: Path, chance: random.Random, whole: float, *, writing: bool) -> None:
    """Until some moment of a build of so many seconds, or until a few thousandths after it has begun to write."""
    if not writing:
        time.sleep(chance.uniform(0, whole))
        return
    before, end = out.stat().st_mtime_ns, time.monotonic() + 20
    while out.stat().st_mtime_ns == before and time.monotonic() < end:
        time.sleep(0.0002)
    time.sleep(chance.uniform(0, 0.03))


def test_a_build_killed_at_thirty_moments_leaves_old_or_new_whole(tmp_path: Path) -> None:
    """The next command that looks at the output is ``serve``; then the next build must succeed."""
    home, out, chance = tmp_path / "hub", tmp_path / "hub" / "out", random.Random(4)
    film(home / "recordings" / "strip.mp4")
    killed = 0
    with Builder() as builder:
        for number in (-2, -1):
            old = write(home, number)
            begun = time.monotonic()
            builder.begin(home)
            assert builder.end() == 0
            whole = time.monotonic() - begun
        for number in range(1, MOMENTS + 1):
            new = write(home, number)
            if number % 5 == 0:
                shutil.rmtree(home / ".procbuilder")
            child = builder.begin(home)
            wait(out, chance, whole, writing=number % 2 == 0)
            with suppress(ProcessLookupError):
                os.kill(child, signal.SIGKILL)
            killed += builder.end() == signal.SIGKILL
            assert output_of(home) == out
            assert (number, faults(out), title(out) in (old, new)) == (number, [], True)
            builder.begin(home)
            assert builder.end() == 0
            assert (number, faults(out), title(out)) == (number, [], new)
            assert not list(out.rglob(".new*"))
            old = new
    assert killed >= MOMENTS // 2
