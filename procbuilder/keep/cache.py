"""What need not be worked out again. The folder ``.procbuilder`` may be deleted at any time."""

import hashlib
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from procbuilder.keep.files import explained, write_whole

FOLDER = ".procbuilder"
_BLOCK = 1 << 20

Value = TypeVar("Value")


def sha256_of(path: Path) -> str:
    """SHA-256 of a file in hexadecimal, read in blocks."""
    digest = hashlib.sha256()
    with path.open("rb") as file:
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

    def media(self, key: str, suffix: str, make: Callable[[Path], Any]) -> tuple[Path, Any]:
        """The media file of a key and what its making returned, made by ``make(path)`` when it is missing.

        A file that was cut off by a kill is not taken for a made one.
        """
        path = self.folder / "media" / f"{key}{suffix}"
        if self.made(key, suffix):
            return path, self._load(f"media/{key}.json")["value"]
        beside = path.with_name(f"new-{path.name}")
        with explained(path):
            path.parent.mkdir(parents=True, exist_ok=True)
        try:
            value = make(beside)
            with explained(path):
                beside.replace(path)
        finally:
            beside.unlink(missing_ok=True)
        self._save(f"media/{key}.json", {"value": value, "size": path.stat().st_size})
        return path, value

    def made(self, key: str, suffix: str) -> bool:
        """Whether the media file of a key is there."""
        path = self.folder / "media" / f"{key}{suffix}"
        known = self._load(f"media/{key}.json")
        return bool(known) and path.is_file() and path.stat().st_size == known["size"]

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
