"""Procedure folders over the real recordings of the shared media folder, and over small ones made here."""

import shutil
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import av
import numpy as np
import pytest

from tests.pipeline.text import WHOLE

SHARED_MEDIA = Path(__file__).parents[3] / "shared" / "media"


def film(
    path: Path, *, seconds: int = 4, rate: int = 10, size: tuple[int, int] = (320, 180), light: float = 1.0
) -> Path:
    """A recording of blocks that stand still while the light rises a little."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with av.open(path, "w") as container:
        stream = container.add_stream("libx264", rate=rate)
        blocks = (
            np.random.default_rng(1).integers(60, 180, (size[1] // 20, size[0] // 20, 3)).repeat(20, 0).repeat(20, 1)
        )
        stream.width, stream.height, stream.pix_fmt = *size, "yuv420p"
        for index in range(seconds * rate):
            lit = ((blocks + index * 20 // (seconds * rate)) * light).astype(np.uint8)
            frame = av.VideoFrame.from_ndarray(lit, format="rgb24")
            frame.pts, frame.time_base = index, Fraction(1, rate)
            container.mux(stream.encode(frame))
        container.mux(stream.encode())
    return path


@pytest.fixture
def folder(tmp_path: Path) -> Callable[[str], Path]:
    """Make a procedure folder with a recording of 4 s and the given text."""

    def make(text: str) -> Path:
        home = tmp_path / "hub"
        film(home / "recordings" / "strip.mp4")
        (home / "procedure.md").write_text(text, encoding="utf-8")
        return home

    return make


@pytest.fixture(scope="session")
def shared_media(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A procedure folder with copies of the real recordings."""
    if not SHARED_MEDIA.is_dir():
        pytest.skip("the shared media folder is not beside the repository")
    home = tmp_path_factory.mktemp("real")
    (home / "recordings").mkdir()
    for path in SHARED_MEDIA.iterdir():
        if path.suffix in (".mp4", ".webm"):
            shutil.copy(path, home / "recordings")
    return home


@pytest.fixture(scope="session")
def good(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """A sound recording of 4 s."""
    return film(tmp_path_factory.mktemp("film") / "good.mp4").read_bytes()


@pytest.fixture
def home(tmp_path: Path, good: bytes) -> Path:
    """A procedure folder without any problem."""
    folder = tmp_path / "hub"
    (folder / "recordings").mkdir(parents=True)
    (folder / "recordings" / "strip.mp4").write_bytes(good)
    (folder / "procedure.md").write_text(WHOLE, encoding="utf-8")
    return folder
