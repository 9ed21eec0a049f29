"""High dynamic range on an ordinary screen: the formulas, and the table that stands in for them."""

import subprocess
from fractions import Fraction
from itertools import pairwise

import numpy as np
import pytest
from av.video.frame import VideoFrame

from procbuilder.media.tonemap import (
    DEEP,
    HLG,
    PQ,
    hlg_light,
    hlg_scene,
    ordinary,
    ordinary_signal,
    pq_light,
    tone_mapped,
)
from tests.media import coded


def _grey(value: float) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    return np.full(3, value)


def test_hlg_half_signal_is_a_twelfth_of_the_light() -> None:
    """ITU-R BT.2100-2, table 5: the square root gives way to the logarithm at E = 1/12, E' = 1/2; E' = 1 is E = 1."""
    assert hlg_scene(_grey(0.5)) == pytest.approx(1 / 12, abs=1e-12)
    assert hlg_scene(_grey(0.5 + 1e-9)) == pytest.approx(1 / 12, abs=1e-6)
    assert hlg_scene(_grey(1.0)) == pytest.approx(1, abs=1e-6)


@pytest.mark.parametrize(
    ("percent_hlg", "percent_pq", "light"),
    [(38, 38, 26), (75, 58, 203)],
)
def test_reference_levels(percent_hlg: int, percent_pq: int, light: int) -> None:
    """Report ITU-R BT.2408, table 1: grey card of 18 % and white of 100 %, both in whole per cent."""
    assert round(100 * coded.hlg_signal(_grey(light))[0]) == percent_hlg
    assert round(100 * coded.pq_signal(_grey(light))[0]) == percent_pq
    assert hlg_light(coded.hlg_signal(_grey(light))) == pytest.approx(light, rel=1e-6)
    assert pq_light(coded.pq_signal(_grey(light))) == pytest.approx(light, rel=1e-6)


def test_pq_ends() -> None:
    """ITU-R BT.2100-2, table 4: no signal is no light, full signal is 10 000 cd/m²."""
    assert pq_light(_grey(0.0)) == pytest.approx(0)
    assert pq_light(_grey(1.0)) == pytest.approx(10_000)


def test_grey_card_is_as_light_as_an_ordinary_camera_films_it() -> None:
    """The OETF of BT.709-6, item 1.2, gives an 18 % card 41 % of the signal: within two per cent of it."""
    camera = 1.099 * 0.18**0.45 - 0.099
    assert ordinary_signal(_grey(0.38), HLG) == pytest.approx(camera, abs=0.02)
    assert ordinary_signal(_grey(0.38), PQ) == pytest.approx(camera, abs=0.02)


def test_bright_parts_are_pressed_together_and_stay_apart() -> None:
    """Up to the full light of the display nothing is cut off; what is below nine tenths is left alone."""
    signals = [float(ordinary(_grey(light))[0]) for light in (100, 150, 203, 300, 500, 1000)]
    assert signals[:2] == pytest.approx([(light / 203) ** (1 / 2.4) for light in (100, 150)], rel=1e-3)
    assert all(one < other for one, other in pairwise(signals))
    assert 0.95 < signals[2] < 0.97
    assert signals[-1] < 1


def test_bright_colour_keeps_its_hue() -> None:
    """A red lamp of four times the white's light stays red."""
    lamp = coded.between(coded.BT709, coded.BT2020) @ [812, 203, 203]
    red, green, blue = ordinary(lamp)
    assert red == pytest.approx(1, abs=0.01)
    assert green == pytest.approx(blue, abs=0.002)
    assert green / red == pytest.approx(0.25 ** (1 / 2.4), abs=0.005)


@pytest.mark.parametrize("transfer", [HLG, PQ])
def test_table_gives_what_the_formulas_give(transfer: int) -> None:
    """A third of a grey level of 255 on average over colours that occur, and few colours are off by more than that."""
    chance = np.random.default_rng(4)
    colours = chance.random((90, 160, 3)) @ np.full((3, 3), 0.2) + 0.4 * chance.random((90, 160, 3))
    signal = np.rint(colours * (0.85 if transfer == HLG else 0.65) * 65535)
    frame = VideoFrame.from_ndarray(signal.astype(np.uint16), format=DEEP)
    frame.pts, frame.time_base = 0, Fraction(1, 25)
    found = tone_mapped(frame, transfer).to_ndarray() / 65535
    error = 255 * np.abs(found - ordinary_signal(signal / 65535, transfer))
    assert error.mean() < 0.35
    assert np.percentile(error, 99) < 6  # at the edge of the colours that a screen can show


@pytest.mark.parametrize("system", ["smpte2084", "arib-std-b67"])
def test_agrees_with_the_reference_library(system: str) -> None:
    """Reference: zimg, in the ffmpeg of the wheel imageio-ffmpeg, which turns an ordinary picture into high range.

    It applies the OOTF of HLG to each colour by itself, so only greys can be compared there.
    """
    ffmpeg = pytest.importorskip("imageio_ffmpeg").get_ffmpeg_exe()
    ramp = np.linspace(0, 220, 64, dtype=np.uint8)[None, :, None].repeat(36, 0).repeat(3, 2)
    image = ramp if system == "arib-std-b67" else coded.patched(0, 64, 36)[18:54].repeat(2, 0)[:36, :, ::-1].copy()
    change = f"zscale=pin=bt709:tin=bt709:min=gbr:rin=full:p=bt2020:t={system}:m=gbr:r=full:npl=203"
    deep = f"{change},format=gbrp16,format=rgb48le"
    raw = ["-f", "rawvideo", "-pix_fmt", "rgb24", "-s", "64x36", "-i", "-", "-vf", deep, "-f", "rawvideo", "-"]
    run = subprocess.run([ffmpeg, "-v", "error", *raw], input=image.tobytes(), capture_output=True, check=True)
    signal = np.frombuffer(run.stdout, "<u2").reshape(36, 64, 3) / 65535
    found = ordinary_signal(signal, PQ if system == "smpte2084" else HLG) * 255
    below_knee = image.max(axis=-1) < 0.89 * 255
    assert np.abs(found - image)[below_knee].mean() < 0.1
    assert np.abs(found - image)[below_knee].max() < 1
