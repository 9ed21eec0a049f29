"""How far a command is, for whoever waits for it."""

from collections.abc import Callable

Progress = Callable[[str, int, int], None]
"""Called with (what is done, how much of it is done, how much there is)."""


def silent(_what: str, _done: int, _of: int) -> None:
    """Progress that nobody follows."""
