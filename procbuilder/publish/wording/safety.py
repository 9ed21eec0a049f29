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
    "danger-while-safe": {
        "": (
            '{signal} "{hazard}" holds "while: {state}", which sounds like what keeps people safe',
            'name the state in which it is dangerous behind "while:", or take "while:" away if it holds for its step',
        ),
    },
    "state-safe-or-not": {
        "": (
            '"{state}" is shown as still dangerous until it ends',
            'if it keeps people safe, write behind it "while:" and the state in which it is needed;'
            ' if it is dangerous, add the danger with "while: {state}"',
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
