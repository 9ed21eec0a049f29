"""Front matter: YAML whose every scalar stays the text that was typed."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import PurePath
from typing import Any

from rapidfuzz import process

from procbuilder.model.facts import Line, Value, facts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import FRONT_NAMES, STATUSES, Front, NamedFile
from procbuilder.read.flaws import Flaw, flaw
from procbuilder.read.stated import read_crew, stated_minutes

LARGEST = 64_000
"""Bytes of front matter that are read; more is refused."""
_DEEPEST = 3
"""Lists within each other; the format needs two."""
_MOST_FAULTS = 20
"""Lines that are mended or left out before the rest is given up: each costs another reading."""

_NAME = re.compile(r"[a-z][a-z0-9_-]*\Z")
_HALF = re.compile("[\0\ud800-\udfff]")
"""What an escape such as ``\\ud83d`` can write and no text can hold: no file could be written with it."""
_INNER_COLON = re.compile(r"(?P<key>[\w ]+?):\s+(?P<value>[^\"'\[{].*:(?:\s.*)?)\Z")


@dataclass
class _Reading:
    """What one reading of the front matter has gathered so far."""

    file: str
    problems: list[Problem]

    def problem(self, line: int, form: str, /, **values: Value) -> None:
        self.problems.append(Problem("front-matter", Severity.STOP, Place(self.file, line), facts(**values), form, 4))


def split_front(lines: list[str]) -> tuple[int, int]:
    """First and last line number between the two ``---`` lines; (0, 0) without front matter.

    Without a closing line the end is -1.
    """
    if not lines or lines[0].rstrip() != "---":
        return 0, 0
    end = next((number for number, line in enumerate(lines[1:], 2) if line.rstrip() in ("---", "...")), -1)
    return 2, end - 1 if end > 0 else -1


def read_front(lines: list[str], file: str) -> tuple[Front, tuple[Problem, ...]]:
    """The front matter of a file's lines; every fault is reported, the rest is still read."""
    start, end = split_front(lines)
    reading = _Reading(file, [])
    if not start:
        return Front(), ()
    if end < 0:
        reading.problem(1, "no-end")
        return Front(), tuple(reading.problems)
    source = lines[start - 1 : end]
    if len("\n".join(source).encode()) > LARGEST:
        reading.problem(1, "too-long")
        return Front(), tuple(reading.problems)
    node = _compose(list(source), reading)
    return _front(node, reading), tuple(reading.problems)


def _compose(source: list[str], reading: _Reading) -> Any:
    """The YAML node tree; a line that cannot be read is reported, mended or left out, and the rest read again."""
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    for _ in range(_MOST_FAULTS):
        try:
            text = "\n".join(source)
            if refused := _refused(YAML(typ="safe", pure=True).parse(text)):
                line, sign = refused
                reading.problem(line + 2, sign.form, **dict(sign.facts))
            else:
                return YAML(typ="rt", pure=True).compose(text)
        except MarkedYAMLError as error:
            begun = re.search("flow|quoted", error.context or "")
            mark = (error.context_mark if begun else error.problem_mark) or error.context_mark
            line = min(mark.line if mark else 0, len(source) - 1)
            _report_yaml(source, line, reading)
            continue
        except YAMLError:
            reading.problem(2, "characters")
            return None
        source[line] = ""
    reading.problem(2, "too-many", count=_MOST_FAULTS - 1)
    return None


def _refused(events: Any) -> tuple[int, Flaw] | None:
    """Line and kind of the first anchor, alias, tag or half a character, or of a list too deep within others."""
    depth = 0
    for event in events:
        depth += type(event).__name__.endswith(("MappingStartEvent", "SequenceStartEvent"))
        depth -= type(event).__name__.endswith(("MappingEndEvent", "SequenceEndEvent"))
        if depth > _DEEPEST:
            return event.start_mark.line, flaw("nested")
        if type(event).__name__ == "AliasEvent":
            return event.start_mark.line, flaw("alias", name=event.anchor)
        if _HALF.search(getattr(event, "value", None) or ""):
            return event.start_mark.line, flaw("half-character")
        if getattr(event, "anchor", None):
            return event.start_mark.line, flaw("anchor", name=event.anchor)
        tag = getattr(event, "tag", None) or getattr(event, "ctag", None)
        if tag and str(tag) not in ("None", "!"):
            return event.start_mark.line, flaw("tag", name=str(tag))
    return None


def _report_yaml(source: list[str], line: int, reading: _Reading) -> None:
    """Report the line, and mend it in the copy when only quotes are missing."""
    match = _INNER_COLON.match(source[line].strip())
    if match:
        mended = f'{match["key"]}: "{match["value"]}"'
        place = Place(reading.file, line + 2)
        reading.problem(line + 2, "colon", line=Line("", (mended,), place=place, replaces=True))
        source[line] = f"{match['key']}: '{match['value'].replace(chr(39), chr(39) * 2)}'"
        return
    while line > 0 and not source[line].strip():
        line -= 1
    shown = source[line].strip()
    reading.problem(line + 2, "unreadable" if shown else "unreadable-part", typed=shown)
    source[line] = ""


def _front(node: Any, reading: _Reading) -> Front:
    if node is None:
        return Front()
    if not hasattr(node, "value") or not isinstance(node.value, list) or (node.value and not _is_pairs(node)):
        reading.problem(2, "no-pairs")
        return Front()
    values, places, files = {}, {}, {}
    for key, value, line in _pairs(node, reading):
        if not _known(key, line, reading):
            continue
        places[key] = Place(reading.file, line)
        if key in ("recordings", "narration"):
            files[key] = tuple(_files(key, value, reading))
        elif isinstance(value.value, str):
            values[key] = value.value.strip()
        else:
            reading.problem(line, "list", key=key)
    _check_values(values, places, reading)
    recordings = files.get("recordings", ())
    narration = _match_narration(files.get("narration", ()), recordings)
    stated, crew = stated_minutes(values.get("stated time", "")), read_crew(values.get("people", ""))
    return Front(tuple(values.items()), tuple(places.items()), recordings, narration, stated, crew)


def _is_pairs(node: Any) -> bool:
    return isinstance(node.value[0], tuple)


def _pairs(node: Any, reading: _Reading) -> Iterator[tuple[str, Any, int]]:
    """Key, value node and line of a mapping; doubled keys are reported and left out."""
    seen: dict[str, int] = {}
    for key_node, value in node.value:
        key, line = str(key_node.value).strip(), key_node.start_mark.line + 2
        if key in seen:
            reading.problem(line, "twice", key=key, first=seen[key])
            continue
        seen[key] = line
        yield key, value, line


def _known(key: str, line: int, reading: _Reading) -> bool:
    if key in FRONT_NAMES:
        return True
    near = process.extractOne(key.casefold(), FRONT_NAMES, score_cutoff=60)
    given = facts(key=key, near=near[0]) if near else facts(key=key, keys=tuple(FRONT_NAMES))
    form = "near-key" if near else "key"
    place = Place(reading.file, line)
    reading.problems.append(Problem("front-matter", Severity.ASK, place, given, form, 4, subject=key))
    return False


def _check_values(values: dict[str, str], places: dict[str, Place], reading: _Reading) -> None:
    if values.get("format", "1") != "1":
        reading.problem(places["format"].line, "format", format=values["format"])
    status = values.get("status", "draft")
    if status not in STATUSES:
        reading.problem(places["status"].line, "approved" if status == "approved" else "status", status=status)


def _files(key: str, node: Any, reading: _Reading) -> Iterator[NamedFile]:
    """One path, a list of paths, or names with paths."""
    if isinstance(node.value, str):
        if path := node.value.strip():
            yield _named(None, path, node, reading)
    elif node.value and _is_pairs(node):
        for name, value, line in _pairs(node, reading):
            if not isinstance(value.value, str):
                reading.problem(line, "one-path", name=name, key=key)
            else:
                yield _named(name, value.value.strip(), value, reading)
    else:
        for value in node.value:
            if isinstance(value.value, str) and value.value.strip():
                yield _named(None, value.value.strip(), value, reading)
            else:
                reading.problem(value.start_mark.line + 2, "paths", key=key)


def _named(name: str | None, path: str, node: Any, reading: _Reading) -> NamedFile:
    line = node.start_mark.line + 2
    if name is not None and not _NAME.match(name):
        reading.problem(line, "name", name=name, good=recording_name(name))
    return NamedFile(recording_name(name or PurePath(path).stem), path, Place(reading.file, line))


def recording_name(text: str) -> str:
    """A name that can stand before a time: small letters, digits, ``-`` and ``_``, a letter first."""
    name = re.sub(r"[^a-z0-9_]+", "-", text.casefold()).strip("-")
    return name if _NAME.match(name) else f"r{name}"


def _match_narration(files: tuple[NamedFile, ...], recordings: tuple[NamedFile, ...]) -> tuple[NamedFile, ...]:
    """Narration named as its recording; unnamed files follow the order of the recordings."""
    names = {recording.name for recording in recordings}
    if (len(files) == 1 and len(recordings) == 1) or not any(file.name in names for file in files):
        pairs = zip(files, recordings, strict=False)
        return tuple(NamedFile(recording.name, file.path, file.place) for file, recording in pairs)
    return files
