"""Serving on loopback: byte ranges, no stranger's host, a taken port explained."""

import re
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from typer.testing import CliRunner

from procbuilder.cli import app


def free_port() -> int:
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        return int(listener.getsockname()[1])


@pytest.fixture
def served(tmp_path: Path) -> Iterator[str]:
    (tmp_path / "out" / "media").mkdir(parents=True)
    (tmp_path / "out" / "index.html").write_text("<title>hub</title>")
    (tmp_path / "out" / "media" / "clip.mp4").write_bytes(bytes(range(100)))
    port = free_port()
    command = [sys.executable, "-m", "procbuilder.cli", "serve", str(tmp_path), "--port", str(port)]
    server = subprocess.Popen(command, stderr=subprocess.PIPE)
    try:
        wait_for(port)
        yield f"http://127.0.0.1:{port}"
    finally:
        server.terminate()
        server.communicate(timeout=10)


def wait_for(port: int) -> None:
    for _ in range(200):
        with socket.socket() as caller:
            if caller.connect_ex(("127.0.0.1", port)) == 0:
                return
        time.sleep(0.05)
    raise AssertionError("the server did not start")


def get(address: str, **headers: str) -> tuple[int, bytes]:
    request = urllib.request.Request(address, headers=headers)
    try:
        with urllib.request.urlopen(request, timeout=10) as answer:
            return answer.status, answer.read()
    except urllib.error.HTTPError as error:
        with error:
            return error.code, error.read()


def test_page_and_parts_of_a_clip_are_served(served: str) -> None:
    assert get(f"{served}/") == (200, b"<title>hub</title>")
    assert get(f"{served}/media/clip.mp4", Range="bytes=10-19") == (206, bytes(range(10, 20)))


@pytest.mark.parametrize("unreadable", ["bytes", "bytes=", "bytes=9-5", "items=0-1", "bytes=900-"])
def test_a_range_that_cannot_be_read_is_not_satisfiable(served: str, unreadable: str) -> None:
    """RFC 9110, 15.5.17."""
    assert get(f"{served}/media/clip.mp4", Range=unreadable)[0] == 416


def test_another_host_name_and_paths_out_of_the_folder_are_refused(served: str) -> None:
    assert get(f"{served}/", Host="stranger.example")[0] == 400
    assert get(f"{served}/..%2f..%2fetc/passwd")[0] == 404


def test_a_taken_port_names_another_one(tmp_path: Path) -> None:
    (tmp_path / "index.html").touch()
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        listener.listen()
        port = listener.getsockname()[1]
        result = CliRunner().invoke(app, ["serve", str(tmp_path), "--port", str(port)])
    assert result.exit_code == 1
    assert "Ctrl+C" not in result.stderr
    assert re.search(rf"^port {port} is taken by another program – name another one: --port {port + 1}$",
                     result.stderr, re.M)  # fmt: skip
