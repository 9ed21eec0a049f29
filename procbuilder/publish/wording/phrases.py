"""Parts of sentences that several rules share, and those that are not always there."""

from procbuilder.publish.wording.patterns import Text

STEP = "step {number}"
ON_FILM = "at {film} (step {number})"
IN_STEP = "in step {number}"
IN_LINE = "in line {line}"
OR = "{parts} or {last}"

BLANKS = (
    "reason", "name", "document, section", "value", "document, page", "why not", "special head", "the words are wrong",
    "right, with the page of the document",
)  # fmt: skip
"""What only the technician can fill in, in lines to copy."""

PHRASES: dict[str, Text] = {
    "on-the-way": 'on the way "{way}", ',
    "never-opened": 'no "- {field}:" says so before',
    "never-opened-more": 'that is more than "- {field}:" says',
    "did-you-mean-line": 'did you mean "{line}"? Or add',
    "add": "add",
    "and-more": " and {count} more",
    "behind-step": ' after {step}, "{command}"',
    "of-class": " of class {strength}",
    "newton-metres": "{low} N·m",
    "newton-metres-from-to": "{low} to {high} N·m",
    "torque-wrench": "torque wrench {low}–{high} N·m",
}
"""By the form that a rule names."""
