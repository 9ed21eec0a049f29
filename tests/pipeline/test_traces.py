"""Where, with what and when something was filmed stays in the recording: nothing that is put out tells it."""

import struct
import zlib
from fractions import Fraction
from pathlib import Path

import cv2
import numpy as np

from procbuilder.model.footage import Oddity, Remark
from procbuilder.pipeline.build import build
from tests.media import filming
from tests.media.filming import Track
from tests.pipeline.text import WHOLE

PLACE, PLACE_ISO, DEVICE, AUTHOR, DAY = "51.5074N", "+51.5074-000.1278+011.000/", "Camera 7b", "A. Nother", "2031-05-06"
TAGS = (
    ("location", PLACE_ISO),
    ("com.apple.quicktime.location.ISO6709", PLACE_ISO),
    ("com.apple.quicktime.model", DEVICE),
    ("com.apple.quicktime.creationdate", f"{DAY}T07:08:09Z"),
    ("artist", AUTHOR),
)
SECRETS = [text.encode() for text in (PLACE, PLACE_ISO, "+51.5074", DEVICE, AUTHOR, DAY)]
XMP = f"""<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="{PLACE}" exif:Model="{DEVICE}"/>
</rdf:RDF></x:xmpmeta>"""


def _jpeg_with_xmp() -> bytes:
    """A JPEG with an application segment as ISO 16684-3, 6.2.2 describes it."""
    jpeg = cv2.imencode(".jpg", np.full((90, 160, 3), 90, np.uint8))[1].tobytes()
    segment = b"http://ns.adobe.com/xap/1.0/\0" + XMP.encode()
    return jpeg[:2] + b"\xff\xe1" + struct.pack(">H", len(segment) + 2) + segment + jpeg[2:]


def _png_with_text() -> bytes:
    """A PNG with a text chunk before its end (ISO/IEC 15948, 11.3.4.3)."""
    png = cv2.imencode(".png", np.full((90, 160, 3), 160, np.uint8))[1].tobytes()
    chunk = b"tEXtAuthor\0" + AUTHOR.encode() + PLACE.encode()
    end = png.rindex(b"IEND") - 4
    return png[:end] + struct.pack(">I", len(chunk) - 4) + chunk + struct.pack(">I", zlib.crc32(chunk)) + png[end:]


def test_nothing_put_out_tells_where_with_what_or_when_it_was_filmed(home: Path) -> None:
    film = filming.film(
        home / "recordings" / "strip.mov", filming.steady(4), track=Track(tags=TAGS, sound=(Fraction(4),))
    )
    (home / "pictures").mkdir()
    (home / "pictures" / "cover.jpg").write_bytes(_jpeg_with_xmp())
    (home / "pictures" / "cap.png").write_bytes(_png_with_text())
    sources = film.read_bytes() + _jpeg_with_xmp() + _png_with_text()
    assert all(secret in sources for secret in SECRETS)
    pictures = "- Picture: pictures/cover.jpg | the cover\n- Picture: pictures/cap.png | the cap | detail\n"
    text = WHOLE.replace("strip.mp4", "strip.mov").replace("- Off: belt", f"{pictures}- Off: belt")
    (home / "procedure.md").write_text(text, encoding="utf-8")
    built = build(home)
    assert [len(step.figures) for step in built.edition.steps] == [2, 1, 0]
    assert built.edition.recordings[0].remarks == (
        Remark(Oddity.TRACES, names=("location", "device", "time-of-filming", "author")),
    )
    files = [path for path in (home / "out").rglob("*") if path.is_file()]
    assert {path.suffix for path in files} >= {".html", ".pdf", ".json", ".jpg", ".mp4"}
    assert [(path.name, secret) for path in files for secret in SECRETS if secret in path.read_bytes()] == []
