"""Sentences about dangers that are not stated."""

from procbuilder.publish.wording.patterns import Patterns

PATTERNS: Patterns = {
    "dangers-not-confirmed": {
        "": (
            "nobody has confirmed the dangers of the whole job",
            'go through the job, state what can hurt somebody, then add "{confirmed}" before the first step; '
            'where there is nothing at all, "{none}"',
        ),
    },
    "danger-proposed": {
        "": (
            "{hazard}: proposed from {evidence}",
            'add {where} "{line}"{wear}{lasting}; or "{downgraded}" before the first step{remarks}',
        ),
    },
    "hold-missing": {
        "": (
            "{work} has no hold point ({evidence})",
            'add "{line}" to the step after which it must be checked',
        ),
    },
    "not-reserved": {
        "": (
            "{work} may be reserved by law ({evidence})",
            'add "{line}" to each such step: an apprentice is then not shown how; or "{answer}"',
        ),
    },
    "gloves-near-rotation": {
        "": (
            'gloves are worn in {step}, where something turns ("{words}"){others}',
            'take them out of its list, or out of the list before the steps, and add "{line}"',
        ),
    },
}
