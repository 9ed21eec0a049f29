"""Sentences about what must stand before the first step."""

from procbuilder.publish.wording.patterns import Patterns

_LIST = 'add "{line}" before the first step, or "{none}"'
_KEY = 'write "{key}: …" between the --- lines at the top'

PATTERNS: Patterns = {
    "empty-front-list": {
        "Tool": ("no tool is listed", _LIST),
        "Supply": ("no supply is listed", _LIST),
        "Part": ("no part is listed", _LIST),
        "Condition": ("no condition is listed that must be met before the start", _LIST),
        "Wear": ("no protective equipment is listed", _LIST),
    },
    "no-steps": {
        "": ("the procedure has no step", 'write each as a heading: "### 0:42-1:15 Prise off the dust cap"'),
    },
    "unnamed-procedure": {
        "number": ("the procedure has no number", _KEY),
        "revision": ("the procedure has no revision", _KEY),
        "author": ("the procedure has no author", _KEY),
    },
    "no-words-for-language": {
        "": (
            "dangers, order and tools were not checked: no words for {language}",
            'go through them yourself, then add "{answer}"',
        ),
    },
    "narration-not-read": {
        "": (
            "the narration was not read: no words for spoken {language}, so no torque of it was compared",
            'compare it with the steps yourself, then add "{answer}"',
        ),
    },
}
