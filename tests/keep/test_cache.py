"""The cache: nothing worked out twice, nothing half-made taken for made."""

import hashlib
import os
import tracemalloc
from functools import partial
from pathlib import Path

import pytest

from procbuilder.keep import cache as module
from procbuilder.keep.cache import Cache, key_of, sha256_of


def test_a_hash_is_worked_out_again_only_when_the_file_changed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    film = tmp_path / "film.mp4"
    film.write_bytes(b"one")
    cache = Cache(tmp_path)
    assert cache.known_hash(film) is None
    assert cache.hash(film) == hashlib.sha256(b"one").hexdigest()

    def again(_path: Path) -> str:
        raise AssertionError("read again")

    with monkeypatch.context() as patch:
        patch.setattr(module, "sha256_of", again)
        assert Cache(tmp_path).hash(film) == hashlib.sha256(b"one").hexdigest()
    film.write_bytes(b"two")
    os.utime(film, ns=(1, 1))
    assert cache.known_hash(film) is None
    assert cache.hash(film) == hashlib.sha256(b"two").hexdigest()


def test_media_are_made_once_with_what_their_making_returned(tmp_path: Path) -> None:
    made: list[Path] = []

    def make(target: Path) -> list[int]:
        made.append(target)
        target.write_bytes(b"picture")
        return [640, 360]

    first = Cache(tmp_path).media("still", ".jpg", "program", "k", make)
    second = Cache(tmp_path).media("still", ".jpg", "program", "k", make)
    name = f"still-{hashlib.sha256(b'picture').hexdigest()[:16]}.jpg"
    assert first == second == (name, [640, 360])
    assert Cache(tmp_path).file(name).read_bytes() == b"picture"
    assert len(made) == 1


def test_a_file_cut_off_by_a_kill_is_made_anew(tmp_path: Path) -> None:
    def make(target: Path) -> None:
        target.write_bytes(b"whole")

    cache = Cache(tmp_path)
    path = cache.file(cache.media("still", ".jpg", "program", "k", make)[0])
    path.write_bytes(b"who")
    assert not cache.made("k")
    cache.media("still", ".jpg", "program", "k", make)
    assert path.read_bytes() == b"whole"


def test_a_failed_making_leaves_nothing(tmp_path: Path) -> None:
    def make(target: Path) -> None:
        target.write_bytes(b"half")
        raise RuntimeError

    with pytest.raises(RuntimeError):
        Cache(tmp_path).media("still", ".jpg", "program", "k", make)
    assert [path.name for path in (tmp_path / ".procbuilder/media").iterdir()] == ["still.json"]


def _write(target: Path, text: str) -> None:
    target.write_text(text)


def test_what_another_program_has_made_goes_when_the_first_of_its_kind_is_made(tmp_path: Path) -> None:
    """Files of other kinds, and those that are only asked for, stay."""
    cache = Cache(tmp_path)
    for kind, key in (("still", "a"), ("still", "b"), ("clip", "c")):
        cache.media(kind, ".bin", "old", key, partial(_write, text=key))
    folder = tmp_path / ".procbuilder" / "media"
    assert len(list(folder.glob("*.bin"))) == 3
    cache.media("still", ".bin", "old", "a", lambda _: pytest.fail("made again"))
    name, _ = cache.media("still", ".bin", "new", "d", partial(_write, text="d"))
    assert [path.name for path in folder.glob("still-*")] == [name]
    assert not cache.made("a")
    assert cache.made("c")


def test_a_damaged_cache_counts_as_an_empty_one(tmp_path: Path) -> None:
    cache = Cache(tmp_path)
    cache.put("facts", "k", {"a": 1})
    (tmp_path / ".procbuilder/facts/k.json").write_text('{"val')
    assert cache.get("facts", "k") is None
    cache.put("facts", "k", {"a": 2})
    assert cache.get("facts", "k") == {"a": 2}


def test_keys_differ_when_any_part_differs() -> None:
    assert len({key_of("a", "b"), key_of("ab", ""), key_of("a", "c"), key_of("a")}) == 4


def test_a_large_file_is_hashed_in_pieces(tmp_path: Path) -> None:
    """FIPS 180-4 by hashlib over the same zeros; at no time more than a few of the pieces are in memory."""
    megabytes = 300
    large = tmp_path / "large.mp4"
    with large.open("wb") as file:
        file.truncate(megabytes << 20)
    tracemalloc.start()
    found = sha256_of(large)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    whole = hashlib.sha256()
    for _ in range(megabytes):
        whole.update(bytes(1 << 20))
    assert found == whole.hexdigest()
    assert peak < 8 << 20
