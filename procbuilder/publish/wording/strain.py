"""Sentences about what the work does to a body."""

from procbuilder.publish.wording.patterns import Patterns

_LESS = "take turns, use a tool that shakes less, or shorten its use (HSE exposure points)"

PATTERNS: Patterns = {
    "heavy-lift": {
        "unknown": (
            "the lift of {item} cannot be judged",
            'write "- Lift: {item} | 25 | from 20 cm, to 110 cm, reach 40 cm", with the heights of the hands',
        ),
        "outside": (
            "the lift of {item} is outside what the NIOSH lifting equation covers",
            "use a hoist, or judge it by the workshop's own assessment",
        ),
        "heavy": (
            "{item}, {load:g} kg, is {times:.1f} times the {limit:.0f} kg that the NIOSH lifting equation recommends "
            "for one person",
            "use a hoist, bring it closer or higher, or let two people lift it",
        ),
    },
    "much-vibration": {
        "action": (
            "the tools of this job give {points:.0f} points of hand-arm vibration, A(8) {exposure:.1f} m/s²: "
            "the action value of {value:g} is reached",
            _LESS,
        ),
        "limit": (
            "the tools of this job give {points:.0f} points of hand-arm vibration, A(8) {exposure:.1f} m/s²: "
            "the limit of {value:g} is reached",
            _LESS,
        ),
    },
}
