"""Sentences about rough step lists."""

from procbuilder.publish.wording.patterns import Patterns

_ACCEPTED = "write 0:42 Prise off the dust cap, or 0:42-1:15 Prise off the dust cap"
_HEADER = "give the columns names in the first line: start,end,step"
_SECONDS = "write 1:15 or seconds such as 75.5"
_NAMES = "put the name before the time: {names:|}"

PATTERNS: Patterns = {
    "step-list": {
        "column-start": ("the header has no column for the start", _HEADER),
        "column-words": ("the header has no column for the words", _HEADER),
        "quotes": (
            "the quotes of this row cannot be read",
            'close each quote in the same cell; a quote within a quoted cell is written twice: ""',
        ),
        "start": ("{typed} is no start", _SECONDS),
        "end": ("{typed} is no end", _SECONDS),
        "row-without-words": ("the row has no words", "write what is done"),
        "time": ("{typed} is not a time", "seconds go up to 59, thousandths behind a point: 1:15.250"),
        "time-without-words": ("{time} has no words", _ACCEPTED),
        "no-time": ("no time at the beginning: {typed}", _ACCEPTED),
        "no-length": ("{step}: the step has no length", "correct its start or its end"),
        "ends-first": ("{step}: the step ends at {end}, before it starts", "correct its start or its end"),
        "no-recording": ("{recording} is no recording; {first} was taken for: {step}", _NAMES),
        "which-recording": ("no recording is named; {first} was taken for: {step}", _NAMES),
    },
}
