"""The list of what was published."""

import hashlib
import json
from dataclasses import replace
from pathlib import Path

import pytest

from procbuilder import __version__
from procbuilder.model.edition import Edition
from procbuilder.publish.manifest import manifest


def test_each_file_has_path_kind_size_and_hash_sorted_by_path(edition: Edition, tmp_path: Path) -> None:
    clip = tmp_path / "somewhere.bin"
    clip.write_bytes(b"film" * 1000)
    film = hashlib.sha256(b"film" * 1000).hexdigest()
    written = manifest({"media/cap.mp4": clip, "index.html": b"page"}, edition=edition)
    assert json.loads(written) == {
        "format": "procbuilder manifest 1",
        "tool": f"procbuilder {__version__}",
        "number": "P-014",
        "revision": "B",
        "files": [
            {"path": "index.html", "kind": "page", "size": 4, "sha256": hashlib.sha256(b"page").hexdigest()},
            {"path": "media/cap.mp4", "kind": "clip", "size": 4000, "sha256": film},
        ],
    }  # fmt: skip
    assert written.endswith(b"}\n")


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("phone.html", "page"),
        ("procedure.pdf", "print"),
        ("edition.json", "data"),
        ("captions/strip.vtt", "captions"),
        ("media/a.JPG", "picture"),
        ("media/a.png", "picture"),
        ("media/a.webp", "picture"),
        ("media/a.mp4", "clip"),
        ("readme", "other"),
    ],
)
def test_the_kind_follows_from_the_name(edition: Edition, path: str, kind: str) -> None:
    assert json.loads(manifest({path: b""}, edition=edition))["files"][0]["kind"] == kind


def test_the_order_in_which_files_were_made_changes_no_byte(edition: Edition) -> None:
    one = manifest({"a": b"1", "b": b"2"}, edition=edition)
    two = manifest({"b": b"2", "a": b"1"}, edition=edition)
    assert one == two
    assert one != manifest({"a": b"1", "b": b"3"}, edition=edition)


def test_a_number_that_is_no_whole_text_is_still_written(edition: Edition) -> None:
    written = manifest({}, edition=replace(edition, number="P–\ud800"))
    assert json.loads(written)["number"] == "P–\ud800"
