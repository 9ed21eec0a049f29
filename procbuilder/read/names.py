"""The name in front of a line: a field, or what was meant to be one.

Nothing that resembles a field passes as prose without a word: who typed ``Hdie`` believes that something is hidden.
"""

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from rapidfuzz import fuzz, process
from rapidfuzz.distance import OSA

from procbuilder.model.fields import BY_NAME, GRAVE, FieldKind
from procbuilder.read.unseen import visible

_MARK = r"(?P<mark>\*{1,3}|_{1,3}|`)?"
_CLOSED = r"(?P<closed>(?P=mark))?"
_FIELD = re.compile(rf"{_MARK}(?P<name>[A-Za-z][A-Za-z ]*?)\s*{_CLOSED}\s*[:：](?!//)(?P<value>.*)\Z", re.S)
_LABEL = re.compile(
    rf"{_MARK}(?P<name>[^\W\d_][^:：;=!|.,*_`]{{0,28}}?)\s*{_CLOSED}\s*(?P<sign>[:：]|[;=!.]|\s[-–—]\s)(?P<value>.*)\Z",
    re.S,
)
_BULLET = re.compile(r"[\s>]*(?:(?:[-*+•·–—]|\d+[.)]|\#+)(?=[\s\w*_`])\s*)?")
_BAR = re.compile(r"\s\|\s")
_PARTS = re.compile(r"\s\|\s|[:：]\s*#[a-z0-9]")
_NUMBER = r"(?:\d{1,9}(?:[.,]\d{1,9})?|[.,]\d{1,9})\s{0,9}%?"
_HIDING = re.compile(
    rf"(?<!\d)\d{{1,9}}:\d\d\S*\s+{_NUMBER}(?:\s*[,;/]\s*{_NUMBER}){{2,}}"
    r"|(?<![\w.,])(?:(?:0?\.\d+|[01])(?:,(?!\s)|\Z|(?=[\s;|]))){4}"
)
"""A time with numbers between commas, or four fractions without spaces: where something is hidden."""
_COLON = (":", "：")
_BOXED = ("Hide", "Mark", "Crop")


@dataclass(frozen=True, slots=True)
class Slip:
    """A line that looks like a field and is none."""

    typed: str
    """The name as typed; empty when the value alone tells."""
    kind: FieldKind | None
    """The field that was meant; None when only its parts tell that one was."""
    value: str


def find_kind(text: str) -> tuple[FieldKind | None, str]:
    """The field kind at the beginning of a list item, and the value behind its colon; ``**Name:**`` is a name too."""
    match = _FIELD.match(text)
    kind = BY_NAME.get(_plain(match["name"])) if match else None
    return kind, _value(match) if match else ""


def find_slip(text: str, *, listed: bool) -> Slip | None:
    """What a line was meant to be that is no field; ``listed``: it is an item of a list, so any name may stand there.

    In a paragraph, names of fields count with a capital letter in front of a colon alone, unless they are emphasised.
    """
    text = visible(text)
    bullet = _BULLET.match(text)
    line = text[bullet.end() :] if bullet else text
    listed = listed or bool(bullet and bullet[0].strip())
    match = _LABEL.match(line)
    name = match["name"] if match else ""
    listed = listed or bool(match and match["mark"])
    kind = _meant(name, match["sign"].strip(), listed=listed, parts=bool(_PARTS.search(line))) if match else None
    if hides(line) and (kind is None or kind.name not in _BOXED):
        kind = BY_NAME["hide"]
    if kind:
        return Slip(name, kind, _value(match) if match else line)
    if listed and _BAR.search(line):
        begun = next((one for one in BY_NAME if re.match(rf"{one}\s", line, re.I)), "")
        label = line[: len(begun)] if begun else name or _BAR.split(line)[0]
        return Slip(label, BY_NAME.get(begun), line[len(begun) :].strip() if begun else "")
    return None


def hides(text: str) -> bool:
    """Numbers that say where something is to be hidden, whatever stands in front of them."""
    return bool(_HIDING.search(text))


def _meant(name: str, sign: str, *, listed: bool, parts: bool) -> FieldKind | None:
    """The field that a name stands for; ``parts``: bars or an id stand behind it, as in no prose."""
    plain, colon = _plain(name), sign in _COLON
    if not listed and not (colon and name[0].isupper()):
        return None
    if plain in BY_NAME:
        return BY_NAME[plain] if listed or plain != "note" else None
    if colon and plain.split()[:1] == ["hide"]:
        return BY_NAME["hide"]
    if plain in _others():
        return _others()[plain]
    if not parts and (plain in _ordinary() or not listed):
        return None
    near = _near(plain)
    return near if near and (colon or near.name in GRAVE) else None


def _near(plain: str) -> FieldKind | None:
    """The name that is one slip away, the grave one first, else one that is alike as a whole."""
    names = [name for name in BY_NAME if OSA.distance(plain, name) <= 1]
    if names:
        return BY_NAME[max(names, key=lambda name: (BY_NAME[name].name in GRAVE, fuzz.ratio(plain, name), name))]
    long = [name for name in BY_NAME if len(name) > 4]
    found = process.extractOne(plain, long, scorer=fuzz.ratio, score_cutoff=80)
    return BY_NAME[found[0]] if found else None


def _value(match: re.Match[str]) -> str:
    """What stands behind the colon, without the signs of emphasis."""
    value, mark = match["value"].strip(), match["mark"] or ""
    if mark and not match["closed"]:
        value = value.removeprefix(mark) if value.startswith(mark) else value.removesuffix(mark)
    return value.strip()


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


@cache
def _lists() -> tuple[dict[str, FieldKind], frozenset[str]]:
    """What is written instead of a name, and ordinary words near one, of all languages: people mix them."""
    data = tomllib.loads(files("procbuilder.read").joinpath("names.toml").read_text(encoding="utf-8"))
    meant = {
        word: BY_NAME[name.casefold()]
        for one in data.values()
        for name, words in one["meant"].items()
        for word in words
    }
    return meant, frozenset(word for one in data.values() for word in one["ordinary"])


def _others() -> dict[str, FieldKind]:
    return _lists()[0]


def _ordinary() -> frozenset[str]:
    return _lists()[1]
