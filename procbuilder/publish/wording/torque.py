"""Sentences about tightening: a value, its unit and where it comes from."""

from procbuilder.publish.wording.patterns import Patterns

_TIGHTENS = '{step} tightens "{item}" and gives no torque'
_FITS = '{step} fits "{item}", and nobody says how tight'
_VALUE = 'add "{line}", or the value with its unit and document'
_OR_PLAIN = 'add "{line}", or the value with its unit and document, or "hand tight" or "not critical" in place of it'

PATTERNS: Patterns = {
    "tightening-without-torque": {
        "": (_TIGHTENS, _VALUE),
        "plain": (_TIGHTENS, _OR_PLAIN),
        "fitted": (_FITS, _VALUE),
        "fitted-plain": (_FITS, _OR_PLAIN),
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
