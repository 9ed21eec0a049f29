"""Values inside fields that are more than text: minutes, moments, boxes, marks."""

import re
from decimal import Decimal
from fractions import Fraction

from procbuilder.model.fields import Field
from procbuilder.model.marks import Box, HiddenPath, Mark, MarkShape, Picture, PictureState
from procbuilder.model.procedure import ThreePoint, Wait
from procbuilder.model.strain import Lift, Vibration
from procbuilder.model.timecode import Span, parse_time
from procbuilder.read.flaws import Flaws, flaw
from procbuilder.read.spans import take_spans

_NUMBER = re.compile(r"\d{1,6}(?:\.\d{1,6})?\Z")
_MOMENT = re.compile(r"(?:(?P<name>[a-z][a-z0-9_-]*)\s+)?(?P<time>\d+:\d+(?::\d+)?(?:\.\d+)?)\Z")
_PATH = re.compile(r"(?:(?P<name>[a-z][a-z0-9_-]*)\s+)?(?P<boxes>\d+:.*)\Z", re.S)
_AMOUNT = re.compile(r"(\d{1,4}(?:\.\d{1,3})?)\s*(?:kg|m/s²|min(?:utes)?)?\Z")
_LIFTED = re.compile(
    r"from (?P<from>\d{1,3}(?:\.\d)?)(?: cm)?, to (?P<to>\d{1,3}(?:\.\d)?)(?: cm)?, "
    r"reach (?P<reach>\d{1,3}(?:\.\d)?)(?: cm)?\Z"
)
_PICTURE_FILE = re.compile(r".+\.(?:jpe?g|png)\Z", re.I)


def read_minutes(text: str, flaws: Flaws) -> ThreePoint | None:
    """Minutes as ``12`` or as ``low/likely/high``."""
    numbers = [part.strip() for part in re.sub(r"\s*min(?:utes?)?\.?\Z", "", text.strip()).split("/")]
    if len(numbers) not in (1, 3) or not all(_NUMBER.match(number) for number in numbers):
        flaws.append(flaw("minutes", text=text))
        return None
    low, likely, high = (Decimal(number) for number in (numbers * 3 if len(numbers) == 1 else numbers))
    if not low <= likely <= high:
        flaws.append(flaw("minutes-fall", text=text))
        return None
    return ThreePoint(low, likely, high)


def read_wait(entry: Field, flaws: Flaws) -> Wait | None:
    """A Wait field."""
    minutes = read_minutes(entry.part("minutes"), flaws)
    overlaps = entry.part("overlaps")
    if overlaps not in ("", "yes", "no"):
        flaws.append(flaw("overlaps", text=overlaps))
    return Wait(minutes, entry.part("for"), overlaps == "yes", entry.place) if minutes else None


def read_lift(entry: Field) -> Lift:
    """A Lift field, as in ``wheel | 25 | from 20 cm, to 110 cm, reach 40 cm``; its rule asks for what is missing."""
    path = _LIFTED.match(entry.part("path"))
    heights = (float(path["from"]), float(path["to"]), float(path["reach"])) if path else None
    return Lift(entry.place, entry.part("item"), _amount(entry.part("kg")), heights)


def read_vibration(entry: Field) -> Vibration:
    """A Vibration field, as in ``grinder | 5 m/s² | 120 min``."""
    return Vibration(entry.place, entry.part("tool"), _amount(entry.part("level")), _amount(entry.part("minutes")))


def _amount(text: str) -> float | None:
    """A number with or without its unit."""
    match = _AMOUNT.match(text)
    return float(match[1]) if match else None


def read_skip(entry: Field, recordings: tuple[str, ...], home: str, flaws: Flaws) -> tuple[Span, ...]:
    """The stretch of a Skip field; a span without a name lies in the recording of its step."""
    found: Flaws = []
    spans, rest = take_spans(entry.part("span"), (home,) if home else recordings, found)
    if rest or not spans:
        found.append(flaw("skip", text=entry.part("span")))
    flaws += found
    return spans


def read_picture(entry: Field, home: str, flaws: Flaws) -> Picture | None:
    """A Picture field with the marks, hidden boxes and crop below it."""
    moment, file = entry.part("moment"), ""
    match = _MOMENT.match(moment)
    time = parse_time(match["time"]) if match else None
    if time is None:
        if not _PICTURE_FILE.match(moment):
            flaws.append(flaw("picture", text=moment))
            return None
        file = moment
    recording = (match["name"] if match else "") or ("" if file else home)
    if not file and not recording:
        flaws.append(flaw("picture-of-which", text=moment))
        return None
    state = _state(entry, flaws)
    below = [(child, child.name) for child in entry.children]
    marks = tuple(filter(None, (_mark(child, flaws) for child, name in below if name == "Mark")))
    hidden = tuple(filter(None, (_box(child, flaws) for child, name in below if name == "Hide")))
    crops = tuple(filter(None, (_box(child, flaws) for child, name in below if name == "Crop")))
    crop = crops[-1] if crops else None
    return Picture(entry.place, recording, time, file, entry.part("shows"), state, marks, hidden, crop)


def _state(entry: Field, flaws: Flaws) -> PictureState:
    text = entry.part("state") or PictureState.DONE
    if text in tuple(PictureState):
        return PictureState(text)
    flaws.append(flaw("picture-state", text=text))
    return PictureState.DONE


def read_hidden(entry: Field, home: str, flaws: Flaws) -> HiddenPath | None:
    """A Hide field of a step: ``[name] time box; time box``."""
    text = entry.part("where")
    match = _PATH.match(text)
    boxes: list[tuple[Fraction, Box]] = []
    for pair in match["boxes"].split(";") if match else []:
        time_text, _, box_text = pair.strip().partition(" ")
        time, box = parse_time(time_text), _corners(box_text)
        if time is None or box is None:
            boxes = []
            break
        boxes.append((time, box))
    recording = (match["name"] if match else "") or home
    if not boxes or not recording:
        flaws.append(flaw("hide", text=text))
        return None
    return HiddenPath(entry.place, recording, tuple(sorted(boxes, key=lambda pair: pair[0])))


def _mark(entry: Field, flaws: Flaws) -> Mark | None:
    shape, where = entry.part("shape"), entry.part("where")
    points = _numbers(where, 4) or (_numbers(where, 2) if shape == MarkShape.RING else None)
    if shape not in tuple(MarkShape):
        flaws.append(flaw("mark-shape", text=shape))
    elif points is None:
        flaws.append(flaw("ring" if shape == MarkShape.RING else "mark", text=where))
    else:
        return Mark(MarkShape(shape), points, entry.part("label"), entry.place)
    return None


def _box(entry: Field, flaws: Flaws) -> Box | None:
    if box := _corners(entry.part("where")):
        return box
    flaws.append(flaw("box", field=entry.name, text=entry.part("where")))
    return None


def _corners(text: str) -> Box | None:
    """A box from its left upper to its right lower corner; None when it is anything else, or has no inside."""
    box = _numbers(text, 4)
    return Box(*box) if box and box[0] < box[2] and box[1] < box[3] else None


def _numbers(text: str, count: int) -> tuple[float, ...] | None:
    """That many fractions from 0 to 1 between commas; None when it is anything else."""
    parts = [part.strip() for part in text.split(",")]
    if len(parts) != count or not all(_NUMBER.match(part) for part in parts):
        return None
    numbers = tuple(float(Fraction(part)) for part in parts)
    return numbers if all(number <= 1 for number in numbers) else None
