"""Sentences about tightening: a value, its unit and where it comes from."""

from procbuilder.publish.wording.patterns import Patterns

PATTERNS: Patterns = {
    "tightening-without-torque": {
        "": (
            '{step} tightens "{item}" and gives no torque',
            'add "{line}", or the value with its unit and document',
        ),
    },
    "nowhere-to-look": {
        "": ("the torque of {item} is to be looked up, but it does not say where", 'write "{line}"'),
    },
    "torque-without-unit": {
        "": (
            'the torque of {item}, "{value}", has no unit',
            "write behind the number what was meant: N·m, lbf·ft or degrees",
        ),
    },
    "torque-in-words": {
        "": (
            'the torque of {item} is only words: "{value}"',
            'write "{line}" and keep the words as a "- Key point:"',
        ),
    },
    "stage-left-out": {
        "": (
            "stage {last} of the torque of {item} is given, and no step does stage {missing}",
            'add "{line}", or take "stage:" away if there is only one',
        ),
    },
    "torque-without-source": {
        "": (
            'the torque of {item} is given {source}, and lives depend on it ("{word}")',
            'add the document that says so to the line: " | from: document, page"',
        ),
        "no-source": (
            'the torque of {item} is given without a source, and lives depend on it ("{word}")',
            'add the document that says so to the line: " | from: document, page"',
        ),
    },
}
