"""One field: the text behind ``- Name:`` cut into parts, things and origin."""

import re
from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal

from rapidfuzz import process

from procbuilder.model.facts import Blank, Line, facts
from procbuilder.model.fields import Field, FieldKind
from procbuilder.model.origin import TYPED, Origin, OriginKind, Place
from procbuilder.model.quantity import Item, Quantity
from procbuilder.model.timecode import parse_time
from procbuilder.model.torque import BLANK, Torque, read_torque
from procbuilder.read.flaws import Flaw, Flaws, flaw
from procbuilder.read.sizes import read_sizes
from procbuilder.read.unseen import visible

_BAR = re.compile(r"(?:(?<=\s)|\A)(?<!\\)\|(?=\s|\Z)")
_SEMICOLON = re.compile(r"(?<!\\);")
_ORIGIN = re.compile(r"\s*\((?P<words>(?:said|seen)\s[^()]*|from\s[^()]*)\)\s*\Z", re.I)
_MOMENT = re.compile(r"(?P<kind>said|seen)\s+(?:(?P<name>[a-z][a-z0-9_-]*)\s+)?(?P<time>[\d:.]+)\Z", re.I)
_COUNT = re.compile(r"(?P<number>\d{1,6}(?:\.\d{1,6})?)\s*[x×]\s+(?P<rest>.+)\Z", re.S)
_AMOUNT = re.compile(r"(?P<rest>.+),\s+(?P<number>\d{1,6}(?:\.\d{1,6})?)\s*(?P<unit>kg|g|ml|l|m)\Z", re.S)
_COMMA_NUMBER = re.compile(r"(?<![\d,.])(\d+),(\d{1,2}|\d{4,})(?![\d,.])\s*(?:kg|g|ml|l|m|x|Nm?|bar|mm|min)\b")
_WORD = re.compile(r"(?P<word>[a-z]+)(?:\s+(?P<number>\d+))?\s*:\s*(?P<value>.*)\Z", re.S)


def read_field(kind: FieldKind, value: str, place: Place, flaws: Flaws) -> Field:
    """Cut a value into its parts; flaws are added to the list, what can be read is kept."""
    text, origin = take_origin(value, flaws)
    _report_comma_number(kind, text, flaws)
    if (kind.items or kind.none) and text.strip().casefold() == "none":
        return Field(kind, place, value, none=True, origin=origin)
    parts = _parts(kind, text, flaws)
    items = _items(dict(parts).get(kind.parts[0], ""), kind.items, place, origin)
    fasteners = _items(dict(parts).get("by", ""), "many", place, origin)
    missing = [name for name in kind.parts[: kind.required] if not dict(parts).get(name)]
    if missing:
        flaws.append(flaw("no-part", field=kind.name, part=Blank(missing[0]), line=whole(kind)))
    torque = _torque(dict(parts)) if kind.name == "Torque" else BLANK
    return Field(kind, place, value, tuple(parts), items, fasteners, torque, origin)


def _torque(parts: Mapping[str, str]) -> Torque:
    """A value with signs that nobody sees is no number to reckon with: what is read is not what was meant."""
    text = parts.get("value", "")
    torque = read_torque(text, _stage(parts))
    return torque if visible(text) == text else replace(torque, stages=())


def _stage(parts: Mapping[str, str]) -> int:
    """The one stage that a step does; 0 when it does all. A number of many digits is no stage."""
    text = parts.get("stage", "")
    return int(text) if text.isdecimal() and len(text) < 3 else 0


def whole(kind: FieldKind) -> Line:
    """A field with all its parts, to be filled in."""
    return Line(kind.name, _blanks(kind))


def _blanks(kind: FieldKind) -> tuple[Blank, ...]:
    return tuple(Blank(part) for part in kind.parts)


def take_origin(value: str, flaws: Flaws) -> tuple[str, Origin]:
    """A value without the origin at its end, and the origin; typed when there is none."""
    match = _ORIGIN.search(value)
    if not match:
        return value, TYPED
    words = " ".join(match["words"].split())
    rest = value[: match.start()]
    if words.casefold() == "from memory":
        return rest, Origin(OriginKind.MEMORY)
    if words.casefold().startswith("from "):
        return rest, Origin(OriginKind.DOCUMENT, document=words[5:])
    moment = _MOMENT.match(words)
    time = parse_time(moment["time"]) if moment else None
    if moment and time is not None:
        return rest, Origin(OriginKind(moment["kind"].lower()), moment["name"] or "", time)
    if moment:
        flaws.append(flaw("origin", words=words))
    return value, TYPED


def split_parts(text: str) -> list[str]:
    """The parts between `` | ``; ``\\|`` stays a bar."""
    return [part.replace("\\|", "|").strip() for part in _BAR.split(text)]


def _parts(kind: FieldKind, text: str, flaws: Flaws) -> list[tuple[str, str]]:
    named: dict[str, str] = {}
    by_place: list[str] = []
    for position, part in enumerate(split_parts(text)):
        word = _WORD.match(part) if position else None
        if word and word["word"] in kind.words:
            _take_word(kind, word, named, by_place, flaws)
        elif word and (near := process.extractOne(word["word"], kind.words, score_cutoff=75)):
            flaws.append(flaw("word", word=word["word"], field=kind.name, near=near[0]))
        elif len(by_place) < len(kind.parts):
            by_place.append(part)
        elif part:
            flaws.append(_too_many(kind, part))
    pairs = [(name, part) for name, part in zip(kind.parts, by_place, strict=False) if part]
    return pairs + list(named.items())


def _take_word(kind: FieldKind, word: re.Match[str], named: dict[str, str], by_place: list[str], flaws: Flaws) -> None:
    """Keep ``word: value``; ``stage 1: 15 N·m`` is the value of that stage alone, ``stage: 1`` only its number."""
    name, value = word["word"], word["value"].strip()
    if name in named:
        flaws.append(flaw("word-twice", word=name, field=kind.name))
    elif name == "stage":
        is_number = word["number"] is None and value.isdecimal()
        named[name] = value if is_number else word["number"] or ""
        if value and not is_number and len(by_place) < 2:
            by_place.append(value)
        elif value and not is_number:
            flaws.append(_too_many(kind, word[0]))
    else:
        named[name] = value


def _too_many(kind: FieldKind, part: str) -> Flaw:
    given = facts(field=kind.name, part=part)
    more = facts(words=tuple(f"{name}:" for name in kind.words)) if kind.words else facts(parts=_blanks(kind))
    return Flaw("part-too-many-words" if kind.words else "part-too-many", given + more)


def _items(text: str, number: str, place: Place, origin: Origin) -> tuple[Item, ...]:
    """The things of a text; ``number`` as in the table of fields: one, many, or none at all."""
    if not number:
        return ()
    texts = _SEMICOLON.split(text) if number == "many" else [text]
    return tuple(read_item(part.replace("\\;", ";"), place, origin) for part in texts if part.strip())


def read_item(text: str, place: Place, origin: Origin = TYPED) -> Item:
    """A thing with its quantity in front (``2 x axle stand``) or behind (``grease, 60 g``)."""
    rest, new, scrap = _take_marks(text.strip())
    quantity = None
    if match := _COUNT.match(rest):
        quantity, rest = Quantity(Decimal(match["number"])), match["rest"]
    elif match := _AMOUNT.match(rest):
        quantity, rest = Quantity(Decimal(match["number"]), match["unit"]), match["rest"]
    name = rest.strip()
    return Item(name, place, quantity, new, scrap, origin, read_sizes(name))


def _take_marks(text: str) -> tuple[str, bool, bool]:
    """The text without the words ``new`` and ``scrap``, and whether they were there."""
    rest = text
    found = []
    for word in ("new", "scrap"):
        less = re.sub(rf",?\s*(?<![\w-]){word}(?![\w-])\s*", " ", rest, flags=re.I)
        less = re.sub(r"\s+,", ",", " ".join(less.split())).strip(" ,")
        found.append(less != " ".join(rest.split()) and bool(less))
        rest = less if found[-1] else rest
    return rest, found[0], found[1]


def _report_comma_number(kind: FieldKind, text: str, flaws: Flaws) -> None:
    if kind.name in ("Mark", "Hide", "Crop"):
        return
    if match := _COMMA_NUMBER.search(text):
        flaws.append(flaw("decimal-comma", typed=match[0], good=match[0].replace(",", ".")))
