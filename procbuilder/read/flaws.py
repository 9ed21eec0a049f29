"""What cannot be read in a part of a line: facts, before anybody knows in which line it stands."""

from dataclasses import dataclass

from procbuilder.model.facts import Facts, Value, facts


@dataclass(frozen=True, slots=True)
class Flaw:
    """One thing that cannot be read; the rule of its line becomes known with the line."""

    form: str
    """Which of the sentences of that rule tells it."""
    facts: Facts = ()


Flaws = list[Flaw]
"""Gathered while a text is cut into its parts."""


def flaw(form: str, /, **values: Value) -> Flaw:
    """A flaw with facts by the names of the gaps that they fill."""
    return Flaw(form, facts(**values))
