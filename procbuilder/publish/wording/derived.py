"""Sentences about steps that were proposed and not filmed."""

from procbuilder.publish.wording.patterns import Patterns

PATTERNS: Patterns = {
    "derived-not-accepted": {
        "": (
            "{step} is derived from {source} and was not filmed",
            'read it, put it right, then take the line "- Derived: {typed}" away',
        ),
    },
}
