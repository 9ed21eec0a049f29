"""Sentences of the faults that end a command."""

from procbuilder.model.fault import Cause, Fault
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.wording.gaps import filled
from procbuilder.publish.wording.patterns import Patterns, Plural, Text

_NOT_WRITTEN = "{path}: cannot be written ({why})"
_WRITING: dict[str, Text] = {
    Cause.FULL: "free some space, then run it again",
    Cause.PERMISSION: "see that it may be written there and that no program holds it open, then run it again",
    Cause.READ_ONLY: "make the folder writable, or take another one, then run it again",
    Cause.HELD: "close the file there, then run it again",
    Cause.FOLDER: "move the folder away or give it another name, then run it again",
    Cause.NO_FOLDER: "move the file away that stands where a folder is needed, then run it again",
    Cause.MISSING: "see that the folder is still there, then run it again",
    Cause.TOO_LONG: "take a shorter name",
    Cause.DEVICE: "look after the disk, or take another one, then run it again",
    Cause.SYSTEM: "free some space or close the file, then run it again",
}
_QUALIFY = (
    "nothing was built; add to workshop.toml above the procedure: "
    '[[qualification]] with name = "{name}", holder = "who", valid_until = 2027-03-31'
)
_UTF_8 = "save the file as UTF-8 text and try again"

FAULTS: Patterns = {
    "NoProcedure": {
        "": (
            "{folder}: there is no procedure.md in it",
            "make one with: procbuilder new {folder} --recording FILE --steps FILE",
        )
    },
    "NotThere": {"": ("{path}: there is no such file", "check the name and the folder")},
    "CannotRead": {"denied": ("{path}: cannot be read ({why})", "get the right to read it, or copy it here anew")},
    "NotText": {
        "nul": ("{path}:{line}: the file holds a NUL byte, so it is no text file", _UTF_8),
        "not-utf-8": ("{path}:{line}: a character is not UTF-8", _UTF_8),
    },
    "NoText": {"": ("{path}: the file is empty", "write its title first: # Thing – what is done to it")},
    "AlreadyThere": {"": ("{path}: is there already and is not empty", "name a new folder")},
    "TooMuchNarration": {
        "": (
            Plural(
                "{narration} subtitle files for {recordings} recording",
                "{narration} subtitle files for {recordings} recordings",
                "recordings",
            ),
            "give at most one for each recording, in the same order",
        )
    },
    "ChangedMeanwhile": {
        "": ("{path}: was changed by someone else meanwhile", "nothing was written; read it again first")
    },
    "Unreadable": {
        "recording": (
            "{path}: cannot be read as a recording ({why})",
            "play it once, or copy it again from the phone",
        )
    },
    "Beyond": {
        "beyond": (
            "{path}: is larger than what is usually read ({why})",
            "save it smaller or in shorter pieces, or have it read all the same, which takes long: "
            "procbuilder build --thorough",
        )
    },
    "UnreadablePicture": {
        "picture": ("{path}: cannot be read as a picture ({why})", "name a JPEG or PNG file that can be opened")
    },
    "CannotWrite": {cause: (_NOT_WRITTEN, instead) for cause, instead in _WRITING.items()},
    "Busy": {"": ("{folder}: another procbuilder is at work in this folder", "wait until it has finished")},
    "NotQualified": {
        "unknown": ("the qualification {name} is not in the workshop file", _QUALIFY),
        "ended": ("the qualification {name} ended on {ended}", _QUALIFY),
    },
    "NotBuilt": {"": ("{folder}: there is no page in it yet", "run: procbuilder build {folder}")},
    "PortTaken": {"": ("port {port} is taken by another program", "name another one: --port {other}")},
}
"""By the name of the fault, then by form."""


def said_fault(fault: Fault, language: Language = ENGLISH) -> str:
    """What is wrong and what to do instead, in the language of the reader."""
    what, instead = FAULTS[type(fault).__name__][fault.form]
    return f"{filled(what, fault.facts, language)} – {filled(instead, fault.facts, language)}"
