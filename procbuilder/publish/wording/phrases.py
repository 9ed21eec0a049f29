"""Parts of sentences that several rules share, and those that are not always there."""

from procbuilder.publish.wording.patterns import Text

STEP = "step {number}"
ON_FILM = "at {film} (step {number})"
IN_STEP = "in step {number}"
IN_LINE = "in line {line}"

BLANKS = ("reason", "name", "document, section", "value", "document, page", "why not")
"""What only the technician can fill in, in lines to copy."""

PHRASES: dict[str, Text] = {
    "on-the-way": 'on the way "{way}", ',
    "never-opened": 'no "- {field}:" says so before',
    "never-opened-more": 'that is more than "- {field}:" says',
    "did-you-mean-line": 'did you mean "{line}"? Or add',
    "add": "add",
}
"""By the form that a rule names."""
