"""Sentences about threads and spanners."""

from procbuilder.publish.wording.patterns import Patterns

_PUT_RIGHT = 'put the thread or the size right, or write "{answer}"'

PATTERNS: Patterns = {
    "spanner-against-thread": {
        "": (
            '"{item}": a {size} mm spanner fits no usual head of an {thread} thread: usual are {usual:|} mm',
            _PUT_RIGHT,
        ),
    },
    "inch-spanner-against-thread": {
        "": ('"{item}": a {size} in spanner fits no usual head of that thread: usual is {usual} in', _PUT_RIGHT),
    },
    "which-spanner": {
        "": (
            '"{item}": {thread} may be {usual:|} mm, depending on the standard: which?',
            'write the size behind it, as in "{item}, … mm"',
        ),
    },
}
