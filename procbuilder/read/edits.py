"""Edits of a procedure file, line by line: every other byte stays as it was."""

import re
from collections.abc import Callable, Iterable

from procbuilder.model.fields import Field
from procbuilder.model.procedure import Step

_END = re.compile(rb"\r\n|\r|\n")
_FAULTY_MARK = re.compile(rb"\{#[^}]*\}\Z")


def add_ids(data: bytes, steps: Iterable[Step]) -> bytes:
    """Write behind each heading the id that its step has so far only in memory.

    A heading with an id that is not allowed or stands twice is left for the technician.
    """
    lines = _split(data)
    for step in steps:
        if not step.id_typed:
            at = step.place.line - 1
            lines[at] = _marked(lines[at], f" {{#{step.id}}}".encode())
    return b"".join(lines)


def change_field(data: bytes, field: Field, value: str) -> bytes:
    """Give a field another value; its name and indent stay as typed.

    ValueError when the line is no longer that field, or when the value would be more than a line.
    """
    if len(_END.split(value.encode())) != 1:
        raise ValueError("a value is one line")
    name = field.name.replace(" ", r"\s+").encode()
    pattern = re.compile(
        rb"(?P<head>\s*[-*+]\s+[*_`]*" + name + rb"\s*[*_`]*\s*(?::|" + "：".encode() + rb")[*_`]*)", re.I
    )

    def changed(line: bytes) -> bytes:
        match = pattern.match(line)
        if not match:
            raise ValueError(f"line {field.place.line} is no longer {field.name}")
        return match["head"] + b" " + value.encode()

    return _edit_line(data, field.place.line, changed)


def add_line(data: bytes, after: int, text: str) -> bytes:
    """Put a new line behind line ``after`` (0 = at the top), with that line's end or the one that the file uses."""
    lines = _split(data)
    match = (_END.search(lines[after - 1]) if 0 < after <= len(lines) else None) or _END.search(data)
    end = match[0] if match else b"\n"
    if 0 < after <= len(lines) and not _END.search(lines[after - 1]):
        lines[after - 1] += end
        return b"".join([*lines[:after], text.encode(), *lines[after:]])
    return b"".join([*lines[:after], text.encode() + end, *lines[after:]])


def append(data: bytes, text: str) -> bytes:
    """The text at the end, behind an empty line, with the line ends that the file uses."""
    match = _END.search(data)
    end = match[0] if match else b"\n"
    between = b"" if not data else end if _END.search(data[-2:]) else end * 2
    return data + between + end.join(line.encode() for line in text.split("\n"))


def _marked(line: bytes, mark: bytes) -> bytes:
    """A heading with the mark behind its words, before ``#`` signs that close it."""
    words = line.rstrip(b" \t\r\n")
    if _FAULTY_MARK.search(words):
        return line
    if (open_ := words.rstrip(b"#")).endswith((b" ", b"\t")):
        words = open_.rstrip(b" \t")
    return words + mark + line[len(words) :]


def _edit_line(data: bytes, number: int, edit: Callable[[bytes], bytes]) -> bytes:
    lines = _split(data)
    whole = lines[number - 1]
    match = _END.search(whole)
    line, end = (whole[: match.start()], match[0]) if match else (whole, b"")
    lines[number - 1] = edit(line) + end
    return b"".join(lines)


def _split(data: bytes) -> list[bytes]:
    """Lines with their ends; a byte order mark stays on the first one."""
    ends = [match.end() for match in _END.finditer(data)]
    starts = [0, *ends]
    return [data[start:end] for start, end in zip(starts, [*ends, len(data)], strict=True) if end > start]
