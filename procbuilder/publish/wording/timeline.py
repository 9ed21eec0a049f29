"""Sentences about when the recordings were filmed."""

from procbuilder.publish.wording.patterns import Patterns

_TYPE = "type the minutes of its steps: Time: 12"

PATTERNS: Patterns = {
    "time-between-recordings": {
        "gap": (
            "{before} ends and {after} begins {lasting} later, by the camera's clock: not filmed",
            "write what was done in between as a step without a time, or as a Wait",
        ),
        "overlap": (
            "{before} and {after} were filmed at the same time for {lasting}, by their clocks",
            "use one of them for each step, or set the clock of the camera",
        ),
    },
    "other-speed": {
        "faster": ("{name} runs {times:.3g} times faster than the work, so its length tells no time", _TYPE),
        "slower": ("{name} runs {times:.3g} times slower than the work, so its length tells no time", _TYPE),
    },
}
