"""Sentences about titles, headings and what they hold."""

from procbuilder.publish.wording.patterns import Patterns

PATTERNS: Patterns = {
    "title": {
        "none": ("the procedure has no title", "write one: # Thing – what is done to it"),
        "second": ("there is a second title", "make it a section: {line}"),
    },
    "heading-form": {"": ("this form of heading is not read", "write {sign} in front of it: {line}")},
    "heading": {
        "no-end": ("the step has a start ({start}) but no end", "write it behind: {start}-{end}"),
        "sign-behind": ("{sign} stands between the time and the command", "write: {line}"),
        "mistimed": ("{time} is not read as a time", "write: {line}"),
        "maybe-a-time": ("{time} is not read as a time", "if it is one, write: {line}"),
        "mistimed-unclear": (
            "{time} is not read as a time",
            "write start and end as minutes:seconds in front of the command: 0:42-1:15",
        ),
        "time-inside": ("the time {time} stands inside the command", "put it first: {time} {others}"),
        "no-command": (
            "the step has no command",
            "write what to do behind the time, such as: Prise off the dust cap",
        ),
        "id": ("the id '{id}' is not allowed", "write small letters, digits and -: {{#{good}}}"),
        "which-recording": (
            "{time} does not say of which recording",
            "put its name before the time: {names:|}",
        ),
        "no-time": (
            "{time} is not a time",
            "write minutes:seconds such as 1:15 or 1:02:15, seconds up to 59",
        ),
    },
    "doubled-id": {"": ("the id {id} stands twice, first in line {first}", "write another one: {{#{other}}}")},
}
