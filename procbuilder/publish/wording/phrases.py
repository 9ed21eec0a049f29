"""Parts of sentences that several rules share, and those that are not always there."""

from procbuilder.publish.wording.patterns import Plural, Text

STEP = "step {number}"
ON_FILM = "at {film} (step {number})"
IN_STEP = "in step {number}"
IN_LINE = "in line {line}"
OR = "{parts} or {last}"

BLANKS: dict[str, str] = {
    "reason": "reason",
    "name": "name",
    "document-section": "document, section",
    "value": "value",
    "why-not": "why not",
    "special-head": "special head",
    "words-are-wrong": "the words are wrong",
    "right-with-page": "right, with the page of the document",
    "used-again": "used again after inspection",
    "date": "date",
    "who-checks": "who checks it",
    "what-happens": "what happens",
    "how-to-avoid": "how to avoid it",
    "what-is-tried": "what is tried",
    "what-is-right": "what is right",
    "who-went-through": "who went through them",
    "end": "end",
    "who-compared": "who compared it with the steps",
}
"""What only the technician can fill in, in lines to copy, by its name; parts of fields go by their own."""

PHRASES: dict[str, Text] = {
    "on-the-way": 'on the way "{way}", ',
    "never-opened": 'no "- {field}:" says so before',
    "never-opened-more": 'that is more than "- {field}:" says',
    "did-you-mean-line": 'did you mean "{line}"? Or add',
    "add": "add",
    "nothing": "nothing",
    "empty-line": "empty",
    "without-name": "without a name",
    "and-more": " and {count} more",
    "behind-step": ' after {step}, "{command}"',
    "line": "line {line}",
    "evidence": '"{words}" in {where}{also}',
    "heard": '"{words}", said at {time}, in {where}{also}',
    "heard-between": '"{words}", said at {time}{also}',
    "also-in": Plural(", also in step {steps:n,}{more}", ", also in steps {steps:n,}{more}", "steps"),
    "and-in-steps": Plural(", and in step {steps:n,}", ", and in steps {steps:n,}", "steps"),
    "to-step": "to {step}",
    "before-first": "before the first step",
    "and-wear": ' and "{line}" (ISO 7010 {signs:,})',
    "if-it-lasts": '; if it lasts, "{state}" too, and "{ends}" where it ends',
    "sign": "{number} {meaning}",
    "remark": " ({who})",
    "remark-signs": " (ISO 7010 {signs:,})",
    "remark-and-signs": " ({who}; ISO 7010 {signs:,})",
    "glove-caught": "a glove is caught by what turns",
    "glove-hand-drawn-in": "hand drawn in, fingers torn off",
    "no-gloves": "no gloves, sleeves and hair tied",
    "path": "from … cm, to … cm, reach … cm",
    "lift-assumed": "; reckoned for a rare lift with both hands, a fair grip and no turning",
    "so-many": "how many x {item}",
    "of-class": " of class {strength}",
    "newton-metres": "{low} N·m",
    "torque-wrench": "torque wrench {low}–{high} N·m",
    "newton-metres-from-to": "{low} to {high} N·m",
}
"""By the form that a rule names."""
