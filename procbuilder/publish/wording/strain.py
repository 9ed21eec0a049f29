"""Sentences about what the work does to a body."""

from procbuilder.publish.wording.patterns import Patterns

_LESS = "take turns, use a tool that shakes less, or shorten its use (HSE exposure points)"

PATTERNS: Patterns = {
    "heavy-lift": {
        "unknown": (
            "the lift of {item} cannot be judged",
            'write "{line}", with the heights of the hands in cm',
        ),
        "outside": (
            "the lift of {item} is outside what the NIOSH lifting equation covers",
            "use a hoist, or judge it by the workshop's own assessment",
        ),
        "heavy": (
            "{item}, {load:g} kg, is {times:.1f} times the {limit:.0f} kg that the NIOSH lifting equation recommends "
            "for one person{assumed}",
            "use a hoist, bring it closer or higher, or let two people lift it",
        ),
        "too-heavy": (
            "{item}, {load:g} kg, is {times:.1f} times the {limit:.0f} kg that the NIOSH lifting equation recommends "
            "for one person{assumed}",
            "use a hoist: it is too heavy for two people too, who carry two thirds of the sum (HSE L23)",
        ),
        "heavy-team": (
            "{item}, {load:g} kg, is {times:.1f} times the {limit:.0f} kg that {people} people may lift together, "
            "less than the sum of {alone:.0f} kg for each (NIOSH lifting equation; HSE L23){assumed}",
            "use a hoist, or bring it closer or higher",
        ),
    },
    "much-vibration": {
        "action": (
            "the tools of this job give {points:.0f} points of hand-arm vibration, A(8) {exposure:.1f} m/s²: "
            "the action value of {value:g} is reached",
            _LESS,
        ),
        "unknown": (
            "the vibration of {tool} cannot be judged",
            'write "{line}", the level in m/s² and the time in minutes',
        ),
        "limit": (
            "the tools of this job give {points:.0f} points of hand-arm vibration, A(8) {exposure:.1f} m/s²: "
            "the limit of {value:g} is reached",
            _LESS,
        ),
    },
}
