"""MoviePy is imported without running a program and without reading settings that lie about on the disk."""

import subprocess
import sys
from pathlib import Path

import procbuilder
from tests.test_layers import MODULES, imports

_WATCHED = """
import sys, dotenv

def refuse(event, args):
    if event in ("subprocess.Popen", "os.exec", "os.posix_spawn", "os.system"):
        raise SystemExit(f"ran {{args[0]}}")

sys.addaudithook(refuse)
dotenv.load_dotenv = dotenv.find_dotenv = lambda *_, **__: sys.exit("looked for settings")
{first}
print("quiet")
"""


def told(first: str, folder: Path) -> str:
    """What a fresh Python says, in a folder with a planted ``.env``."""
    (folder / ".env").write_text("FFMPEG_BINARY=/bin/false\n", encoding="utf-8")
    where = f"import sys; sys.path.insert(0, {str(Path(procbuilder.__file__).parents[1])!r})\n"
    command = [sys.executable, "-c", where + _WATCHED.format(first=first)]
    result = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    return (result.stdout + result.stderr).strip()


def test_the_film_room_runs_nothing_and_reads_no_settings(tmp_path: Path) -> None:
    assert told("import procbuilder.media.film", tmp_path) == "quiet"


def test_the_watch_itself_would_notice(tmp_path: Path) -> None:
    assert told("import moviepy.config", tmp_path) == "looked for settings"


def test_moviepy_is_imported_in_one_place() -> None:
    users = [path.stem for path in MODULES if any(name.split(".")[0] == "moviepy" for name in imports(path))]
    assert users == ["compositing"]
