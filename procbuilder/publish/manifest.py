"""The manifest: what was published, so that anyone can tell later whether it is still whole."""

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path, PurePosixPath
from typing import Any

from procbuilder import __version__
from procbuilder.model.edition import Edition

FORMAT = "procbuilder manifest 1"

_KINDS = {
    ".html": "page",
    ".pdf": "print",
    ".json": "data",
    ".dita": "data",
    ".vtt": "captions",
    ".mp4": "clip",
    ".jpg": "picture",
    ".jpeg": "picture",
    ".png": "picture",
    ".webp": "picture",
    ".svg": "picture",
}


def manifest(files: Mapping[str, bytes | Path], *, edition: Edition) -> bytes:
    """``manifest.json``: path, kind, size and SHA-256 of each file, sorted by path.

    Args:
        files: content, or where it lies on disk, by path below the output folder with ``/``.
        edition: what the files show.
    """
    record = {
        "format": FORMAT,
        "tool": f"procbuilder {__version__}",
        "number": edition.number,
        "revision": edition.revision,
        "files": [_entry(path, files[path]) for path in sorted(files)],
    }
    return (json.dumps(record, ensure_ascii=False, indent=2) + "\n").encode("utf-8", "backslashreplace")


def _entry(path: str, content: bytes | Path) -> dict[str, Any]:
    if isinstance(content, bytes):
        size, digest = len(content), hashlib.sha256(content).hexdigest()
    else:
        with content.open("rb") as stream:
            digest = hashlib.file_digest(stream, "sha256").hexdigest()
            size = stream.tell()
    name = PurePosixPath(path)
    kind = "film" if name.name.startswith("film-") else _KINDS.get(name.suffix.lower(), "other")
    return {"path": path, "kind": kind, "size": size, "sha256": digest}
