"""Sentences about the files that a procedure names."""

from procbuilder.publish.wording.faults import FAULTS
from procbuilder.publish.wording.patterns import Patterns

_PUT = "put the file at {path} in the procedure folder, or correct the path"

_WITHOUT = "the page is made; work from it, and from no older print, until this is settled"

PATTERNS: Patterns = {
    "not-printed": {
        "outside": ("{file} could not be made (the picture {what} lies outside the media folder)", _WITHOUT),
        "missing": ("{file} could not be made (the picture {what} is missing)", _WITHOUT),
        "unknown": ("{file} could not be made (the picture {what} is no JPEG, PNG, WebP or GIF)", _WITHOUT),
        "told": ("{file} could not be made ({what})", _WITHOUT),
    },
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
    "unreadable": {
        **FAULTS["Unreadable"],
        **FAULTS["Beyond"],
        **FAULTS["UnreadablePicture"],
        **FAULTS["CannotRead"],
    },
}
