"""How far a command is, for whoever waits for it."""

from collections.abc import Callable

from procbuilder.model.facts import Phrase

Progress = Callable[[Phrase, int, int], None]
"""Called with (what is done, how much of it is done, how much there is)."""


def silent(_what: Phrase, _done: int, _of: int) -> None:
    """Progress that nobody follows."""
