"""Sentences about the wording of commands."""

from procbuilder.publish.wording.patterns import Patterns

PATTERNS: Patterns = {
    "long-command": {
        "": (
            "the command has {count} words; more than {most} are hard to follow at the job",
            "keep what to do in the heading, and put how and why below it",
        ),
    },
    "several-commands": {
        "": ('"{command}" holds {count} commands', "make a step of each: {headings:q}"),
    },
    "not-a-command": {
        "": (
            '"{command}" does not begin with what to do',
            'begin with the verb, such as "Prise off the dust cap"',
        ),
    },
    "condition-last": {
        "": ('"{command}" tells the condition last', 'put it first: "{better}"'),
    },
    "two-names": {
        "": (
            '{before} says "{name}" and {step} says "{second}" of the same thing',
            'keep to one of the two, such as "{name}"',
        ),
    },
}
