"""Sentences about the order of the steps."""

from procbuilder.publish.wording.patterns import Patterns

_NIP_UP = 'nip it up here, put "{ends}" before it and the torque behind, or add "{answer}"'

PATTERNS: Patterns = {
    "wrong-order": {
        "too-late": (
            '{step}, "{command}" comes before {first}, "{first_command}": {rule}, because {why}',
            'move {first} before {step}, or add "{answer}"',
        ),
        "missing": (
            '{step}, "{command}" comes too early{since}: {rule}, because {why}',
            'add a step before it, such as "### {example}", or add "{answer}"',
        ),
    },
    "torque-in-the-air": {
        "wheel": (
            '{item}: torque in {step} while "{state}" still lasts: the wheel turns and does not seat',
            _NIP_UP,
        ),
        "rubber": (
            '{item}: torque in {step} while "{state}" still lasts: its rubber is twisted on the ground',
            _NIP_UP,
        ),
    },
    "angle-before-torque": {
        "": (
            "{item} is turned by an angle in {step}, before its torque in {torque}",
            "put the torque first and the angle behind it, as the document says",
        ),
    },
}
