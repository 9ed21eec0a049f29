"""Sentences about numbers that nobody said."""

from procbuilder.publish.wording.patterns import Patterns

_NUMBER = 'write "{line}" with the number, or "{answer}"'

PATTERNS: Patterns = {
    "how-many": {
        "": ("nobody says how many {item} came off {opened}: one that is left over would not be missed", _NUMBER),
        "for-now": ("nobody says how many {item} went in {opened}: one that stays in would not be missed", _NUMBER),
    },
    "one-closing-for-several": {
        "": (
            "{item} opened {times} and closed {closed}: nobody says whether that was for all of them",
            'say in each line where they belong, " | of: …", or how many: "{line}"',
        ),
    },
}
