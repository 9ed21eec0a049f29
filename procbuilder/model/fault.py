"""Faults that end a command: facts. What they say is worded in ``publish/wording/faults.py``."""

import errno
from datetime import date
from enum import StrEnum
from fractions import Fraction
from pathlib import Path

from procbuilder.model.facts import Facts, Phrase, Time, Value, facts
from procbuilder.model.timecode import Span


class Cause(StrEnum):
    """Why a file cannot be read or written."""

    PERMISSION = "permission"
    READ_ONLY = "read-only"
    FULL = "full"
    MISSING = "missing"
    FOLDER = "folder"
    NO_FOLDER = "no-folder"
    TOO_LONG = "too-long"
    HELD = "held"
    DEVICE = "device"
    SYSTEM = "system"
    """Anything else: the number of the system's error is told."""
    EMPTY = "empty"
    CUT_OFF = "cut-off"
    """The index, which stands at the end of the file, is missing."""
    NO_RECORDING = "no-recording"
    NO_PICTURES = "no-pictures"
    SOUND_ALONE = "sound-alone"
    UNKNOWN_CODING = "unknown-coding"
    NOT_ONE_PICTURE = "not-one-picture"
    NO_TIME = "no-time"
    """What there is of its pictures is shown for no time at all."""
    NONE_AT = "none-at"
    """No picture can be decoded at a time."""
    NONE_WITHIN = "none-within"
    NO_STILL = "no-still"
    """It is neither JPEG nor PNG."""
    DAMAGED = "damaged"
    OBLONG = "oblong"
    LARGE = "large"
    HEAVY = "heavy"
    LARGE_FILM = "large-film"
    LONG_FILM = "long-film"


_CAUSES = {
    errno.EACCES: Cause.PERMISSION, errno.EPERM: Cause.PERMISSION, errno.EROFS: Cause.READ_ONLY,
    errno.ENOSPC: Cause.FULL, errno.EDQUOT: Cause.FULL, errno.EFBIG: Cause.FULL, errno.ENOENT: Cause.MISSING,
    errno.EISDIR: Cause.FOLDER, errno.ENOTDIR: Cause.NO_FOLDER, errno.ENAMETOOLONG: Cause.TOO_LONG,
    errno.EBUSY: Cause.HELD, errno.ETXTBSY: Cause.HELD, errno.EIO: Cause.DEVICE,
}  # fmt: skip


def cause_of(number: int | None) -> Phrase:
    """The cause that the number of a system's error stands for."""
    cause = _CAUSES.get(number or 0, Cause.SYSTEM)
    return Phrase(cause, facts(number=number or 0) if cause is Cause.SYSTEM else ())


class Fault(Exception):
    """Anything a command cannot go on after; ``code`` is the exit code."""

    code = 3

    def __init__(self, form: str = "", /, **values: Value) -> None:
        super().__init__(form, *values.values())
        self.form = form
        """Which of its sentences, where it has several."""
        self.facts: Facts = facts(**values)

    def named(self, path: str) -> Facts:
        """Its facts with the path as somebody typed it."""
        return tuple((name, path if name == "path" else value) for name, value in self.facts)

    def below(self, folder: Path) -> Facts:
        """Its facts with paths as seen from a folder that holds them."""
        return tuple((name, _below(value, folder)) for name, value in self.facts)


def _below(value: Value, folder: Path) -> Value:
    return value.relative_to(folder) if isinstance(value, Path) and value.is_relative_to(folder) else value


class InputFault(Fault):
    """The technician's input cannot be used at all."""

    code = 1


class NoProcedure(InputFault):
    """A folder that holds no procedure."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder=folder)


class NotThere(InputFault):
    """A file that was named but does not exist."""

    def __init__(self, path: Path) -> None:
        super().__init__(path=path)


class CannotRead(Fault):
    """A file that is there and cannot be read; ``denied`` when it is the system that does not let us."""

    def __init__(self, path: Path, why: Phrase, form: str = "denied") -> None:
        super().__init__(form, path=path, why=why)


class NotText(InputFault):
    """A text file that is not UTF-8 text: form ``nul`` with a NUL byte, else ``not-utf-8``."""

    def __init__(self, path: Path, line: int, form: str) -> None:
        super().__init__(form, path=path, line=line)


class NoText(InputFault):
    """A procedure file with nothing in it; building it would put an empty page in the place of a good one."""

    def __init__(self, path: Path) -> None:
        super().__init__(path=path)


class AlreadyThere(InputFault):
    """A folder that would be written over."""

    def __init__(self, path: Path) -> None:
        super().__init__(path=path)


class TooMuchNarration(InputFault):
    """More subtitle files than recordings: nobody knows to which film the last ones belong."""

    def __init__(self, narration: int, recordings: int) -> None:
        super().__init__(narration=narration, recordings=recordings)


class ChangedMeanwhile(InputFault):
    """A file that somebody changed between reading and writing it."""

    def __init__(self, path: Path) -> None:
        super().__init__(path=path)


class Beyond(CannotRead):
    """A recording that is read only when every picture is asked for, since that takes long."""

    def __init__(self, path: Path, why: Phrase) -> None:
        super().__init__(path, why, "beyond")


class Unreadable(CannotRead):
    """A recording that cannot be opened or decoded, as a whole or ``at`` a time or stretch."""

    def __init__(self, path: Path, cause: Cause, at: Fraction | Span | None = None, /, **values: Value) -> None:
        where = Time(at) if isinstance(at, Fraction) else at
        super().__init__(path, Phrase(cause, facts(**{"at": where} if where else {}, **values)), "recording")


class UnreadablePicture(CannotRead):
    """A picture file that cannot be opened."""

    def __init__(self, path: Path, why: Phrase) -> None:
        super().__init__(path, why, "picture")


class CannotWrite(Fault):
    """The disk is full, the folder is read-only, or the file is held open; the form is the cause.

    ``number`` is that of the system's error.
    """

    def __init__(self, path: Path, number: int | None) -> None:
        why = cause_of(number)
        super().__init__(why.form, path=path, why=why)


class Busy(Fault):
    """Another procbuilder works in the same folder."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder=folder)


class NotQualified(InputFault):
    """An edition for a qualification that the workshop file does not name (``unknown``), or no longer (``ended``)."""

    def __init__(self, name: str, ended: date | None = None) -> None:
        if ended:
            super().__init__("ended", name=name, ended=ended)
        else:
            super().__init__("unknown", name=name)
