"""Text files in: UTF-8 only, nothing lost, lines counted as an editor counts them."""

from dataclasses import dataclass
from pathlib import Path

from procbuilder.model.fault import CannotRead, NotText, NotThere, cause_of
from procbuilder.read.unseen import shown


@dataclass(frozen=True, slots=True)
class TextFile:
    """The text of a file with line ends as LF, and the name that problems show."""

    name: str
    text: str

    @property
    def lines(self) -> list[str]:
        """Its lines without line ends."""
        return self.text.split("\n")


def decode(data: bytes, path: Path) -> str:
    """Text of UTF-8 bytes; a byte order mark is left out, CRLF and CR become LF, what nobody sees becomes its code.

    Raises:
        NotText: not UTF-8, or with NUL bytes; it names the line.
    """
    if (at := data.find(b"\0")) >= 0:
        raise NotText(path, _line_of(data, at), "nul")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise NotText(path, _line_of(data, error.start), "not-utf-8") from None
    return shown(text.replace("\r\n", "\n").replace("\r", "\n"))


def read_file(path: Path, name: str | None = None) -> TextFile:
    """A text file; ``name`` is how problems call it, by default its file name.

    Raises:
        NotThere: no such file.
        CannotRead: the system does not let us.
        NotText: not UTF-8 text.
    """
    try:
        if not path.is_file():
            raise NotThere(path)
        data = path.read_bytes()
    except OSError as error:
        raise CannotRead(path, cause_of(error.errno)) from None
    return TextFile(name or path.name, decode(data, path))


def _line_of(data: bytes, at: int) -> int:
    return data.count(b"\n", 0, at) + 1
