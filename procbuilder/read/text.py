"""Text files in: UTF-8 only, nothing lost, lines counted as an editor counts them."""

from dataclasses import dataclass
from pathlib import Path

from procbuilder.model.fault import NotText, NotThere


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
    """Text of UTF-8 bytes; a byte order mark is left out, CRLF and CR become LF.

    Raises:
        NotText: not UTF-8, or with NUL bytes; it names the line.
    """
    if (at := data.find(b"\0")) >= 0:
        raise NotText(path, _line_of(data, at), "the file holds a NUL byte, so it is no text file")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise NotText(path, _line_of(data, error.start), "a character is not UTF-8") from None
    return text.replace("\r\n", "\n").replace("\r", "\n")


def read_file(path: Path, name: str | None = None) -> TextFile:
    """A text file; ``name`` is how problems call it, by default its file name.

    Raises:
        NotThere: no such file.
        NotText: not UTF-8 text.
    """
    if not path.is_file():
        raise NotThere(path)
    return TextFile(name or path.name, decode(path.read_bytes(), path))


def _line_of(data: bytes, at: int) -> int:
    return data.count(b"\n", 0, at) + 1
