"""Sentences about pictures and clips."""

from procbuilder.model.footage import Weakness
from procbuilder.publish.wording.patterns import Patterns, Plural

_WEAK = 'the picture of "{command}" is {weak} at {time}'
_LEFT_OUT = "copy it again from the camera, or leave them out: {skip}"
SKIPPED = "damaged"
"""Why footage is left out."""

PATTERNS: Patterns = {
    "weak-picture": {
        Weakness.DARK: (
            _WEAK,
            "put a lamp on the finished part at the next filming, "
            'or choose a moment with "- Picture: time | what it shows"',
        ),
        Weakness.BURNT_OUT: (
            _WEAK,
            "turn the lamp aside and tap on the part to set the light at the next filming, "
            'or choose a moment with "- Picture: time | what it shows"',
        ),
        Weakness.BLURRED: (
            _WEAK,
            "tap on the part to focus and hold the camera still for two seconds at the next filming, "
            'or choose a moment with "- Picture: time | what it shows"',
        ),
        Weakness.COVERED: (
            _WEAK,
            "take the hand away from the part for two seconds when it is done at the next filming, "
            'or choose a moment with "- Picture: time | what it shows"',
        ),
        Weakness.IN_MOTION: (
            _WEAK,
            "hold the camera still on the finished part for two seconds at the next filming, "
            'or choose a moment with "- Picture: time | what it shows"',
        ),
        Weakness.TURNED_AWAY: (
            _WEAK,
            "hold the camera on the finished part for two seconds at the next filming, "
            'or choose a moment with "- Picture: time | what it shows"',
        ),
        Weakness.EARLY: (
            _WEAK,
            "hold the camera on the finished part for two seconds at the end of the step at the next filming, "
            'or choose a moment with "- Picture: time | what it shows"',
        ),
    },
    "damaged": {
        "damaged": (
            Plural(
                "{count} picture is damaged in recording {recording} at {start}",
                "{count} pictures are damaged in recording {recording} at {start}",
            ),
            _LEFT_OUT,
        ),
        "damaged-between": (
            Plural(
                "{count} picture is damaged in recording {recording} between {start} and {end}",
                "{count} pictures are damaged in recording {recording} between {start} and {end}",
            ),
            _LEFT_OUT,
        ),
    },
}
