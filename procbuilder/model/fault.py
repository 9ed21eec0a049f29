"""Faults that end a command. Each class takes the facts and writes its own sentence."""

from pathlib import Path


class Fault(Exception):
    """Anything a command cannot go on after; ``code`` is the exit code."""

    code = 3


class InputFault(Fault):
    """The technician's input cannot be used at all."""

    code = 1


class NoProcedure(InputFault):
    """A folder that holds no procedure."""

    def __init__(self, folder: Path) -> None:
        super().__init__(
            f"{folder}: there is no procedure.md in it – "
            f"make one with: procbuilder new {folder} --recording FILE --steps FILE"
        )


class NotThere(InputFault):
    """A file that was named but does not exist."""

    def __init__(self, path: Path) -> None:
        super().__init__(f"{path}: there is no such file – check the name and the folder")


class NotText(InputFault):
    """A text file that is not UTF-8 text."""

    def __init__(self, path: Path, line: int, why: str) -> None:
        super().__init__(f"{path}:{line}: {why} – save the file as UTF-8 text and try again")


class NoText(InputFault):
    """A procedure file with nothing in it; building it would put an empty page in the place of a good one."""

    def __init__(self, path: Path) -> None:
        super().__init__(f"{path}: the file is empty – write its title first: # Thing – what is done to it")


class AlreadyThere(InputFault):
    """A folder that would be written over."""

    def __init__(self, path: Path) -> None:
        super().__init__(f"{path}: is there already and is not empty – name a new folder")


class TooMuchNarration(InputFault):
    """More subtitle files than recordings: nobody knows to which film the last ones belong."""

    def __init__(self, narration: int, recordings: int) -> None:
        super().__init__(
            f"{narration} subtitle files for {recordings} recording{'s' if recordings > 1 else ''} – "
            "give at most one for each recording, in the same order"
        )


class ChangedMeanwhile(InputFault):
    """A file that somebody changed between reading and writing it."""

    def __init__(self, path: Path) -> None:
        super().__init__(f"{path}: was changed by someone else meanwhile – nothing was written; read it again first")


class Unreadable(Fault):
    """A recording that cannot be opened or decoded."""

    def __init__(self, path: Path, why: str) -> None:
        super().__init__(
            f"{path}: cannot be read as a recording ({why}) – play it once, or copy it again from the phone"
        )


class UnreadablePicture(Fault):
    """A picture file that cannot be opened."""

    def __init__(self, path: Path, why: str) -> None:
        super().__init__(f"{path}: cannot be read as a picture ({why}) – name a JPEG or PNG file that can be opened")


class CannotWrite(Fault):
    """The disk is full, the folder is read-only, or the file is held open."""

    def __init__(self, path: Path, why: str) -> None:
        super().__init__(f"{path}: cannot be written ({why}) – free some space or close the file, then run it again")


class Busy(Fault):
    """Another procbuilder works in the same folder."""

    def __init__(self, folder: Path) -> None:
        super().__init__(f"{folder}: another procbuilder is at work in this folder – wait until it has finished")


class CannotPrint(Fault):
    """The PDF could not be set."""

    def __init__(self, why: str) -> None:
        super().__init__(f"procedure.pdf could not be made ({why}) – the page and the other files are not changed")


class NotQualified(InputFault):
    """An edition for a qualification that the workshop file does not name, or no longer."""

    def __init__(self, name: str, ended: str) -> None:
        why = f"ended on {ended}" if ended else "is not in the workshop file"
        super().__init__(
            f"the qualification {name} {why} – nothing was built; add to workshop.toml above the procedure: "
            f'[[qualification]] with name = "{name}", holder = "who", valid_until = 2027-03-31'
        )
