"""What need not be worked out again. The folder ``.procbuilder`` may be deleted at any time."""

import hashlib
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from procbuilder.keep.files import explained, readable, write_whole

FOLDER = ".procbuilder"
_BLOCK = 1 << 20
_SHORT = 16
"""Digits of a hash that tell the media files of one procedure apart."""

Value = TypeVar("Value")


def sha256_of(path: Path) -> str:
    """SHA-256 of a file in hexadecimal, read in blocks.

    Raises:
        CannotRead: the system does not let us.
    """
    digest = hashlib.sha256()
    with readable(path), path.open("rb") as file:
        while block := file.read(_BLOCK):
            digest.update(block)
    return digest.hexdigest()


class Cache:
    """The cache of one procedure folder: file hashes, results as JSON, media files."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder / FOLDER

    def known_hash(self, path: Path) -> str | None:
        """The remembered SHA-256 of a file; None when size, time or file id differ or nothing is known."""
        known = self._load("files.json").get(str(path.resolve()))
        return str(known["sha256"]) if known and known["stamp"] == stamp(path) else None

    def hash(self, path: Path) -> str:
        """SHA-256 of a file, worked out again only when size, time or file id differ."""
        if known := self.known_hash(path):
            return known
        now = stamp(path)
        files = self._load("files.json")
        files[str(path.resolve())] = {"sha256": (digest := sha256_of(path)), "stamp": now}
        self._save("files.json", files)
        return digest

    def get(self, kind: str, key: str) -> Any:
        """The JSON kept under a key, or None."""
        return self._load(f"{kind}/{key}.json").get("value")

    def put(self, kind: str, key: str, value: Any) -> None:
        """Keep JSON under a key."""
        self._save(f"{kind}/{key}.json", {"value": value})

    def media(self, kind: str, suffix: str, by: str, key: str, make: Callable[[Path], Any]) -> tuple[str, Any]:
        """Name of the media file of a key and what its making returned, made by ``make(path)`` when it is missing.

        It is called by its kind and a hash of its content, as it will be published: ``still-0f3a….jpg``. A file that
        was cut off by a kill is not taken for a made one. ``by`` tells the program that makes the kind, which is part
        of the key: what another one has made goes before the first file is made.
        """
        if not self.made(key):
            self._renew(kind, by)
            self._make(kind, suffix, key, make)
        known = self._load(f"media/{key}.json")
        return known["name"], known["value"]

    def made(self, key: str) -> bool:
        """Whether the media file of a key is there."""
        known = self._load(f"media/{key}.json")
        path = self.file(known.get("name", ""))
        return bool(known) and path.is_file() and path.stat().st_size == known["size"]

    def file(self, name: str) -> Path:
        """Where the media file of a name lies."""
        return self.folder / "media" / name

    def _renew(self, kind: str, by: str) -> None:
        """Take away the files of a kind that another program has made: nobody asks for their keys any more."""
        maker = f"media/{kind}.json"
        before = self._load(maker).get("by", by)
        if before != by:
            with explained(self.folder / maker):
                for path in (self.folder / "media").glob(f"{kind}-*"):
                    path.unlink()
        if before != by or not (self.folder / maker).is_file():
            self._save(maker, {"by": by})

    def _make(self, kind: str, suffix: str, key: str, make: Callable[[Path], Any]) -> None:
        beside = self.file(f"new-{key}{suffix}")
        with explained(beside):
            beside.parent.mkdir(parents=True, exist_ok=True)
        try:
            value = make(beside)
            name, size = f"{kind}-{sha256_of(beside)[:_SHORT]}{suffix}", beside.stat().st_size
            with explained(self.file(name)):
                beside.replace(self.file(name))
        finally:
            beside.unlink(missing_ok=True)
        self._save(f"media/{key}.json", {"name": name, "value": value, "size": size})

    def _load(self, name: str) -> dict[str, Any]:
        try:
            data = json.loads((self.folder / name).read_bytes())
        except (OSError, ValueError):
            return {}
        return data if isinstance(data, dict) else {}

    def _save(self, name: str, data: dict[str, Any]) -> None:
        write_whole(self.folder / name, json.dumps(data, sort_keys=True).encode())


def key_of(*parts: object) -> str:
    """A cache key from all that a result depends on."""
    return hashlib.sha256("\0".join(map(str, parts)).encode()).hexdigest()[:32]


def stamp(path: Path) -> list[int]:
    """Size, time and id of a file: when they are the same, it has not been touched."""
    status = path.stat()
    return [status.st_size, status.st_mtime_ns, status.st_ino]
