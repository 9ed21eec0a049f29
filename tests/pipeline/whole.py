"""Whether an output folder is whole: every file of its manifest there, with its hash."""

import hashlib
import json
from pathlib import Path


def faults(out: Path) -> list[str]:
    """What is wrong with an output folder; files that nothing refers to harm nobody."""
    manifest = json.loads((out / "manifest.json").read_bytes())
    found = []
    for entry in manifest["files"]:
        path = out / entry["path"]
        if not path.is_file():
            found.append(f"{entry['path']} is missing")
        elif hashlib.sha256(path.read_bytes()).hexdigest() != entry["sha256"]:
            found.append(f"{entry['path']} is another one")
    return found


def title(out: Path) -> str:
    """Title of the published edition, which page and data must share."""
    told = str(json.loads((out / "edition.json").read_bytes())["title"])
    assert f"{told}</title>" in (out / "index.html").read_text(encoding="utf-8")
    return told
