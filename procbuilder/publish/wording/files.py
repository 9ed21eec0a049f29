"""Sentences about the files that a procedure names."""

from procbuilder.publish.wording.faults import FAULTS
from procbuilder.publish.wording.patterns import Patterns

_PUT = "put the file at {path} in the procedure folder, or correct the path"

PATTERNS: Patterns = {
    "path": {
        "impossible": (
            "{path} cannot be a path: it is too long, leads back to itself or holds a NUL byte",
            "name the file as the folder shows it",
        ),
        "outside": ("{path} leads out of the procedure folder", "copy the file into the folder and name it there"),
    },
    "missing-file": {
        "folder": ("{path} is a folder", _PUT),
        "missing": ("{path} is not there", _PUT),
    },
    "narration": {**FAULTS["NotText"], **FAULTS["CannotRead"]},
    "unreadable": {**FAULTS["Unreadable"], **FAULTS["UnreadablePicture"], **FAULTS["CannotRead"]},
}
