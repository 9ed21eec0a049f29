"""Sentences about dangers and about what protects from them."""

from procbuilder.publish.wording.patterns import Patterns

_END_FIRST = (
    'end the state first: put "{ends}" into this step or an earlier one, or move this line to the step that ends it'
)

PATTERNS: Patterns = {
    "hazard-incomplete": {
        "consequence": ('{signal} "{hazard}" does not say what happens', 'write "{line}"'),
        "avoid": ('{signal} "{hazard}" does not say how to avoid it', 'write "{line}"'),
        "both": ('{signal} "{hazard}" does not say what happens and how to avoid it', 'write "{line}"'),
    },
    "state-never-begins": {
        "": (
            '"while: {state}" names a state that no step begins',
            'add "{line}" to the step that brings it about',
        ),
        "near": (
            '"while: {state}" names a state that no step begins',
            'did you mean "while: {near}"? Or add "{line}" to the step that brings it about',
        ),
    },
    "protection-taken-away": {
        "": ('{item} is taken away {taken} while "{state}" still lasts', _END_FIRST),
        "why": ('{item} is taken away {taken} while "{state}" still lasts: {why}', _END_FIRST),
    },
    "no-final-check": {
        "": ('nothing is checked after {step}, "{command}"', 'add "{line}" to it or to a later step'),
    },
}
