"""What is known of recordings, and of the pictures and clips made from them, in words."""

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from string import Formatter

from procbuilder.model.footage import Bound, Clip, End, Move, Oddity, Remark, Still, Trace, Weakness
from procbuilder.model.timecode import format_time
from procbuilder.publish.language import Language

REMARKS = {
    Oddity.NO_LENGTH: "no length in its header; measured: {seconds} s",
    Oddity.CUT_OFF: "cut off: its header promises {seconds} s, but its pictures end at {time}",
    Oddity.NO_SOUND: "no sound, so nothing tells whether it runs at the speed of the work",
    Oddity.SOUND_TRACKS: "{count} sound tracks; the first is used",
    Oddity.SOUND_ENDS_EARLY: "the sound ends {seconds} s before the picture",
    Oddity.SOUND_BEGINS_LATE: "the sound begins {seconds} s after the picture",
    Oddity.PICTURE_BEGINS_LATE: "the picture begins {seconds} s after the sound",
    Oddity.VARIABLE_RATE: "variable frame rate, {least} to {most} pictures a second",
    Oddity.TURNED: "filmed with the camera turned by {count}°; shown upright",
    Oddity.DAMAGED: "{count} of {all} pictures are damaged in the file",
    Oddity.HIGH_RANGE: "filmed in high dynamic range ({names}); shown in the range of ordinary screens",
    Oddity.TRACES: "removed from all that is published: {names}",
}
"""The gaps take the values of a remark in their order."""

TRACES = {
    Trace.LOCATION: "location",
    Trace.DEVICE: "device",
    Trace.TIME: "time of filming",
    Trace.AUTHOR: "author",
    Trace.SENSORS: "sensor data",
}

WEAK = {
    Weakness.DARK: "dark",
    Weakness.BURNT_OUT: "burnt out",
    Weakness.BLURRED: "blurred",
    Weakness.COVERED: "covered",
    Weakness.IN_MOTION: "in motion",
    Weakness.TURNED_AWAY: "turned away",
    Weakness.EARLY: "early",
}

CLIP, PART_OF_CLIP = "Clip", "Part {number} of the clip"
MOVES = {
    (End.BEGINNING, True): "{what} begins {seconds} s later than typed, {place}.",
    (End.BEGINNING, False): "{what} begins {seconds} s earlier than typed, {place}.",
    (End.END, True): "{what} ends {seconds} s later than typed, {place}.",
    (End.END, False): "{what} ends {seconds} s earlier than typed, {place}.",
}
"""By the end that was moved, and whether it is later."""
MOVED_TO = {
    (End.BEGINNING, Bound.ACTION): "where the action begins",
    (End.END, Bound.ACTION): "where the action ends",
    (End.BEGINNING, Bound.SHOT): "where its shot begins",
    (End.END, Bound.SHOT): "where its shot ends",
}


def remark(told: Remark, language: Language) -> str:
    """What is odd about a recording."""
    pattern = REMARKS[told.oddity]
    gaps = [gap for _, gap, _, _ in Formatter().parse(pattern) if gap in _FORMS]
    values = {gap: _FORMS[gap](value) for gap, value in zip(gaps, told.values, strict=True)}
    facts = {gap: value if isinstance(value, str) else language.number(value) for gap, value in values.items()}
    names = ", ".join(language.text(TRACES[Trace(name)]) if name in TRACES else name for name in told.names)
    return language.text(pattern, **facts, names=names)


def moves(clip: Clip, language: Language) -> tuple[str, ...]:
    """Where a clip does not begin or end at the typed times, a sentence each."""
    return tuple(_move(move, language) for move in clip.moved)


def _move(move: Move, language: Language) -> str:
    what = language.text(PART_OF_CLIP, number=move.part) if move.part else language.text(CLIP)
    return language.text(
        MOVES[move.end, move.later > 0],
        what=what,
        seconds=language.number(Decimal(f"{float(round(abs(move.later), 2)):g}")),
        place=language.text(MOVED_TO[move.end, move.bound]),
    )


def weaknesses(still: Still, language: Language) -> tuple[str, ...]:
    """What is wrong with a picture."""
    return tuple(language.text(WEAK[weakness]) for weakness in still.weak)


def taken_from(still: Still) -> str:
    """``strip 0:42``, or the file that a picture came from."""
    return still.original if still.time is None else f"{still.recording} {format_time(still.time)}"


def _tenths(number: Fraction) -> Decimal:
    return Decimal(f"{float(number):.1f}")


def _three_digits(number: Fraction) -> Decimal:
    return Decimal(f"{float(number):.3g}")


def _whole(number: Fraction) -> Decimal:
    return Decimal(int(number))


def _second(seconds: Fraction) -> str:
    """Cut to whole seconds, so that the moment named is still in the recording."""
    return format_time(Fraction(int(seconds)))


_FORMS: dict[str, Callable[[Fraction], Decimal | str]] = {
    "seconds": _tenths, "time": _second, "count": _whole, "all": _whole, "least": _three_digits, "most": _three_digits,
}  # fmt: skip
"""How the value of each gap is written."""
