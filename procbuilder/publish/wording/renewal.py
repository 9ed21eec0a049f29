"""Sentences about parts that are used once."""

from procbuilder.publish.wording.patterns import Patterns

PATTERNS: Patterns = {
    "single-use-again": {
        "": (
            "{item} comes off {opened} and goes on again: a new one, or the old one after inspection? "
            "It is asked for because {why}",
            'write "{new}", or "{answer}"',
        ),
    },
}
