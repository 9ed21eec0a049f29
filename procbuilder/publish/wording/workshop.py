"""Sentences about the workshop file."""

from procbuilder.publish.wording.patterns import Patterns

_CONDITION = 'write name, factor and from: factor = 0.8, from = "38 own job cards, 2025"'
_DANGER = "write name, words, signal, hazard, consequence and avoid, as the program's own list does"

_ADDRESS = 'write the address of the library, such as "https://shop.example/jobs/"'

PATTERNS: Patterns = {
    "workshop-file": {
        "broken": ("the file cannot be read ({why})", "correct that line"),
        "condition-name": ("the condition {name} has no name", _CONDITION),
        "condition-factor": ("the condition {name} has no factor above 0", _CONDITION),
        "condition-source": ("the condition {name} has no source (from)", _CONDITION),
        "allowance": (
            "the allowance is not a share below 1 of the working day or of the job time, with its source",
            'write share = 0.12, of = "the working day", from = "agreed with the staff, 2025"',
        ),
        "danger-words": ("the danger {name} has no list of words under {key}", _DANGER),
        "danger-lacks": ("the danger {name} has no {keys:,}", _DANGER),
        "danger-no-text": ("the danger {name} has under {keys:,} something else than text in quotes", _DANGER),
        "danger-unknown": ("the danger {name} has an unknown key: {keys:,}", _DANGER),
        "danger-signal": ("the danger {name} has the signal {signal}, which is none of the four", _DANGER),
        "qualification": (
            "the qualification {name} lacks its name, its holder or its last day",
            "write name, holder and valid_until = 2027-03-31",
        ),
        "nickname": ("the nickname {name} stands for no name", 'write "{name}" = "its name"'),
        "things": ("the things of {group} are no list of words", 'write {group} = ["hub hook", "drum key"]'),
        "operation": (
            "the operation {name} has no verbs, or no act that is known",
            'write verbs = ["whizz"] and act as one of {acts:,}',
        ),
        "number": ("{typed} is no number above 0", "write a number such as 62.00"),
        "paper": ("{typed} is no paper known here", "write {papers:|}"),
        "address": (
            "{typed} is no address that a phone can open",
            _ADDRESS,
        ),
        "secret-address": ("the address holds a user or a password, which every page and sheet would show", _ADDRESS),
        "long-address": ("the address has more than {most} signs; no phone can read that from paper", _ADDRESS),
    },
}
