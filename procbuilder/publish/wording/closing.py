"""Sentences about closings that are doubtful, and about ways that go wrong."""

from procbuilder.publish.wording.patterns import Patterns

_UNCLEAR = 'write "{line}", such as "bracket broken, owner told"'

PATTERNS: Patterns = {
    "only-assumed-closed": {
        "": (
            "{step} tells to refit in reverse: it is only assumed that this closes {things:,}{more}",
            "write each as a step of its own; procbuilder new --refit proposes them",
        ),
    },
    "forgotten-by-its-words": {
        "": (
            '{item} comes off {taken} by the words "{command}", and no later step speaks of it',
            'add the step that puts it back: "{on}", and "{off}" here',
        ),
        "once": (
            '{item} comes off {taken} by the words "{command}", and no later step speaks of it',
            'add the step that puts it back, a new one: "{on}", and "{off}" here',
        ),
    },
    "put-on-after-its-part": {
        "": (
            "{item} came off {part} on the bench {opened} and goes on {closed}, after {part} went back on {back}",
            'move this step before {before}, or take "of: {of}" away if it can wait',
        ),
    },
    "left-open-unclear": {
        "no-reason": ("{item} is left open without a reason", _UNCLEAR),
        "no-name": ("{item} is left open without a name", _UNCLEAR),
        "neither": ("{item} is left open without a reason and a name", _UNCLEAR),
        "not-open": (
            "{item} is said to be left open, but nothing of that name is open",
            "take the line out, or write the name as typed at its opening",
        ),
    },
    "then-leads-nowhere": {
        "": ("{step} leads on to {where}, and there is no such step", 'write "- Then: #id" with the id of a step'),
        "near": ("{step} leads on to {where}, and there is no such step", 'did you mean "{line}"?'),
    },
    "then-never-ends": {
        "": (
            "{step} leads back to {target} every time, so the work never ends",
            'say when it does: add "- Only if: " with what must be so, such as "it still rocks"',
        ),
    },
}
