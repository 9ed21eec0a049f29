"""The picture file of a step."""

import struct
from fractions import Fraction
from pathlib import Path

import cv2
import numpy as np
import pytest

from procbuilder.media.stills import fitted, still
from procbuilder.model.fault import CannotWrite, UnreadablePicture
from procbuilder.model.marks import Box, Mark, MarkShape, Picture, PictureState
from procbuilder.model.origin import Place
from tests.media import filming
from tests.media.filming import Image, number_of
from tests.refused import refused

HERE = Place("procedure.md", 1)
PLACE_NAME = b"workshop yard 51.5N"


def _picture(*, marks: tuple[Mark, ...] = (), hidden: tuple[Box, ...] = (), crop: Box | None = None) -> Picture:
    return Picture(HERE, "strip", None, "", "cap off", PictureState.DONE, marks, hidden, crop)


def _read(path: Path) -> Image:
    image = cv2.imread(str(path), cv2.IMREAD_COLOR | cv2.IMREAD_IGNORE_ORIENTATION)
    assert image is not None
    return image.astype(np.uint8, copy=False)


def _segments(data: bytes) -> list[int]:
    """Marker codes of a JPEG up to its picture data (ITU-T T.81, B.1.1.4)."""
    markers, at = [], 2
    while data[at + 1] != 0xDA:
        markers.append(data[at + 1])
        at += 2 + struct.unpack(">H", data[at + 2 : at + 4])[0]
    return markers


def _with_exif(image: Image, orientation: int) -> bytes:
    """A JPEG with an EXIF segment: orientation and a description (Exif 2.32, 4.6)."""
    entries = struct.pack(">HHIHH", 0x0112, 3, 1, orientation, 0)
    entries += struct.pack(">HHII", 0x010E, 2, len(PLACE_NAME), 38)
    tiff = b"MM\x00\x2a" + struct.pack(">I", 8) + struct.pack(">H", 2) + entries + struct.pack(">I", 0) + PLACE_NAME
    segment = b"Exif\x00\x00" + tiff
    jpeg = cv2.imencode(".jpg", image)[1].tobytes()
    return jpeg[:2] + b"\xff\xe1" + struct.pack(">H", len(segment) + 2) + segment + jpeg[2:]


def test_still_of_a_moment_shows_that_picture(uneven: Path, tmp_path: Path) -> None:
    """The number in the picture is that of the moment, and the size is returned."""
    target = tmp_path / "still.jpg"
    assert still(uneven, filming.uneven(80)[33], picture=None, target=target) == (320, 240)
    assert number_of(_read(target)) == 33


def test_still_stands_upright(turned: Path, tmp_path: Path) -> None:
    """Turned by the same quarter as the recording."""
    target = tmp_path / "still.jpg"
    assert still(turned, Fraction(1), picture=None, target=target) == (240, 320)
    assert number_of(np.rot90(_read(target), -1)) == 25


def test_still_has_no_metadata_and_the_same_bytes(even: Path, tmp_path: Path) -> None:
    """Only the JFIF header (0xE0), tables and frame header are there, and nothing depends on the day."""
    one, two = tmp_path / "one.jpg", tmp_path / "two.jpg"
    for target in (one, two):
        still(even, Fraction(1), picture=None, target=target)
    assert one.read_bytes() == two.read_bytes()
    assert set(_segments(one.read_bytes())) <= {0xE0, 0xDB, 0xC0, 0xC4}


@pytest.mark.parametrize("orientation", [1, 3, 6, 8])
def test_still_of_a_photo_is_turned_and_stripped(tmp_path: Path, orientation: int) -> None:
    """Quarter turns clockwise by EXIF orientation (Exif 2.32, 4.6.5): 6 is one, 3 two, 8 three."""
    quarters = {1: 0, 6: 1, 3: 2, 8: 3}[orientation]
    stored = np.ascontiguousarray(np.rot90(filming.numbered(77), quarters))
    (tmp_path / "photo.jpg").write_bytes(_with_exif(stored, orientation))
    target = tmp_path / "still.jpg"
    assert still(tmp_path / "photo.jpg", None, picture=None, target=target) == (320, 240)
    assert number_of(_read(target)) == 77
    assert PLACE_NAME not in target.read_bytes()
    assert 0xE1 not in _segments(target.read_bytes())


def test_still_of_a_png_is_scaled_to_1280(tmp_path: Path) -> None:
    """Larger pictures are scaled down in proportion, smaller ones are left."""
    (tmp_path / "large.png").write_bytes(cv2.imencode(".png", filming.numbered(9, 2000, 1500))[1].tobytes())
    target = tmp_path / "still.jpg"
    assert still(tmp_path / "large.png", None, picture=None, target=target) == (1280, 960)
    assert number_of(_read(target)) == 9


def test_still_hides_for_good(tmp_path: Path) -> None:
    """Two pictures that differ only in small print inside the box cannot be told apart afterwards."""
    results = []
    for text in ("KV 51", "MB 73"):
        image = np.full((1080, 1920, 3), 200, dtype=np.uint8)
        cv2.putText(image, text, (620, 560), cv2.FONT_HERSHEY_SIMPLEX, 6, (0, 0, 0), 20)
        source = tmp_path / f"{text[:2]}.png"
        source.write_bytes(cv2.imencode(".png", image)[1].tobytes())
        still(source, None, picture=_picture(hidden=(Box(0.25, 0.3, 0.75, 0.6),)), target=tmp_path / "still.jpg")
        results.append(_read(tmp_path / "still.jpg"))
    assert np.abs(results[0].astype(int) - results[1]).max() < 40
    edges = cv2.Sobel(cv2.cvtColor(results[0], cv2.COLOR_BGR2GRAY), cv2.CV_32F, 1, 0)
    assert np.abs(edges[240:410, 340:940]).max() < 30  # the letters had edges of over 500
    assert (results[0][:200] > 195).all()


def test_still_hides_boxes_of_the_clip_too(even: Path, tmp_path: Path) -> None:
    """A box that belongs to the step's clip holds for the step's picture as well."""
    target = tmp_path / "still.jpg"
    still(even, Fraction(99, 25), picture=None, target=target, hidden=(Box(0, 0, 1, 0.2),))
    assert number_of(_read(target)) != 99


def test_still_crop_keeps_marks_in_place(tmp_path: Path) -> None:
    """A mark in the middle of the right half is in the middle once that half is cropped out."""
    (tmp_path / "grey.png").write_bytes(cv2.imencode(".png", np.full((400, 800, 3), 128, np.uint8))[1].tobytes())
    target = tmp_path / "still.jpg"
    marks = (
        Mark(MarkShape.RING, (0.1, 0.1), "cut away", HERE),
        Mark(MarkShape.LINE, (0.70, 0.5, 0.80, 0.5), "", HERE),
    )
    picture = _picture(marks=marks, crop=Box(0.5, 0.0, 1.0, 1.0))
    assert still(tmp_path / "grey.png", None, picture=picture, target=target, marked=True) == (400, 400)
    dark = np.argwhere(_read(target)[199:202, :, 1] < 60)[:, 1]
    assert (dark.min(), dark.max()) == (pytest.approx(160, abs=4), pytest.approx(240, abs=4))
    assert (np.abs(_read(target)[:150].astype(int) - 128) < 12).all()
    still(tmp_path / "grey.png", None, picture=picture, target=target)
    assert (np.abs(_read(target).astype(int) - 128) < 4).all()


@pytest.mark.parametrize(
    ("name", "data", "why"),
    [
        ("words.jpg", b"not a picture", "it is neither JPEG nor PNG"),
        ("broken.png", b"\x89PNG\r\n\x1a\nxxxx", "it is damaged"),
        ("missing.jpg", None, "there is no such file or folder"),
    ],
)
def test_still_refuses_what_is_no_picture(tmp_path: Path, name: str, data: bytes | None, why: str) -> None:
    """The reason stands in the message."""
    if data is not None:
        (tmp_path / name).write_bytes(data)
    with refused(UnreadablePicture, rf"{name}: cannot be read as a picture \({why}\)"):
        still(tmp_path / name, None, picture=None, target=tmp_path / "still.jpg")


def test_still_that_cannot_be_written_says_so(even: Path, tmp_path: Path) -> None:
    """The folder is missing."""
    with refused(CannotWrite, r"still.jpg: cannot be written \(there is no such file or folder\)"):
        still(even, Fraction(1), picture=None, target=tmp_path / "none" / "still.jpg")


@pytest.mark.parametrize(("most", "widest"), [(900_000, 1280), (300_000, 960), (90_000, 480), (1_000, 480)])
def test_a_picture_that_takes_too_many_bytes_gets_coarser_then_smaller(tmp_path: Path, most: int, widest: int) -> None:
    """Noise takes the most bytes of all pictures; one that takes too many even when small is taken as it is."""
    noise = np.random.default_rng(1).integers(0, 256, (960, 1280, 3), dtype=np.uint8)
    (tmp_path / "noise.jpg").write_bytes(cv2.imencode(".jpg", noise)[1].tobytes())
    target = tmp_path / "still.jpg"
    assert fitted(tmp_path / "noise.jpg", most, target=target) == (widest, widest * 3 // 4)
    assert (target.stat().st_size <= most) is (most > 1_000)
