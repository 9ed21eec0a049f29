"""What a sentence is made of: a text with named gaps, and forms for one and for more."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Plural:
    """The forms of a text for one and for more, chosen by a count among its facts."""

    one: str
    many: str
    gap: str = "count"
    """Name of the fact that counts."""


Text = str | Plural

Sentences = tuple[Text, Text]
"""What is wrong, and what to write instead."""

Patterns = dict[str, dict[str, Sentences]]
"""By rule, then by form; a rule with one sentence has the form ``""``."""
